package spotline.viewer.screen;

import java.util.List;
import java.util.Locale;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import spotline.viewer.model.BenchData;
import spotline.viewer.model.Words;

/** Below the plot: which curve is which, and what a click or a drag says. */
final class BenchFoot extends VBox {
    private record Name(String name, spotline.report.figure.CurveStyle style) {}

    private final Words words;
    private final Label readout = new Label();
    private final HBox key = new HBox(12);
    private List<Name> named = List.of();

    BenchFoot(Words words) {
        super(1);
        this.words = words;
        setPickOnBounds(false);
        setMouseTransparent(true);
        readout.getStyleClass().add("readout");
        readout.setId("readout");
        readout.setMinHeight(20);
        key.setId("bench-key");
        key.setAlignment(Pos.CENTER_RIGHT);
        key.managedProperty().bind(key.visibleProperty());
        key.setVisible(false);
        getChildren().addAll(key, readout);
        hush();
    }

    /** Says which curve is which, where no switch does. @return whether that takes another height than before */
    boolean key(List<BenchCurves> drawn, Palette palette) {
        List<Name> now = drawn.stream()
                .filter(BenchCurves::needsName)
                .map(c -> new Name(c.name(), c.style()))
                .toList();
        if (now.equals(named)) return false;
        boolean other = named.isEmpty() != now.isEmpty();
        named = now;
        key.setVisible(!now.isEmpty());
        key.getChildren().clear();
        for (Name n : now) {
            Label label = new Label(n.name(), new LineSample(n.style(), palette));
            label.getStyleClass().add("readout");
            key.getChildren().add(label);
        }
        return other;
    }

    /** What was said of a window or a place holds no longer. */
    void hush() {
        readout.setText(words.of("bench.hint"));
    }

    void window(String line, double lowEv, double highEv) {
        readout.setText(words.of("bench.window", line, fixed(highEv, 2), fixed(lowEv, 2)));
    }

    /** @param candidates lines near the place, for a person */
    void place(BenchData d, double measuredEv, String candidates) {
        readout.setText(words.of(
                "bench.readout",
                energies(measuredEv, d),
                fixed(d.measuredAt(measuredEv), 0),
                words.of(d.ordinate()),
                candidates));
    }

    private String energies(double measuredEv, BenchData d) {
        double shift = d.shiftEv().orElse(0);
        if (shift == 0) return words.of("bench.at", fixed(measuredEv, 2));
        return words.of("bench.at-both", fixed(measuredEv, 2), fixed(measuredEv + shift, 2));
    }

    private static String fixed(double value, int digits) {
        return String.format(Locale.ROOT, "%." + digits + "f", value);
    }
}
