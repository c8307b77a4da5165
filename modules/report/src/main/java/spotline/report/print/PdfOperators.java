package spotline.report.print;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.pdmodel.graphics.state.PDExtendedGraphicsState;

/**
 * The content of one PDF page under construction. Numbers are written as they come, since figures are mostly numbers.
 *
 * <p>Source: ISO 32000-1, 8.4 to 9.4.
 */
final class PdfOperators {
    private final StringBuilder out = new StringBuilder(1 << 14);
    private final PDResources resources = new PDResources();
    private final Map<Weight, PDType0Font> fonts;
    private final Map<Weight, String> fontNames = new EnumMap<>(Weight.class);
    private final Set<PDType0Font> used = new LinkedHashSet<>();
    private final Map<String, String> opacities = new HashMap<>();

    PdfOperators(Map<Weight, PDType0Font> fonts) {
        this.fonts = fonts;
    }

    PDResources resources() {
        return resources;
    }

    Set<PDType0Font> used() {
        return used;
    }

    byte[] bytes() {
        return out.toString().getBytes(StandardCharsets.US_ASCII);
    }

    /** An operand or an operator as it stands in the file. */
    PdfOperators add(CharSequence token) {
        out.append(token).append(' ');
        return this;
    }

    /** A part of a text of numbers. */
    PdfOperators add(String text, int from, int to) {
        // A string is taken over as a whole, a part of one character by character.
        out.append(text.substring(from, to)).append(' ');
        return this;
    }

    /** Four decimals at most: under a thousandth of a point. */
    PdfOperators add(double value) {
        long scaled = Math.round(value * 1e4);
        if (scaled < 0) {
            out.append('-');
            scaled = -scaled;
        }
        out.append(scaled / 10_000);
        long rest = scaled % 10_000;
        if (rest != 0) {
            out.append('.');
            for (long unit = 1000; rest != 0; unit /= 10) {
                out.append((char) ('0' + rest / unit));
                rest %= unit;
            }
        }
        out.append(' ');
        return this;
    }

    PdfOperators end(String operator) {
        out.append(operator).append('\n');
        return this;
    }

    PdfOperators fill(double red, double green, double blue) {
        return add(red).add(green).add(blue).end("rg");
    }

    PdfOperators stroke(double red, double green, double blue) {
        return add(red).add(green).add(blue).end("RG");
    }

    /** Text with its origin by the matrix of the operands. */
    void text(Weight weight, double size, double[] matrix, String text) throws IOException {
        PDType0Font font = Objects.requireNonNull(fonts.get(weight));
        String name = fontNames.computeIfAbsent(weight, w -> name(resources.add((PDFont) font)));
        add("BT").add(name).add(size).end("Tf");
        for (double part : matrix) add(part);
        end("Tm");
        used.add(font);
        text.codePoints().forEach(font::addToSubset);
        out.append('<');
        for (byte b : font.encode(text)) {
            out.append(Character.forDigit(b >> 4 & 15, 16)).append(Character.forDigit(b & 15, 16));
        }
        out.append("> Tj ET\n");
    }

    void opacity(double fill, double stroke) {
        String name = opacities.computeIfAbsent(fill + " " + stroke, key -> {
            PDExtendedGraphicsState state = new PDExtendedGraphicsState();
            state.setNonStrokingAlphaConstant((float) fill);
            state.setStrokingAlphaConstant((float) stroke);
            return name(resources.add(state));
        });
        add(name).end("gs");
    }

    void image(PDImageXObject image, double x, double y, double width, double height) {
        add("q").add(width).add("0 0").add(height).add(x).add(y).add("cm");
        add(name(resources.add(image))).end("Do Q");
    }

    private static String name(COSName name) {
        return "/" + name.getName();
    }
}
