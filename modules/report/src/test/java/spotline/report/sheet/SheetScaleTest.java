package spotline.report.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Polygon;
import spotline.holder.AnalysisFootprint;
import spotline.holder.HolderPlan;
import spotline.holder.HolderTemplate;
import spotline.holder.HolderTemplates;
import spotline.holder.PointMm;
import spotline.holder.Shapes;
import spotline.holder.Specimen;
import spotline.holder.Spot;
import spotline.report.print.Mark;
import spotline.report.print.Paper;
import spotline.report.print.SheetPages;

/** The sheet is to scale within 0.2 mm, on the PDF's own coordinates and on the picture of it. */
class SheetScaleTest {
    private static final double WITHIN_MM = 0.2;

    /** Whether a path has these corners, up to where it is on the page; the first corner tells where. */
    private static boolean same(PdfGeometry.Path path, List<PointMm> corners, PointMm origin) {
        if (path.corners().size() != corners.size()) return false;
        for (int i = 0; i < corners.size(); i++) {
            double dx = path.corners().get(i).x() - origin.x() - corners.get(i).x();
            double dy = path.corners().get(i).y() - origin.y() - corners.get(i).y();
            if (Math.hypot(dx, dy) > WITHIN_MM) return false;
        }
        return true;
    }

    private static List<PointMm> corners(Polygon shape) {
        Coordinate[] ring = shape.getExteriorRing().getCoordinates();
        List<PointMm> corners = new ArrayList<>();
        for (int i = 0; i + 1 < ring.length; i++) corners.add(new PointMm(ring[i].x, ring[i].y));
        return corners;
    }

    /** Where on the page the holder's own origin is. */
    private static PointMm origin(List<PdfGeometry.Path> paths, HolderTemplate holder) {
        PointMm first = holder.outline().get(0);
        for (PdfGeometry.Path path : paths) {
            PointMm at = path.corners().get(0);
            PointMm origin = new PointMm(at.x() - first.x(), at.y() - first.y());
            if (same(path, holder.outline(), origin)) return origin;
        }
        throw new AssertionError("no path is the holder's outline");
    }

    @ParameterizedTest
    @CsvSource({
        "flat-bar, A4, 40, 10",
        "flat-bar, LETTER, 40, 10",
        "stub-end-bar, A4, 20, 9",
        "stub-end-bar, LETTER, 20, 9",
        "temperature-stage, A4, 16, 16",
        "temperature-stage, LETTER, 16, 16",
        "cold-stub-bar, A4, 20, 10",
        "cold-stub-bar, LETTER, 20, 10",
        "rotating-stage, A4, 10, 15",
        "rotating-stage, LETTER, 10, 15"
    })
    void everythingOnTheHolderIsWhereItBelongs(String template, Paper paper, double x, double y) throws IOException {
        HolderTemplate holder = HolderTemplates.shipped(template);
        HolderPlan plan = Sheets.plan(Sheets.body(x, y));
        byte[] pdf = LoadingSheet.of(plan, Optional.of(holder)).pdf(paper, Optional.empty());
        List<PdfGeometry.Path> paths = PdfGeometry.paths(pdf, 0);
        PointMm origin = origin(paths, holder);
        List<List<PointMm>> wanted = new ArrayList<>();
        wanted.add(holder.usable());
        holder.keepOuts().forEach(area -> wanted.add(area.outline()));
        for (Specimen specimen : plan.specimens()) {
            Shapes.footprint(specimen).ifPresent(shape -> wanted.add(corners(shape)));
            Shapes.tapePatch(specimen).ifPresent(shape -> wanted.add(corners(shape)));
            specimen.mount()
                    .clips()
                    .forEach(clip -> wanted.add(corners(Shapes.clip(clip).orElseThrow())));
        }
        for (Spot spot : plan.spots()) {
            AnalysisFootprint area = AnalysisFootprint.of(plan, spot).orElseThrow();
            wanted.add(area.corners());
            PointMm at = area.centre();
            wanted.add(List.of(new PointMm(at.x() - 0.9, at.y()), new PointMm(at.x() + 0.9, at.y())));
        }
        assertThat(wanted).hasSizeGreaterThanOrEqualTo(11);
        for (List<PointMm> corners : wanted) {
            assertThat(paths).as("%s", corners).anyMatch(path -> same(path, corners, origin));
        }
    }

