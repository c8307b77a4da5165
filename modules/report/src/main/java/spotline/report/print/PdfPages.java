package spotline.report.print;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Calendar;
import java.util.EnumMap;
import java.util.GregorianCalendar;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageXYZDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineNode;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import spotline.holder.PointMm;

/** Writes pages as PDF, with the glyphs they use embedded. Source: ISO 32000-1; 1 pt = 25.4/72 mm. */
public final class PdfPages {
    private static final double POINTS_PER_MM = 72 / 25.4;

    private final Frame frame;
    private final Map<Weight, PDType0Font> fonts;
    private final Typeface typeface;
    private final Set<PDType0Font> used = new LinkedHashSet<>();

    private PdfPages(Frame frame, Map<Weight, PDType0Font> fonts, Typeface typeface) {
        this.frame = frame;
        this.fonts = fonts;
        this.typeface = typeface;
    }

    /** @param typeface what of a text can be shown */
    public static byte[] write(SheetPages pages, Frame frame, Typeface typeface, Optional<Instant> made) {
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
            Map<Weight, PDType0Font> fonts = new EnumMap<>(Weight.class);
            for (Weight weight : Weight.values()) {
                fonts.put(weight, PDType0Font.load(document, typeface.font(weight), true));
            }
            PdfPages writer = new PdfPages(frame, fonts, typeface);
            for (List<Mark> marks : pages.marks()) writer.page(document, marks);
            // A font is embedded with the glyphs it was used for; one that no page uses is not in the file.
            for (PDType0Font font : writer.used) font.subset();
            if (!pages.bookmarks().isEmpty()) writer.outline(document, pages.bookmarks());
            preferences(document, pages.fullSize());
            document.save(out);
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException("a PDF could not be made in memory", e);
        }
    }

    /** Full size asks the viewer not to fit the page to the printer's paper. */
    private static void preferences(PDDocument document, boolean fullSize) {
        PDViewerPreferences preferences = new PDViewerPreferences(new org.apache.pdfbox.cos.COSDictionary());
        if (fullSize) preferences.setPrintScaling(PDViewerPreferences.PRINT_SCALING.None);
        preferences.setDisplayDocTitle(true);
        document.getDocumentCatalog().setViewerPreferences(preferences);
        document.getDocumentCatalog().setLanguage("en");
    }

    private void page(PDDocument document, List<Mark> marks) throws IOException {
        PDPage page = new PDPage(
                new PDRectangle((float) points(frame.paperWidthMm()), (float) points(frame.paperHeightMm())));
        document.addPage(page);
        PdfOperators out = new PdfOperators(fonts);
        for (Mark mark : marks) {
            if (mark instanceof Mark.Path path) path(out, path);
            else if (mark instanceof Mark.Words words) words(out, words);
            else if (mark instanceof Mark.Vector vector) vector(out, vector);
            else if (mark instanceof Mark.Picture picture) picture(document, out, picture);
        }
        used.addAll(out.used());
        page.setResources(out.resources());
        PDStream content = new PDStream(document);
        content.getCOSObject().setItem(COSName.FILTER, COSName.FLATE_DECODE);
        Deflater quick = new Deflater(Deflater.BEST_SPEED);
        try (DeflaterOutputStream to =
                new DeflaterOutputStream(content.getCOSObject().createRawOutputStream(), quick)) {
            to.write(out.bytes());
        }
        quick.end();
        page.setContents(content);
    }

    private void outline(PDDocument document, List<SheetPages.Bookmark> bookmarks) {
        PDDocumentOutline outline = new PDDocumentOutline();
        document.getDocumentCatalog().setDocumentOutline(outline);
        Map<Integer, PDOutlineNode> above = new HashMap<>();
        above.put(0, outline);
        for (SheetPages.Bookmark bookmark : bookmarks) {
            PDPageXYZDestination place = new PDPageXYZDestination();
            place.setPage(document.getPage(bookmark.page()));
            place.setTop((int) y(bookmark.y()));
            place.setLeft(0);
            PDOutlineItem item = new PDOutlineItem();
            item.setTitle(bookmark.text());
            item.setDestination(place);
            int level = bookmark.level();
            while (level > 1 && !above.containsKey(level - 1)) level--;
            Objects.requireNonNull(above.get(level - 1)).addLast(item);
            int own = level;
            above.keySet().removeIf(deeper -> deeper > own);
            above.put(level, item);
        }
    }

    private void vector(PdfOperators out, Mark.Vector vector) throws IOException {
        out.add("q 1 0 0 1").add(x(vector.x())).add(y(vector.y())).end("cm");
        new SvgDrawing(out, typeface).draw(vector.svg(), points(vector.widthMm()), points(vector.heightMm()));
        out.end("Q");
    }

    private void picture(PDDocument document, PdfOperators out, Mark.Picture picture) throws IOException {
        PDImageXObject image =
                PDImageXObject.createFromByteArray(document, picture.image().bytes(), "mark");
        out.image(
                image,
                x(picture.x()),
                y(picture.y() + picture.heightMm()),
                points(picture.widthMm()),
                points(picture.heightMm()));
    }

    private static double points(double mm) {
        return mm * POINTS_PER_MM;
    }

    private double x(double mm) {
        return points(frame.leftMm() + mm);
    }

    private double y(double mm) {
        return points(frame.paperHeightMm() - frame.topMm() - mm);
    }

    private void path(PdfOperators out, Mark.Path path) {
        boolean stroked = path.widthMm() > 0;
        if (stroked) {
            out.stroke(path.ink().red(), path.ink().green(), path.ink().blue());
            out.add(points(path.widthMm())).end("w");
            double dash = points(path.dashMm());
            if (path.dashMm() > 0) out.add("[").add(dash).add(dash).end("] 0 d");
            else out.end("[] 0 d");
        }
        path.fill().ifPresent(fill -> out.fill(fill.red(), fill.green(), fill.blue()));
        boolean first = true;
        for (PointMm corner : path.corners()) {
            out.add(x(corner.x())).add(y(corner.y())).end(first ? "m" : "l");
            first = false;
        }
        if (path.closed()) out.end("h");
        out.end(path.fill().isPresent() ? stroked ? "B" : "f" : "S");
    }

    private void words(PdfOperators out, Mark.Words words) throws IOException {
        out.fill(words.ink().red(), words.ink().green(), words.ink().blue());
        double[] place = {1, 0, 0, 1, x(words.x()), y(words.y())};
        out.text(words.weight(), points(words.sizeMm()), place, words.text());
    }
}
