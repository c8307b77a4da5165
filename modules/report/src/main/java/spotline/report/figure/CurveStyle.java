package spotline.report.figure;

import java.awt.BasicStroke;
import java.awt.Color;
import java.util.List;
import java.util.Locale;

/**
 * How a curve looks. Curves differ in dashes as well as in colour, so that print without colour tells them apart.
 *
 * <p>Source of the colours: M. Okabe and K. Ito, Color Universal Design (2008), a set told apart by all kinds of colour
 * vision.
 */
public enum CurveStyle {
    MEASURED(new Color(0x22, 0x22, 0x22), 1.0f),
    /** Measured channels drawn one by one. */
    POINTS(new Color(0x22, 0x22, 0x22), 2.2f, 2.2f, 4),
    BACKGROUND(new Color(0xD5, 0x5E, 0x00), 1.3f, 5, 2.5f),
    WINDOW(new Color(0x77, 0x77, 0x77), 0.8f, 2, 2),
    SUM(new Color(0x00, 0x72, 0xB2), 1.6f),
    FIRST(new Color(0x00, 0x9E, 0x73), 1.3f, 7, 2),
    SECOND(new Color(0xCC, 0x79, 0xA7), 1.3f, 2.5f, 2),
    THIRD(new Color(0xE6, 0x9F, 0x00), 1.3f, 7, 2, 1.5f, 2),
    FOURTH(new Color(0x56, 0xB4, 0xE9), 1.3f, 4, 1.5f, 1.5f, 1.5f, 1.5f, 1.5f);

    private static final List<CurveStyle> COMPONENTS = List.of(FIRST, SECOND, THIRD, FOURTH);

    private final Color color;
    private final float width;
    private final List<Float> dashes;

    CurveStyle(Color color, float width, float... dashes) {
        this.color = color;
        this.width = width;
        Float[] boxed = new Float[dashes.length];
        for (int i = 0; i < boxed.length; i++) boxed[i] = dashes[i];
        this.dashes = List.of(boxed);
    }

    /** Of the components of a fit, counted from 0; from the fifth on the styles come round again. */
    public static CurveStyle component(int index) {
        return COMPONENTS.get(index % COMPONENTS.size());
    }

    public Color color() {
        return color;
    }

    public BasicStroke stroke() {
        if (dashes.isEmpty()) return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND);
        float[] pattern = new float[dashes.size()];
        for (int i = 0; i < pattern.length; i++) pattern[i] = dashes.get(i);
        return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, pattern, 0);
    }

    /** {@code #rrggbb}. */
    public String hex() {
        return String.format(Locale.ROOT, "#%06x", color.getRGB() & 0xFFFFFF);
    }

    /** For the {@code stroke-dasharray} of a key; empty for a full line. */
    public String dashArray() {
        return String.join(
                " ",
                dashes.stream().map(d -> String.format(Locale.ROOT, "%.1f", d)).toList());
    }

    public String strokeWidth() {
        return String.format(Locale.ROOT, "%.1f", width);
    }
}
