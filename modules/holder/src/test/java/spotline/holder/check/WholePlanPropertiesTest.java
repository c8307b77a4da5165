package spotline.holder.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import spotline.core.Finding;
import spotline.holder.HolderTemplate;
import spotline.holder.HolderTemplate.HeightWindow;
import spotline.holder.HolderTemplate.KeepOut;
import spotline.holder.PointMm;

/** Whole plans at random: where the holder lies, which way it is turned and in which order its file is written is nothing. */
class WholePlanPropertiesTest {
    /** A move of the plane: turned about the origin, then shifted. */
    private record Move(double turnDeg, double x, double y) {
        PointMm of(double px, double py) {
            double angle = Math.toRadians(turnDeg);
            return new PointMm(
                    px * Math.cos(angle) - py * Math.sin(angle) + x, px * Math.sin(angle) + py * Math.cos(angle) + y);
        }

        List<PointMm> of(double... corners) {
            List<PointMm> points = new ArrayList<>();
            for (int i = 0; i < corners.length; i += 2) points.add(of(corners[i], corners[i + 1]));
            return points;
        }
    }

    private static final Move STAY = new Move(0, 0, 0);

    private static HolderTemplate holder(Move move) {
        return new HolderTemplate(
                "plate",
                Optional.empty(),
                Optional.empty(),
                move.of(0, 0, 60, 0, 60, 24, 48, 30, 0, 30),
                move.of(2, 2, 56, 2, 56, 24, 48, 28, 2, 28),
                List.of(new KeepOut("post", KeepOut.Kind.OTHER, move.of(26, 12, 32, 12, 32, 18, 26, 18))),
                OptionalDouble.empty(),
                Optional.of(new HeightWindow(-1, 3)),
                OptionalDouble.of(3),
                Optional.empty(),
                Optional.of(move.of(40, 15)),
                Optional.empty(),
                List.of(),
                OptionalInt.empty(),
                Optional.empty());
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.12f", value);
    }

    private static String at(PointMm point) {
        return "{ \"x\": " + number(point.x()) + ", \"y\": " + number(point.y()) + " }";
    }

