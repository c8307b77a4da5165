package spotline.holder.check;

import static java.util.Objects.requireNonNull;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import spotline.core.Problem;
import spotline.core.Problems;

/** Thresholds of {@link PlanCheck}. All defaults are common practice, no source, unless one is named. */
public record PlanCheckSettings(Placement placement, Clearance clearance, Electrical electrical, Handling handling) {
    public static final PlanCheckSettings DEFAULT =
            new PlanCheckSettings(Placement.DEFAULT, Clearance.DEFAULT, Electrical.DEFAULT, Handling.DEFAULT);

    public PlanCheckSettings {
        requireNonNull(placement, "placement");
        requireNonNull(clearance, "clearance");
        requireNonNull(electrical, "electrical");
        requireNonNull(handling, "handling");
    }

    /**
     * The defaults with what a holder-run file's {@code planCheck} says instead. Errors:
     * {@link IllegalArgumentException} for values that the file's schema does not allow.
     */
    public static PlanCheckSettings of(ObjectNode planCheck) {
        if (planCheck.isEmpty()) return DEFAULT;
        return new PlanCheckSettings(
                Placement.of(planCheck.path("placement")),
                Clearance.of(planCheck.path("clearance")),
                Electrical.of(planCheck.path("electrical")),
                Handling.of(planCheck.path("handling")));
    }

    /**
     * How far things may lie off.
     *
     * @param overhangLimitMm how far a specimen may reach beyond the holder's outline, mm
     * @param usableLimitMm how far a specimen may reach beyond the usable area, mm
     * @param offSpecimenLimitMm how far a spot may lie beside its specimen, mm
     * @param overlapLimitMm2 area that two specimens, or a specimen and a keep-out area, may share, mm2
     */
    public record Placement(
            double overhangLimitMm, double usableLimitMm, double offSpecimenLimitMm, double overlapLimitMm2) {
        /** No overhang, no overlap, no spot beside its specimen. */
        public static final Placement DEFAULT = new Placement(0, 0, 0, 0);

        public Placement {
            Problems.throwIfAny(check(overhangLimitMm, usableLimitMm, offSpecimenLimitMm, overlapLimitMm2));
        }

        /** Every problem at once. */
        public static List<Problem> check(
                double overhangLimitMm, double usableLimitMm, double offSpecimenLimitMm, double overlapLimitMm2) {
            List<Problem> problems = new ArrayList<>();
            notNegative(problems, "overhangLimitMm", overhangLimitMm, "mm");
            notNegative(problems, "usableLimitMm", usableLimitMm, "mm");
            notNegative(problems, "offSpecimenLimitMm", offSpecimenLimitMm, "mm");
            notNegative(problems, "overlapLimitMm2", overlapLimitMm2, "mm2");
            return problems;
        }

        private static Placement of(JsonNode own) {
            return new Placement(
                    number(own, "overhangLimitMm", DEFAULT.overhangLimitMm),
                    number(own, "usableLimitMm", DEFAULT.usableLimitMm),
                    number(own, "offSpecimenLimitMm", DEFAULT.offSpecimenLimitMm),
                    number(own, "overlapLimitMm2", DEFAULT.overlapLimitMm2));
        }
    }

    /**
     * Room around the analysis area: what is left of the distance to the nearest other thing once half the area and some
     * standard uncertainties of the position are taken off.
     *
     * @param cautionMm room asked for, mm
     * @param stopMm room without which the spot cannot be measured, mm
     * @param positionUncertaintyMm standard uncertainty of a position that declares none, mm
     * @param uncertaintyFactor so many standard uncertainties are kept free
     */
    public record Clearance(double cautionMm, double stopMm, double positionUncertaintyMm, double uncertaintyFactor) {
        /** 0.5 mm and 0 mm beyond three times 0.1 mm. */
        public static final Clearance DEFAULT = new Clearance(0.5, 0, 0.1, 3);

        public Clearance {
            Problems.throwIfAny(check(cautionMm, stopMm, positionUncertaintyMm, uncertaintyFactor));
        }

        /** Every problem at once. */
        public static List<Problem> check(
                double cautionMm, double stopMm, double positionUncertaintyMm, double uncertaintyFactor) {
            List<Problem> problems = new ArrayList<>();
            notNegative(problems, "stopMm", stopMm, "mm");
            notNegative(problems, "positionUncertaintyMm", positionUncertaintyMm, "mm");
            notNegative(problems, "uncertaintyFactor", uncertaintyFactor, "times");
            if (!(cautionMm >= stopMm) || Double.isInfinite(cautionMm)) {
                problems.add(new Problem("cautionMm", cautionMm + " mm", "stopMm, " + stopMm + " mm, or more"));
            }
            return problems;
        }

        private static Clearance of(JsonNode own) {
            double stop = number(own, "stopMm", DEFAULT.stopMm);
            return new Clearance(
                    number(own, "cautionMm", Math.max(stop, DEFAULT.cautionMm)),
                    stop,
                    number(own, "positionUncertaintyMm", DEFAULT.positionUncertaintyMm),
                    number(own, "uncertaintyFactor", DEFAULT.uncertaintyFactor));
        }
    }

