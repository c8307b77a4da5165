package spotline.report.figure;

import java.awt.BasicStroke;
import java.awt.Color;
import java.util.List;

/**
 * Colours of figures for print, and dashes beside them, so that a copy without colour still tells curves apart.
 *
 * <p>Source: our own, chosen so that the nearest two stay well apart (CIE 1976 Lab) for full colour vision and for vision
 * without the long or the middle cones as simulated after F. Vienot, H. Brettel, J. D. Mollon, Color Res. Appl. 24 (1999) 243.
 */
final class PrintPalette {
    static final Color MEASURED = Color.BLACK;
    static final Color AXIS = new Color(0x33, 0x33, 0x33);
    static final Color FAINT = new Color(0xBB, 0xBB, 0xBB);

    /** In the order they are used. */
    static final List<Color> COLOURS = List.of(
            new Color(0x3e7beb),
            new Color(0xe8b300),
            new Color(0x00004c),
            new Color(0x7bcc93),
            new Color(0x474800),
            new Color(0x45809a));

    private static final float[][] DASHES = {{}, {5, 1.6f}, {1.4f, 1.2f}, {5, 1.4f, 1.2f, 1.4f}, {8, 2}, {2.6f, 1.2f}};

    private PrintPalette() {}

    static Color colour(int index) {
        return COLOURS.get(index % COLOURS.size());
    }

    static BasicStroke stroke(int index, double widthPt) {
        float[] dashes = DASHES[index % DASHES.length];
        float width = (float) widthPt;
        return dashes.length == 0
                ? new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND)
                : new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, dashes, 0);
    }
}