    /** The same random plan for the same seed, moved; a round analysis area, since a long one turns with the holder. */
    private static String body(long seed, Move move, boolean shuffled) {
        Random random = new Random(seed);
        List<String> specimens = new ArrayList<>();
        List<String> spots = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            double x = random.nextDouble() * 60;
            double y = random.nextDouble() * 30;
            double turn = random.nextInt(180);
            String outline = switch (random.nextInt(3)) {
                case 0 -> "\"width\": 9, \"height\": 5";
                case 1 -> "\"shape\": \"ellipse\", \"width\": 8, \"height\": 6";
                default ->
                    "\"shape\": \"polygon\", \"cornersMm\": [ { \"x\": -4, \"y\": -3 }, { \"x\": 4, \"y\": -2 }, { \"x\": 1, \"y\": 4 } ]";
            };
            String state = random.nextBoolean() ? "grounded" : "isolated";
            String clip = "{ \"material\": \"copper\", \"centreMm\": "
                    + at(move.of(x + random.nextGaussian() * 4, y + random.nextGaussian() * 4))
                    + ", \"outlineMm\": { \"width\": 3, \"height\": 1.5 }, \"rotationDeg\": " + number(move.turnDeg())
                    + " }";
            specimens.add("""
                    { "id": "S%s", "centreMm": %s, "outlineMm": { %s }, "rotationDeg": %s, "thicknessMm": %s,
                      "sample": { "name": "n%s", "conductivity": "%s" },
                      "mount": { "method": "metal-clip", "electricalState": "%s", "clips": [ %s ] } }""".formatted(
                            i,
                            at(move.of(x, y)),
                            outline,
                            number(turn + move.turnDeg()),
                            1 + random.nextInt(4),
                            i,
                            random.nextBoolean() ? "insulator" : "conductor",
                            state,
                            clip));
            PointMm spot = move.of(x + random.nextGaussian() * 2, y + random.nextGaussian() * 2);
            spots.add("""
                    { "id": "p%s", "specimen": "S%s", "xMm": %s, "yMm": %s, "tiltDeg": %s, "azimuthDeg": %s, "etchSteps": [ { "cycles": %s } ] }""".formatted(
                            i,
                            i,
                            number(spot.x()),
                            number(spot.y()),
                            random.nextInt(60),
                            number(30 + move.turnDeg()),
                            1 + random.nextInt(2)));
        }
        if (shuffled) {
            Collections.shuffle(specimens, random);
            Collections.shuffle(spots, random);
        }
        return "\"instrument\": { \"analysisAreaMm\": { \"x\": 0.6, \"y\": 0.6 } }, \"specimens\": ["
                + String.join(",", specimens) + "], \"spots\": [" + String.join(",", spots) + "]";
    }

    private static List<String> told(long seed, Move move, boolean shuffled) {
        return PlanCheck.check(Plans.plan(body(seed, move, shuffled)), Optional.of(holder(move))).stream()
                .map(WholePlanPropertiesTest::text)
                .toList();
    }

    /**
     * How deep the polygon that stands for the analysis area lies in a narrow clip depends on where its corners are, by
     * some 0.02 mm. Sides, extents along x and y, and which specimen of two stands left
     * change when the whole is turned.
     */
    private static String text(Finding finding) {
        String message = finding.message()
                .replaceAll(" on the [+-][xy] side", "")
                .replaceAll("may reach [0-9.]+ mm", "may reach")
                .replaceAll("the area [0-9.]+ x [0-9.]+ mm wide", "the area");
        boolean pair =
                finding.rule().equals("specimen-overlap") || finding.rule().equals("unlike-neighbours");
        if (pair) {
            char[] letters = message.toLowerCase(Locale.ROOT).toCharArray();
            java.util.Arrays.sort(letters);
            return finding.rule() + new String(letters);
        }
        return finding.severity() + finding.rule() + finding.spot() + message;
    }

    @Property(tries = 120, seed = "41")
    void turningAndShiftingTheWholeChangesNothing(@ForAll @LongRange(min = 0, max = 100_000) long seed) {
        Random random = new Random(seed);
        Move move = new Move(random.nextInt(180) - 90, random.nextGaussian() * 50, random.nextGaussian() * 50);
        assertThat(told(seed, move, false)).containsExactlyInAnyOrderElementsOf(told(seed, STAY, false));
    }

    @Property(tries = 120, seed = "42")
    void theOrderInTheFileChangesNothing(@ForAll @LongRange(min = 0, max = 100_000) long seed) {
        List<Finding> forward = PlanCheck.check(Plans.plan(body(seed, STAY, false)), Optional.of(holder(STAY)));
        List<Finding> shuffled = PlanCheck.check(Plans.plan(body(seed, STAY, true)), Optional.of(holder(STAY)));
        assertThat(shuffled).containsExactlyInAnyOrderElementsOf(forward);
    }

    /** More room asked for can only add findings about room; the others stay as they are. */
    @Property(tries = 60, seed = "43")
    void askingForMoreRoomTakesNoFindingAway(@ForAll @LongRange(min = 0, max = 100_000) long seed) {
        List<Finding> usual = PlanCheck.check(
                Plans.plan(body(seed, STAY, false)), Optional.of(holder(STAY)), PlanCheckSettings.DEFAULT);
        PlanCheckSettings strict = new PlanCheckSettings(
                PlanCheckSettings.Placement.DEFAULT,
                new PlanCheckSettings.Clearance(2, 0, 0.1, 3),
                PlanCheckSettings.Electrical.DEFAULT,
                PlanCheckSettings.Handling.DEFAULT);
        List<Finding> more = PlanCheck.check(Plans.plan(body(seed, STAY, false)), Optional.of(holder(STAY)), strict);
        assertThat(more.stream().map(f -> f.rule() + f.spot()))
                .containsAll(usual.stream().map(f -> f.rule() + f.spot()).toList());
    }
}
