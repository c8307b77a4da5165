package spotline.report.sheet;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Calendar;
import java.util.EnumMap;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import spotline.holder.PointMm;

/** Writes pages as PDF, with the glyphs they use embedded. Source: ISO 32000-1; 1 pt = 25.4/72 mm. */
final class PdfPages {
    private static final double POINTS_PER_MM = 72 / 25.4;

    private final Frame frame;
    private final Map<Weight, PDFont> fonts;

    private PdfPages(Frame frame, Map<Weight, PDFont> fonts) {
        this.frame = frame;
        this.fonts = fonts;
    }

    static byte[] write(SheetPages pages, Frame frame, Optional<Instant> made) {
        try (PDDocument document = new PDDocument();
                ByteArrayOutputStream out = new ByteArrayOutputStream()) {
            // The writer would make an id of the time of day.
            document.setDocumentId(0L);
            document.getDocumentInformation().setTitle(pages.title());
            document.getDocumentInformation().setCreator("Spotline");
            if (made.isPresent()) {
                Calendar time = GregorianCalendar.from(made.get().atZone(ZoneOffset.UTC));
                document.getDocumentInformation().setCreationDate(time);
                document.getDocumentInformation().setModificationDate(time);
            }
            Map<Weight, PDFont> fonts = new EnumMap<>(Weight.class);
            for (Weight weight : Weight.values()) {
                try (InputStream in = Typeface.open(weight)) {
                    fonts.put(weight, PDType0Font.load(document, in, true));
                }
            }
            PdfPages writer = new PdfPages(frame, fonts);
            for (List<Mark> marks : pages.marks()) writer.page(document, marks);
            fullSize(document);
            document.save(out);
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException("a PDF could not be made in memory", e);
        }
    }

    /** Asks the viewer not to fit the page to the printer's paper. */
    private static void fullSize(PDDocument document) {
        PDViewerPreferences preferences = new PDViewerPreferences(new org.apache.pdfbox.cos.COSDictionary());
        preferences.setPrintScaling(PDViewerPreferences.PRINT_SCALING.None);
        preferences.setDisplayDocTitle(true);
        document.getDocumentCatalog().setViewerPreferences(preferences);
        document.getDocumentCatalog().setLanguage("en");
    }

    private void page(PDDocument document, List<Mark> marks) throws IOException {
        PDPage page = new PDPage(new PDRectangle(points(frame.paperWidthMm()), points(frame.paperHeightMm())));
        document.addPage(page);
        try (PDPageContentStream stream = new PDPageContentStream(document, page)) {
            for (Mark mark : marks) {
                if (mark instanceof Mark.Path path) path(stream, path);
                else if (mark instanceof Mark.Words words) words(stream, words);
            }
        }
    }

    private static float points(double mm) {
        return (float) (mm * POINTS_PER_MM);
    }

    private float x(double mm) {
        return points(frame.leftMm() + mm);
    }

    private float y(double mm) {
        return points(frame.paperHeightMm() - frame.topMm() - mm);
    }

    private void path(PDPageContentStream stream, Mark.Path path) throws IOException {
        boolean stroked = path.widthMm() > 0;
        if (stroked) {
            stream.setStrokingColor((float) path.ink().red(), (float) path.ink().green(), (float)
                    path.ink().blue());
            stream.setLineWidth(points(path.widthMm()));
            float dash = points(path.dashMm());
            stream.setLineDashPattern(path.dashMm() > 0 ? new float[] {dash, dash} : new float[0], 0);
        }
        if (path.fill().isPresent()) {
            Ink fill = path.fill().get();
            stream.setNonStrokingColor((float) fill.red(), (float) fill.green(), (float) fill.blue());
        }
        boolean first = true;
        for (PointMm corner : path.corners()) {
            if (first) stream.moveTo(x(corner.x()), y(corner.y()));
            else stream.lineTo(x(corner.x()), y(corner.y()));
            first = false;
        }
        if (path.closed()) stream.closePath();
        if (path.fill().isPresent() && stroked) stream.fillAndStroke();
        else if (path.fill().isPresent()) stream.fill();
        else stream.stroke();
    }

    private void words(PDPageContentStream stream, Mark.Words words) throws IOException {
        stream.setNonStrokingColor(
                (float) words.ink().red(), (float) words.ink().green(), (float)
                        words.ink().blue());
        stream.beginText();
        stream.setFont(Objects.requireNonNull(fonts.get(words.weight())), points(words.sizeMm()));
        stream.newLineAtOffset(x(words.x()), y(words.y()));
        stream.showText(words.text());
        stream.endText();
    }
}
