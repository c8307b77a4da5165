package spotline.viewer.screen;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.image.PixelReader;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Test;
import spotline.report.figure.CurveStyle;
import spotline.viewer.model.BenchData;
import spotline.viewer.model.Layer;

/** What the bench draws, looked for in its pixels, and what a click on it says. */
class BenchLayersTest {
    private static final String PRIMER_CARBON = "02-primer-flake.txt#2";

    @Test
    void everyLayerIsDrawnWhenItIsOnAndOnlyThen() throws Exception {
        try (Screen screen = new Screen(1280, 800)) {
            carbonOfTwoSpots(screen);
            allOff(screen);
            WritableImage bare = plot(screen);
            for (CurveStyle style : List.of(CurveStyle.BACKGROUND, CurveStyle.SUM, CurveStyle.FIRST)) {
                assertThat(count(bare, style)).as(style.name()).isZero();
            }
            coloured(screen, Layer.MEASURED, CurveStyle.MEASURED);
            coloured(screen, Layer.BACKGROUND, CurveStyle.BACKGROUND);
            coloured(screen, Layer.MODEL, CurveStyle.SUM);
            coloured(screen, Layer.COMPONENTS, CurveStyle.FIRST);
            // Of two spots the other one is the first of its kind when no component is drawn.
            coloured(screen, Layer.OTHER_SPOTS, CurveStyle.FIRST);
            coloured(screen, Layer.DIFFERENCE, CurveStyle.FOURTH);

            // Names stand in the colour of the text, which the fitted sum has not.
            flip(screen, Layer.MODEL);
            coloured(screen, Layer.LINES, CurveStyle.MEASURED, 2);
        }
    }

    @Test
    void energiesAndValuesArePutWhereTheirLayersAsk() throws Exception {
        try (Screen screen = new Screen(1280, 800)) {
            carbonOfTwoSpots(screen);
            allOff(screen);
            flip(screen, Layer.MEASURED);
            flip(screen, Layer.OTHER_SPOTS);
            BenchData primer = screen.bench.bench().get().orElseThrow();
            BenchCurves measured = drawn(screen, Layer.MEASURED);
            double apart = top(measured) - top(drawn(screen, Layer.OTHER_SPOTS));
            assertThat(Math.abs(apart))
                    .as("carbon of two spots as measured, eV")
                    .isGreaterThan(1);
            WritableImage before = plot(screen);

            flip(screen, Layer.REFERENCED);
            screen.picture("layer-referenced");
            double shift = primer.shiftEv().orElseThrow();
            BenchCurves referenced = drawn(screen, Layer.MEASURED);
            assertThat(referenced.curve().energy(0) - measured.curve().energy(0))
                    .isEqualTo(shift, within(1e-9));
            assertThat(Math.abs(top(referenced) - top(drawn(screen, Layer.OTHER_SPOTS))))
                    .as("carbon of two spots referenced, eV")
                    .isLessThan(0.2);
            assertThat(unlike(before, plot(screen))).isGreaterThan(100);

            flip(screen, Layer.NORMALISED);
            assertThat(drawn(screen, Layer.MEASURED).curve().span()).isEqualTo(1, within(1e-9));
            assertThat(drawn(screen, Layer.OTHER_SPOTS).curve().span()).isEqualTo(1, within(1e-9));
            screen.picture("layer-normalised");
            flip(screen, Layer.NORMALISED);
            flip(screen, Layer.REFERENCED);
            assertThat(unlike(before, plot(screen))).isZero();
        }
    }