    @ParameterizedTest
    @CsvSource({"A4, 595.2756, 841.8898", "LETTER, 612, 792"})
    void theRulerIsAHundredMillimetresLongAndThePaperAsLargeAsItIs(Paper paper, float width, float height)
            throws IOException {
        byte[] pdf = Sheets.sheet("flat-bar", Sheets.body(40, 10)).pdf(paper, Optional.empty());
        List<PdfGeometry.Path> paths = PdfGeometry.paths(pdf, 0);
        List<PdfGeometry.Path> rulers = paths.stream()
                .filter(path -> path.corners().size() == 2)
                .filter(path -> Math.abs(length(path) - 100) < WITHIN_MM)
                .toList();
        assertThat(rulers).hasSize(1);
        PointMm zero = rulers.get(0).corners().get(0);
        for (int mm = 0; mm <= 100; mm++) {
            double x = zero.x() + mm;
            assertThat(paths)
                    .as("tick at %s mm", mm)
                    .anyMatch(path -> path.corners().size() == 2
                            && Math.abs(path.corners().get(0).x() - x) < 0.02
                            && Math.abs(path.corners().get(1).x() - x) < 0.02
                            && Math.abs(path.corners().get(0).y() - zero.y()) < 0.02
                            && length(path) > 1);
        }
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getPage(0).getMediaBox().getWidth()).isCloseTo(width, within(0.01f));
            assertThat(document.getPage(0).getMediaBox().getHeight()).isCloseTo(height, within(0.01f));
            assertThat(document.getDocumentCatalog().getViewerPreferences().getPrintScaling())
                    .isEqualTo("None");
        }
    }

    private static double length(PdfGeometry.Path path) {
        PointMm a = path.corners().get(0);
        PointMm b = path.corners().get(1);
        return Math.hypot(a.x() - b.x(), a.y() - b.y());
    }

    /** At 254 dpi a pixel is 0.1 mm: the ruler is 1000 long, the edge of the 112 mm bar 1120 and its own width. */
    @Test
    void thePictureOfItIsToScale() throws IOException {
        byte[] pdf = Sheets.sheet("flat-bar", Sheets.body(40, 10)).pdf(Paper.A4, Optional.empty());
        try (PDDocument document = Loader.loadPDF(pdf)) {
            BufferedImage image = new PDFRenderer(document).renderImageWithDPI(0, 254, ImageType.GRAY);
            assertThat(image.getWidth()).isBetween(2099, 2100);
            List<Integer> across = runs(image, false);
            assertThat(across)
                    .filteredOn(run -> run > 950 && run < 1050)
                    .isNotEmpty()
                    .allMatch(run -> Math.abs(run - 1000) <= 2);
            // The upper edge is shorter, since the corner is cut off there.
            assertThat(across)
                    .filteredOn(run -> run > 1110 && run < 1200)
                    .isNotEmpty()
                    .allMatch(run -> Math.abs(run - 1124) <= 2);
            // The left edge of the bar, 20 mm and the width of its line.
            assertThat(runs(image, true))
                    .filteredOn(run -> run > 180 && run < 230)
                    .isNotEmpty()
                    .allMatch(run -> Math.abs(run - 204) <= 2);
        }
    }

    /** Lengths of the longest dark run of each row, or column. */
    private static List<Integer> runs(BufferedImage image, boolean columns) {
        List<Integer> longest = new ArrayList<>();
        int lines = columns ? image.getWidth() : image.getHeight();
        int along = columns ? image.getHeight() : image.getWidth();
        for (int line = 0; line < lines; line++) {
            int best = 0;
            int run = 0;
            for (int i = 0; i < along; i++) {
                int grey = columns
                        ? image.getRaster().getSample(line, i, 0)
                        : image.getRaster().getSample(i, line, 0);
                run = grey < 128 ? run + 1 : 0;
                best = Math.max(best, run);
            }
            longest.add(best);
        }
        return longest;
    }

    @Test
    void aHolderTooLongForThePaperIsTurnedAndOneTooLargeIsReducedAndSaysSo() {
        HolderTemplate longBar = plate(230, 40);
        SheetPages turned = Sheets.pages(Sheets.plan(Sheets.spots(12, 230, 40)), Optional.of(longBar));
        assertThat(turned.landscape()).isTrue();
        assertThat(words(turned)).contains("The holder as seen from the analyser, drawn 1:1");
        SheetPages reduced = Sheets.pages(Sheets.plan(Sheets.spots(12, 600, 420)), Optional.of(plate(600, 420)));
        assertThat(words(reduced)).contains("The holder as seen from the analyser, drawn 1:4, not at full size");
        List<Mark.Path> outline = reduced.marks().get(0).stream()
                .filter(Mark.Path.class::isInstance)
                .map(Mark.Path.class::cast)
                .filter(path -> path.role().equals("holder outline"))
                .toList();
        assertThat(outline)
                .singleElement()
                .satisfies(path -> assertThat(path.corners().get(1).x()
                                - path.corners().get(0).x())
                        .isCloseTo(150, within(1e-9)));
    }

    static HolderTemplate plate(double width, double height) {
        try {
            String corners =
                    "[ { \"x\": 0, \"y\": 0 }, { \"x\": %1$s, \"y\": 0 }, { \"x\": %1$s, \"y\": %2$s }, { \"x\": 0, \"y\": %2$s } ]"
                            .formatted(width, height);
            String text = "{ \"format\": \"spotline-holder-template/1\", \"name\": \"plate\", \"outlineMm\": " + corners
                    + " }";
            return HolderTemplates.read("plate.json", text.getBytes(java.nio.charset.StandardCharsets.UTF_8));
        } catch (spotline.core.ReadException e) {
            throw new AssertionError(e);
        }
    }

    static List<String> words(SheetPages pages) {
        return pages.marks().stream()
                .flatMap(List::stream)
                .filter(Mark.Words.class::isInstance)
                .map(mark -> ((Mark.Words) mark).text())
                .toList();
    }
}
