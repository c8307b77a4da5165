package spotline.report.facts;

import java.util.Comparator;
import java.util.SortedSet;
import java.util.TreeSet;
import spotline.reference.Elements;
import spotline.run.RunResult;

/** Elements by atomic number; a symbol that is no element's comes last. */
public final class ElementOrder {
    private static final Comparator<String> ORDER =
            Comparator.comparingInt(ElementOrder::atomicNumber).thenComparing(Comparator.naturalOrder());

    private ElementOrder() {}

    /** Every element that a sample of the run has a row for. */
    public static SortedSet<String> ofSamples(RunResult result) {
        TreeSet<String> elements = new TreeSet<>(ORDER);
        result.samples().forEach(s -> s.elements().forEach(mean -> elements.add(mean.element())));
        return elements;
    }

    private static int atomicNumber(String symbol) {
        return Elements.bySymbol(symbol).map(e -> e.z()).orElse(Integer.MAX_VALUE);
    }
}
