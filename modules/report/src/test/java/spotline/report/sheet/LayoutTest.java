package spotline.report.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.junit.jupiter.api.Test;
import spotline.holder.PointMm;
import spotline.report.print.Canvas;
import spotline.report.print.Ink;
import spotline.report.print.Mark;
import spotline.report.print.Typeface;
import spotline.report.print.Weight;

class LayoutTest {
    private static final Typeface TYPEFACE = new Typeface();

    @Test
    void labelsStandApartInOrderAndAsNearAsCanBe() {
        Random random = new Random(7);
        for (int trial = 0; trial < 300; trial++) {
            List<Callouts.Wish> wishes = new ArrayList<>();
            int count = 1 + random.nextInt(20);
            for (int i = 0; i < count; i++) {
                wishes.add(new Callouts.Wish(random.nextDouble() * 180, 3 + random.nextDouble() * 5));
            }
            double[] middles = Callouts.middles(wishes, 0, 186);
            List<Integer> order = new ArrayList<>();
            for (int i = 0; i < count; i++) order.add(i);
            order.sort(
                    (a, b) -> Double.compare(wishes.get(a).atMm(), wishes.get(b).atMm()));
            double end = 0;
            for (int i : order) {
                assertThat(middles[i] - wishes.get(i).widthMm() / 2).isGreaterThanOrEqualTo(end - 1e-9);
                end = middles[i] + wishes.get(i).widthMm() / 2;
            }
            assertThat(end).isLessThanOrEqualTo(186 + 1e-9);
        }
    }

    /** Derived: alone each label stands where it wishes; two that wish the same place share it evenly. */
    @Test
    void labelsMoveOnlyWhereTheyMust() {
        assertThat(Callouts.middles(List.of(new Callouts.Wish(50, 6), new Callouts.Wish(20, 6)), 0, 100))
                .containsExactly(new double[] {50, 20}, within(1e-9));
        assertThat(Callouts.middles(List.of(new Callouts.Wish(50, 6), new Callouts.Wish(50, 4)), 0, 100))
                .containsExactly(new double[] {47.5, 52.5}, within(1e-9));
        assertThat(Callouts.middles(List.of(new Callouts.Wish(0, 6), new Callouts.Wish(100, 6)), 0, 100))
                .containsExactly(new double[] {3, 97}, within(1e-9));
        assertThat(Callouts.rows(List.of(new Callouts.Wish(0, 60), new Callouts.Wish(0, 60)), 0, 100))
                .isEqualTo(2);
    }

    @Test
    void widthsAreThoseOfTheFontThatIsEmbedded() throws IOException {
        try (PDDocument document = new PDDocument()) {
            for (Weight weight : Weight.values()) {
                try (InputStream in = Typeface.open(weight)) {
                    PDFont font = PDType0Font.load(document, in, true);
                    String text = "Überhang 12.5 mm, α½ °";
                    assertThat(TYPEFACE.widthMm(text, 10, weight))
                            .isCloseTo(font.getStringWidth(text) / 100, within(0.05));
                }
            }
        }
    }

    @Test
    void linesFitAndLoseNothing() {
        String text = "one two " + "three".repeat(40) + " four";
        List<String> lines = TYPEFACE.lines(text, 40, 2.7, Weight.REGULAR);
        assertThat(lines).allMatch(line -> TYPEFACE.widthMm(line, 2.7, Weight.REGULAR) <= 40);
        assertThat(String.join("", lines).replace(" ", "")).isEqualTo(text.replace(" ", ""));
        assertThat(TYPEFACE.lines("", 40, 2.7, Weight.REGULAR)).isEmpty();
        assertThat(TYPEFACE.lines("wide", 0.1, 2.7, Weight.REGULAR)).containsExactly("w", "i", "d", "e");
        assertThat(TYPEFACE.cut("a long label", 12, 2.7, Weight.BOLD)).endsWith("...");
        assertThat(TYPEFACE.cut("short", 60, 2.7, Weight.BOLD)).isEqualTo("short");
    }

    /** Derived: lines x + y = 1, 2, 3 across a square of side 2 are sqrt 2, 2 sqrt 2 and sqrt 2 long. */
    @Test
    void hatchesEndAtTheEdge() {
        Canvas canvas = new Canvas(TYPEFACE);
        canvas.hatch(List.of(new PointMm(0, 0), new PointMm(2, 0), new PointMm(2, 2), new PointMm(0, 2)), 1, Ink.BLACK);
        List<Double> lengths = canvas.marks().stream()
                .map(mark -> ((Mark.Path) mark).corners())
                .map(c -> Math.hypot(
                        c.get(0).x() - c.get(1).x(), c.get(0).y() - c.get(1).y()))
                .filter(length -> length > 1e-9)
                .toList();
        assertThat(lengths).hasSize(3);
        assertThat(lengths.get(0)).isCloseTo(Math.sqrt(2), within(1e-9));
        assertThat(lengths.get(1)).isCloseTo(2 * Math.sqrt(2), within(1e-9));
        assertThat(lengths.get(2)).isCloseTo(Math.sqrt(2), within(1e-9));
    }
}
