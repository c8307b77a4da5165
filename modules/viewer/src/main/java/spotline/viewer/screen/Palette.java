package spotline.viewer.screen;

import java.util.List;
import javafx.scene.paint.Color;
import spotline.analysis.charge.ChargeVerdict;
import spotline.core.Severity;
import spotline.report.figure.CurveStyle;

/**
 * Colours of the drawn parts, for a light and a dark room.
 *
 * <p>Source of the hues: M. Okabe and K. Ito, Color Universal Design (2008); shape or words always say the same as a colour.
 */
public enum Palette {
    LIGHT("#fbfaf7", "#f1efe9", "#d8d4ca", "#23282d", "#6a6f73", "#0b6e75", "#e6e2d8", "#c9c3b4"),
    DARK("#1c2023", "#23282c", "#3a4147", "#e8e6e1", "#9aa1a6", "#4fb6bd", "#2d3338", "#4a5258");

    /** How far curves go towards white on dark paper. */
    private static final double LIFT = 0.35;

    private static final List<Color> SHARES = List.of(
            Color.web("#5b6b7a"),
            Color.web("#d7793b"),
            Color.web("#3e8fb0"),
            Color.web("#3f9b7a"),
            Color.web("#b8688f"),
            Color.web("#c9a227"),
            Color.web("#7a6fb0"),
            Color.web("#8c5a3c"));

    private final Color paper;
    private final Color panel;
    private final Color rule;
    private final Color ink;
    private final Color quiet;
    private final Color accent;
    private final Color specimen;
    private final Color metal;

    Palette(
            String paper,
            String panel,
            String rule,
            String ink,
            String quiet,
            String accent,
            String specimen,
            String metal) {
        this.paper = Color.web(paper);
        this.panel = Color.web(panel);
        this.rule = Color.web(rule);
        this.ink = Color.web(ink);
        this.quiet = Color.web(quiet);
        this.accent = Color.web(accent);
        this.specimen = Color.web(specimen);
        this.metal = Color.web(metal);
    }

    /** Of an element, the same in every strip of the program: by its atomic number. */
    public static Color ofElement(int atomicNumber) {
        return switch (atomicNumber) {
            case 6 -> SHARES.get(0);
            case 8 -> SHARES.get(1);
            default -> SHARES.get(2 + Math.floorMod(atomicNumber * 5, SHARES.size() - 2));
        };
    }

    public Color ofVerdict(ChargeVerdict verdict) {
        return switch (verdict) {
            case ACCEPTED -> this == LIGHT ? Color.web("#00785c") : Color.web("#35b894");
            case NOT_NEEDED -> quiet;
            case DOUBTFUL -> this == LIGHT ? Color.web("#b06b00") : Color.web("#f0a830");
            case FAILED -> this == LIGHT ? Color.web("#b8410e") : Color.web("#ff7a45");
        };
    }

    public Color ofSeverity(Severity severity) {
        return switch (severity) {
            case NOTE -> quiet;
            case CAUTION -> ofVerdict(ChargeVerdict.DOUBTFUL);
            case STOP -> ofVerdict(ChargeVerdict.FAILED);
        };
    }

    public Color paper() {
        return paper;
    }

    public Color panel() {
        return panel;
    }

    public Color rule() {
        return rule;
    }

    public Color ink() {
        return ink;
    }

    public Color quiet() {
        return quiet;
    }

    public Color accent() {
        return accent;
    }

    public Color specimen() {
        return specimen;
    }

    public Color metal() {
        return metal;
    }

    /** Of a curve: as in the report's figures, and lighter on dark paper. */
    public Color of(CurveStyle style) {
        if (style == CurveStyle.MEASURED) return ink;
        Color color = Color.web(style.hex());
        return this == DARK ? color.interpolate(Color.WHITE, LIFT) : color;
    }

    /** For the plotting library. */
    public static java.awt.Color awt(Color color) {
        return new java.awt.Color(
                (float) color.getRed(), (float) color.getGreen(), (float) color.getBlue(), (float) color.getOpacity());
    }
}