    /**
     * Conduction and potential.
     *
     * @param sampleCurrentA current that flows from the sample to the holder, A
     * @param illuminatedAreaMm2 area through which it flows, mm2
     * @param negligiblePotentialV potential of the surface that a grounded sample may take, V
     * @param unlikeNeighbourMm gap below which a grounded and an isolated neighbour are told, mm
     */
    public record Electrical(
            double sampleCurrentA, double illuminatedAreaMm2, double negligiblePotentialV, double unlikeNeighbourMm) {
        /** 10 nA through 0.3 mm2 and 0.1 V, so that a grounded sample may have 10 Mohm; 1 mm. */
        public static final Electrical DEFAULT = new Electrical(10e-9, 0.3, 0.1, 1);

        public Electrical {
            Problems.throwIfAny(check(sampleCurrentA, illuminatedAreaMm2, negligiblePotentialV, unlikeNeighbourMm));
        }

        /** Every problem at once. */
        public static List<Problem> check(
                double sampleCurrentA,
                double illuminatedAreaMm2,
                double negligiblePotentialV,
                double unlikeNeighbourMm) {
            List<Problem> problems = new ArrayList<>();
            above0(problems, "sampleCurrentA", sampleCurrentA, "A");
            above0(problems, "illuminatedAreaMm2", illuminatedAreaMm2, "mm2");
            above0(problems, "negligiblePotentialV", negligiblePotentialV, "V");
            notNegative(problems, "unlikeNeighbourMm", unlikeNeighbourMm, "mm");
            return problems;
        }

        private static Electrical of(JsonNode own) {
            return new Electrical(
                    number(own, "sampleCurrentA", DEFAULT.sampleCurrentA),
                    number(own, "illuminatedAreaMm2", DEFAULT.illuminatedAreaMm2),
                    number(own, "negligiblePotentialV", DEFAULT.negligiblePotentialV),
                    number(own, "unlikeNeighbourMm", DEFAULT.unlikeNeighbourMm));
        }

        /** Resistance at which the surface takes the negligible potential, ohm. */
        public double resistanceLimitOhm() {
            return negligiblePotentialV / sampleCurrentA;
        }
    }

    /**
     * Powder, temperature and depth profiles.
     *
     * @param powderPatchMm a patch of powder on tape stays under this width, mm
     * @param tapeCarbonPercent carbon that bare tape would add, at.%; first-order estimate for acrylic tape
     * @param temperatureMarginC margin asked for between a set-point and a declared limit, degrees Celsius
     * @param tapeLimitC highest temperature of tape that declares none, degrees Celsius
     * @param roomTemperatureC set-points above it heat, those below it cool, degrees Celsius
     * @param rotationAxisToleranceMm how far a depth profile may lie off the rotation axis, mm
     */
    public record Handling(
            double powderPatchMm,
            double tapeCarbonPercent,
            double temperatureMarginC,
            double tapeLimitC,
            double roomTemperatureC,
            double rotationAxisToleranceMm) {
        public static final Handling DEFAULT = new Handling(10, 75, 50, 100, 20, 0.5);

        public Handling {
            Problems.throwIfAny(check(
                    powderPatchMm,
                    tapeCarbonPercent,
                    temperatureMarginC,
                    tapeLimitC,
                    roomTemperatureC,
                    rotationAxisToleranceMm));
        }

        /** Every problem at once. */
        public static List<Problem> check(
                double powderPatchMm,
                double tapeCarbonPercent,
                double temperatureMarginC,
                double tapeLimitC,
                double roomTemperatureC,
                double rotationAxisToleranceMm) {
            List<Problem> problems = new ArrayList<>();
            above0(problems, "powderPatchMm", powderPatchMm, "mm");
            notNegative(problems, "tapeCarbonPercent", tapeCarbonPercent, "at.%");
            notNegative(problems, "temperatureMarginC", temperatureMarginC, "C");
            finite(problems, "tapeLimitC", tapeLimitC, "C");
            finite(problems, "roomTemperatureC", roomTemperatureC, "C");
            notNegative(problems, "rotationAxisToleranceMm", rotationAxisToleranceMm, "mm");
            return problems;
        }

        private static Handling of(JsonNode own) {
            return new Handling(
                    number(own, "powderPatchMm", DEFAULT.powderPatchMm),
                    number(own, "tapeCarbonPercent", DEFAULT.tapeCarbonPercent),
                    number(own, "temperatureMarginC", DEFAULT.temperatureMarginC),
                    number(own, "tapeLimitC", DEFAULT.tapeLimitC),
                    number(own, "roomTemperatureC", DEFAULT.roomTemperatureC),
                    number(own, "rotationAxisToleranceMm", DEFAULT.rotationAxisToleranceMm));
        }
    }

    private static double number(JsonNode own, String field, double otherwise) {
        return own.has(field) ? own.path(field).asDouble() : otherwise;
    }

    private static void finite(List<Problem> problems, String field, double value, String unit) {
        if (!Double.isFinite(value)) problems.add(new Problem(field, value + " " + unit, "a number"));
    }

    private static void notNegative(List<Problem> problems, String field, double value, String unit) {
        if (!(value >= 0) || Double.isInfinite(value)) {
            problems.add(new Problem(field, value + " " + unit, "0 " + unit + " or more"));
        }
    }

    private static void above0(List<Problem> problems, String field, double value, String unit) {
        if (!(value > 0) || Double.isInfinite(value)) {
            problems.add(new Problem(field, value + " " + unit, "above 0 " + unit));
        }
    }
}
