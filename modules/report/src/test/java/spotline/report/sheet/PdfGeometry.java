package spotline.report.sheet;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import spotline.holder.PointMm;

/** The lines of a PDF's pages as they stand in the file, mm from the lower left corner of the paper. */
final class PdfGeometry {
    private static final double MM_PER_POINT = 25.4 / 72;

    /** The corners of one path. */
    record Path(List<PointMm> corners) {}

    private PdfGeometry() {}

    static List<Path> paths(byte[] pdf, int pageIndex) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return paths(document.getPage(pageIndex));
        }
    }

    private static List<Path> paths(PDPage page) throws IOException {
        List<Path> paths = new ArrayList<>();
        List<COSNumber> numbers = new ArrayList<>();
        List<PointMm> corners = new ArrayList<>();
        PDFStreamParser parser = new PDFStreamParser(page);
        for (Object token = parser.parseNextToken(); token != null; token = parser.parseNextToken()) {
            if (token instanceof COSNumber number) {
                numbers.add(number);
                continue;
            }
            if (!(token instanceof Operator operator)) continue;
            switch (operator.getName()) {
                case "m", "l" -> {
                    if (operator.getName().equals("m")) corners.clear();
                    corners.add(new PointMm(
                            numbers.get(0).floatValue() * MM_PER_POINT,
                            numbers.get(1).floatValue() * MM_PER_POINT));
                }
                case "S", "s", "f", "B", "b" -> paths.add(new Path(List.copyOf(corners)));
                case "cm" -> throw new AssertionError("a transformation would have to be followed");
                default -> {}
            }
            numbers.clear();
        }
        return paths;
    }
}