    @Test
    void aClickSaysEnergyValueAndLines() throws Exception {
        try (Screen screen = new Screen(1280, 800)) {
            screen.click("empty-demo");
            screen.settled();
            screen.click("spot-5");
            screen.click("scan-05-pigment-a.txt#3");
            BenchData titanium = screen.bench.bench().get().orElseThrow();
            double line = titanium.lines().stream()
                    .filter(l -> l.line().equals("Ti 2p3/2"))
                    .findFirst()
                    .orElseThrow()
                    .energyEv();
            BenchPane pane = (BenchPane) screen.node("bench");
            javafx.geometry.Point2D at = Screen.fx(() -> pane.localToScreen(pane.xOf(line), 120));
            screen.robot.clickOn(at.getX(), at.getY());
            String said = ((Label) screen.node("readout")).getText();
            Matcher numbers = Pattern.compile("^([\\d.]+) eV measured, ([\\d.]+) referenced +(\\d+) counts +(.*)$")
                    .matcher(said);
            assertThat(numbers).as(said).matches();
            assertThat(Double.parseDouble(numbers.group(1))).isEqualTo(line, within(0.1));
            // Each rounded to a hundredth.
            double shift = titanium.shiftEv().orElseThrow();
            assertThat(Double.parseDouble(numbers.group(2)) - Double.parseDouble(numbers.group(1)))
                    .isEqualTo(shift, within(0.011));
            double counts = Double.parseDouble(numbers.group(3));
            assertThat(counts).isEqualTo(titanium.measuredAt(line), within(0.05 * counts));
            assertThat(numbers.group(4)).startsWith("Ti 2p3/2 (found)");
        }
    }

    /** The fit model of one spot carried to another, seen on its bench, and taken back. */
    @Test
    void aFitIsCarriedToAnotherSpotAndTakenBack() throws Exception {
        try (Screen screen = new Screen(1280, 800)) {
            screen.click("empty-demo");
            screen.settled();
            screen.click("spot-5");
            screen.click("scan-05-pigment-a.txt#3");
            screen.click("fit-edit");
            screen.until(() -> screen.bench.fits().result().get().isPresent());
            String first = screen.bench
                    .fits()
                    .model()
                    .get()
                    .orElseThrow()
                    .components()
                    .get(0)
                    .name();
            screen.click("component-" + first);
            screen.robot.push(KeyCode.CONTROL, KeyCode.A);
            screen.robot.write("lattice");
            screen.robot.push(KeyCode.ENTER);
            screen.until(() -> screen.bench.fits().rows().stream()
                            .anyMatch(r -> r.component().equals("lattice"))
                    && !screen.bench.fits().fitting().get());
            screen.click("fit-keep");
            reason(screen, "one name for all");
            screen.robot.press(KeyCode.SHIFT).clickOn(screen.node("spot-6")).release(KeyCode.SHIFT);
            assertThat(screen.bench.chosen().get()).containsExactly("5", "6");
            screen.click("fit-apply");
            reason(screen, "the same pigment");
            assertThat(screen.bench.past().undoable().get()).contains("Settings of spot 5 for spot 6");

            screen.click("spot-6");
            assertThat(components(screen)).contains("lattice");
            assertThat(fittedByDefault(screen)).isFalse();
            screen.picture("fit-carried");
            screen.click("undo");
            screen.settled();
            assertThat(components(screen)).contains(first).doesNotContain("lattice");
            assertThat(fittedByDefault(screen)).isTrue();
        }
    }

    private static void reason(Screen screen, String why) throws Exception {
        screen.until(() -> screen.bench.signing().pending().get().isPresent());
        screen.click("why");
        screen.robot.write(why);
        screen.click("keep");
        screen.settled();
        assertThat(screen.bench.fault().get()).isEmpty();
    }

    private static boolean fittedByDefault(Screen screen) {
        return screen.bench.primary().orElseThrow().fits().stream()
                .filter(f -> f.line().toString().equals("Ti 2p"))
                .findFirst()
                .orElseThrow()
                .byDefault();
    }

    /** Components that the plot draws. */
    private static Set<String> components(Screen screen) throws Exception {
        BenchPane pane = (BenchPane) screen.node("bench");
        return Screen.fx(() -> pane.drawn().stream()
                .filter(c -> c.layer() == Layer.COMPONENTS)
                .map(BenchCurves::name)
                .collect(Collectors.toSet()));
    }

    private static void carbonOfTwoSpots(Screen screen) throws Exception {
        screen.click("empty-demo");
        screen.settled();
        screen.click("spot-2");
        screen.click("scan-" + PRIMER_CARBON);
        screen.robot.press(KeyCode.SHIFT).clickOn(screen.node("spot-3")).release(KeyCode.SHIFT);
        assertThat(screen.bench.chosen().get()).containsExactly("2", "3");
        assertThat(screen.bench.spectrum().get()).isEqualTo(PRIMER_CARBON);
        screen.robot.moveTo(screen.node("holder-bar"));
    }

