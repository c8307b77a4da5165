package spotline.holder.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.LongRange;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import spotline.core.Finding;
import spotline.holder.Shapes;

class PlanGeometryPropertiesTest {
    private static final Polygon HOLDER = Shapes.polygon(Plans.BAR.outline());

    /** Moving holder and specimen together changes no distance. */
    @Property(tries = 200, seed = "11")
    void overhangDoesNotDependOnWhereTheHolderIs(
            @ForAll @DoubleRange(min = -10, max = 120) double x,
            @ForAll @DoubleRange(min = -10, max = 30) double y,
            @ForAll @DoubleRange(min = 0, max = 180) double rotation,
            @ForAll @DoubleRange(min = -500, max = 500) double shift,
            @ForAll @DoubleRange(min = -180, max = 180) double turn) {
        Geometry piece = piece(x, y, rotation);
        AffineTransformation move =
                AffineTransformation.rotationInstance(Math.toRadians(turn)).translate(shift, -shift);

        assertThat(farthest(move.transform(piece), move.transform(HOLDER)))
                .isCloseTo(farthest(piece, HOLDER), within(1e-6));
    }

    /** Derived: off a long straight edge the overhang is the half extent less the distance to the edge. */
    @Property(tries = 200, seed = "12")
    void overhangOfAStraightEdgeIsInClosedForm(
            @ForAll @DoubleRange(min = -3, max = 12) double toEdge,
            @ForAll @DoubleRange(min = 0, max = 90) double rotation) {
        double angle = Math.toRadians(rotation);
        double halfExtent = 6 * Math.sin(angle) + 4 * Math.cos(angle);

        // -y side of the bar, far from its ends
        double expected = halfExtent - toEdge;
        if (toEdge + halfExtent < 20) {
            double found = farthest(piece(50, toEdge, rotation), HOLDER);
            assertThat(found).isCloseTo(expected > 1e-6 ? expected : 0, within(2e-6));
        } else {
            assertThat(farthest(piece(50, toEdge, rotation), HOLDER)).isGreaterThan(0);
        }
    }

    /** The order in which specimens and spots stand in the file changes nothing but the order of the findings. */
    @Property(tries = 50, seed = "13")
    void theOrderOfSpecimensChangesNothing(@ForAll @LongRange(min = 0, max = 1000) long seed) {
        Random random = new Random(seed);
        List<String> specimens = new ArrayList<>();
        List<String> spots = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            double x = random.nextDouble() * 112;
            double y = random.nextDouble() * 20;
            specimens.add(Plans.specimen("S" + i, x, y, random.nextInt(90), "\"width\": 14, \"height\": 7", ""));
            spots.add(Plans.spot("p" + i, "S" + i, x + random.nextGaussian() * 4, y, ""));
        }
        List<String> forward = told(specimens, spots);
        Collections.shuffle(specimens, random);
        Collections.shuffle(spots, random);

        assertThat(told(specimens, spots)).containsExactlyInAnyOrderElementsOf(forward);
    }

    private static List<String> told(List<String> specimens, List<String> spots) {
        return Plans.check("\"specimens\": [" + String.join(",", specimens) + "], \"spots\": ["
                        + String.join(",", spots) + "]")
                .stream()
                .map(Finding::toString)
                .toList();
    }

    private static Geometry piece(double x, double y, double rotation) {
        return Shapes.footprint(
                        Plans.plan(Plans.rectangle(x, y, rotation)).specimens().get(0))
                .orElseThrow();
    }

    private static double farthest(Geometry piece, Geometry holder) {
        List<Reach> parts = Reach.beyond(piece, holder, 0);
        return parts.isEmpty() ? 0 : parts.get(0).distanceMm();
    }
}
