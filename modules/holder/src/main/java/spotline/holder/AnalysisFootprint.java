package spotline.holder;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a spot's analysis area covers of the surface: an ellipse of the declared widths, lengthened by 1/cos of the
 * inclination. Source: geometry of an inclined plane.
 *
 * @param corners of the polygon that stands for the ellipse, mm on the holder
 * @param widthMm extent along x, mm
 * @param heightMm extent along y, mm
 * @param inclinationDeg between the surface normal and the analyser axis, degrees
 */
public record AnalysisFootprint(
        PointMm centre, List<PointMm> corners, double widthMm, double heightMm, double inclinationDeg) {
    /** The ellipse's axes are met exactly, and between corners the polygon is inside by 0.0012 of the half axis. */
    private static final int CORNERS = 64;

    public AnalysisFootprint {
        requireNonNull(centre, "centre");
        corners = List.copyOf(corners);
    }

    /** Empty when the spot's position or its analysis area is not known. */
    public static Optional<AnalysisFootprint> of(HolderPlan plan, Spot spot) {
        Optional<AreaMm> area = plan.analysisArea(spot);
        if (area.isEmpty() || spot.position().isEmpty()) return Optional.empty();
        return Optional.of(of(
                spot.position().get(),
                area.get(),
                inclinationDeg(plan, spot),
                spot.azimuthDeg().orElse(90)));
    }

    /** @param azimuthDeg direction in which the area is lengthened, degrees, counter-clockwise from x */
    public static AnalysisFootprint of(PointMm centre, AreaMm area, double inclinationDeg, double azimuthDeg) {
        double angle = Math.toRadians(azimuthDeg);
        boolean across = azimuthDeg == 90 || azimuthDeg == -90;
        double dx = across ? 0 : Math.cos(angle);
        double dy = across ? 1 : Math.sin(angle);
        double more = 1 / Math.cos(Math.toRadians(inclinationDeg)) - 1;
        List<PointMm> corners = new ArrayList<>(CORNERS);
        double halfWidth = 0;
        double halfHeight = 0;
        for (int i = 0; i < CORNERS; i++) {
            double turn = 2 * Math.PI * i / CORNERS;
            double x = area.x() / 2 * Math.cos(turn);
            double y = area.y() / 2 * Math.sin(turn);
            double along = more * (x * dx + y * dy);
            x += along * dx;
            y += along * dy;
            halfWidth = Math.max(halfWidth, x);
            halfHeight = Math.max(halfHeight, y);
            corners.add(new PointMm(centre.x() + x, centre.y() + y));
        }
        return new AnalysisFootprint(centre, corners, 2 * halfWidth, 2 * halfHeight, inclinationDeg);
    }

    /**
     * The spot's own emission angle; where it has none, the larger of the instrument's emission angle and the spot's
     * tilt, which describe one and the same inclination. Nothing declared is none.
     */
    private static double inclinationDeg(HolderPlan plan, Spot spot) {
        if (spot.emissionAngleDeg().isPresent()) return spot.emissionAngleDeg().getAsDouble();
        double emission = plan.file().instrument().emissionAngleDeg().orElse(0);
        return Math.max(emission, Math.abs(spot.tiltDeg().orElse(0)));
    }
}