    private static void allOff(Screen screen) throws Exception {
        for (Layer layer : Layer.values()) {
            if (((ToggleButton) screen.node(id(layer))).isSelected()) flip(screen, layer);
        }
        assertThat(screen.bench.layers().get()).isEmpty();
    }

    /** Without the layer its colour is nowhere in the plot; with it a curve's worth of it is. */
    private static void coloured(Screen screen, Layer layer, CurveStyle style) throws Exception {
        coloured(screen, layer, style, 60);
    }

    private static void coloured(Screen screen, Layer layer, CurveStyle style, int least) throws Exception {
        assertThat(count(plot(screen), style)).as(layer + " off").isZero();
        flip(screen, layer);
        screen.picture("layer-" + layer.name().toLowerCase(Locale.ROOT));
        assertThat(count(plot(screen), style)).as(layer + " on").isGreaterThan(least);
        flip(screen, layer);
        assertThat(count(plot(screen), style)).as(layer + " off again").isZero();
    }

    /** The pointer stays away, so that nothing is lit up by it. */
    private static void flip(Screen screen, Layer layer) throws Exception {
        ToggleButton button = (ToggleButton) screen.node(id(layer));
        Screen.fx(() -> {
            button.fire();
            return true;
        });
    }

    private static String id(Layer layer) {
        return "layer-" + layer.name().toLowerCase(Locale.ROOT);
    }

    private static BenchCurves drawn(Screen screen, Layer layer) throws Exception {
        BenchPane pane = (BenchPane) screen.node("bench");
        return Screen.fx(() -> pane.drawn().stream()
                .filter(c -> c.layer() == layer)
                .findFirst()
                .orElseThrow());
    }

    private static double top(BenchCurves c) {
        int top = 0;
        for (int i = 1; i < c.curve().channels(); i++)
            if (c.curve().value(i) > c.curve().value(top)) top = i;
        return c.curve().energy(top);
    }

    /** The plot without axes and key. */
    private static WritableImage plot(Screen screen) throws Exception {
        BenchPane pane = (BenchPane) screen.node("bench");
        return Screen.fx(() -> {
            javafx.scene.SnapshotParameters part = new javafx.scene.SnapshotParameters();
            java.awt.geom.Rectangle2D area = pane.plotted();
            part.setViewport(new javafx.geometry.Rectangle2D(
                    pane.getLayoutX() + area.getX() + 3,
                    pane.getLayoutY() + area.getY() + 3,
                    area.getWidth() - 6,
                    area.getHeight() - 6));
            return pane.snapshot(part, null);
        });
    }

    private static int count(WritableImage image, CurveStyle style) {
        java.awt.Color wanted = style == CurveStyle.MEASURED ? Palette.awt(Palette.LIGHT.ink()) : style.color();
        int found = 0;
        PixelReader pixels = image.getPixelReader();
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                int argb = pixels.getArgb(x, y);
                int off = Math.max(
                        Math.abs((argb >> 16 & 0xff) - wanted.getRed()),
                        Math.max(
                                Math.abs((argb >> 8 & 0xff) - wanted.getGreen()),
                                Math.abs((argb & 0xff) - wanted.getBlue())));
                if (off < 45) found++;
            }
        }
        return found;
    }

    private static int unlike(WritableImage a, WritableImage b) {
        if (a.getWidth() != b.getWidth() || a.getHeight() != b.getHeight()) return Integer.MAX_VALUE;
        int found = 0;
        for (int y = 0; y < a.getHeight(); y++) {
            for (int x = 0; x < a.getWidth(); x++) {
                if (a.getPixelReader().getArgb(x, y) != b.getPixelReader().getArgb(x, y)) found++;
            }
        }
        return found;
    }

    private static org.assertj.core.data.Offset<Double> within(double eV) {
        return org.assertj.core.api.Assertions.within(eV);
    }
}
