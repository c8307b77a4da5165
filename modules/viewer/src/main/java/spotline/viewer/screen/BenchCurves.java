package spotline.viewer.screen;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import spotline.report.figure.CurveStyle;
import spotline.viewer.model.BenchData;
import spotline.viewer.model.Curve;
import spotline.viewer.model.Layer;
import spotline.viewer.model.Words;

/**
 * The curves that the layers ask for, where and as high as they ask for them.
 *
 * @param name for the key below the plot
 */
record BenchCurves(String name, Layer layer, CurveStyle style, Curve curve) {
    /** In the order in which they are drawn. */
    static List<BenchCurves> of(BenchData d, List<BenchData> others, Set<Layer> layers, Words words) {
        List<BenchCurves> all = new ArrayList<>();
        if (layers.contains(Layer.MEASURED)) {
            all.add(of(words, Layer.MEASURED, CurveStyle.MEASURED, placed(d, d.measured(), layers)));
        }
        int used = 0;
        if (layers.contains(Layer.COMPONENTS)) {
            for (Curve c : d.components()) {
                CurveStyle style = CurveStyle.component(used++);
                all.add(new BenchCurves(c.name(), Layer.COMPONENTS, style, placed(d, c, layers)));
            }
        }
        if (layers.contains(Layer.BACKGROUND)) {
            for (Curve b : d.backgrounds())
                all.add(of(words, Layer.BACKGROUND, CurveStyle.BACKGROUND, placed(d, b, layers)));
        }
        if (layers.contains(Layer.MODEL)) {
            d.model().ifPresent(m -> all.add(of(words, Layer.MODEL, CurveStyle.SUM, placed(d, m, layers))));
        }
        if (layers.contains(Layer.OTHER_SPOTS)) {
            for (BenchData o : others) {
                CurveStyle style = CurveStyle.component(used++);
                String name = words.of("composition.spot", o.spot());
                all.add(new BenchCurves(name, Layer.OTHER_SPOTS, style, placed(o, o.measured(), layers)));
            }
        }
        if (layers.contains(Layer.DIFFERENCE) && !others.isEmpty()) {
            BenchData other = others.get(0);
            Curve rest = placed(d, d.measured(), layers).minus(placed(other, other.measured(), layers));
            String name = words.of("bench.less", d.spot(), other.spot());
            if (rest.channels() > 1) all.add(new BenchCurves(name, Layer.DIFFERENCE, CurveStyle.FOURTH, rest));
        }
        return all;
    }

    private static BenchCurves of(Words words, Layer layer, CurveStyle style, Curve curve) {
        return new BenchCurves(words.of(layer.key()), layer, style, curve);
    }

    /** Whether the layer's own switch does not say already which curve this is. */
    boolean needsName() {
        return layer == Layer.COMPONENTS || layer == Layer.OTHER_SPOTS || layer == Layer.DIFFERENCE;
    }

    private static Curve placed(BenchData d, Curve curve, Set<Layer> layers) {
        double moved = moved(d, layers);
        double factor = factor(d, layers);
        Curve c = moved == 0 ? curve : curve.shifted(moved);
        return factor == 1 ? c : c.times(factor);
    }

    /** What is added to measured energies, eV. */
    static double moved(BenchData d, Set<Layer> layers) {
        return layers.contains(Layer.REFERENCED) ? d.shiftEv().orElse(0) : 0;
    }

    /** What values are multiplied by. */
    static double factor(BenchData d, Set<Layer> layers) {
        if (!layers.contains(Layer.NORMALISED)) return 1;
        double span = d.measured().span();
        return span > 0 ? 1 / span : 1;
    }
}
