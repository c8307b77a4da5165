package spotline.analysis.charge;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.core.Estimate;
import spotline.reference.AugerParameter;
import spotline.reference.Line;

/**
 * What speaks for and against a charge reference. A list or optional that is empty says that this evidence does not exist
 * for the spot.
 *
 * @param declared what the record says, a phrase each
 * @param drift of the reference line over its scans
 * @param positions where each line lies: measured, referenced, and relative to the reference line
 * @param candidates other references with their numbers, the surest first
 * @param augerParameters unchanged by any shift
 * @param unmoved lines that stand at their metal's energy though the spot was shifted
 * @param fermiEdge where one was fitted
 * @param widths of lines, with the narrowest same line on the holder
 * @param shape whether the reference line asks for two potentials
 * @param rigidity whether lines measured twice moved together
 * @param check the second reference that the analyst stated
 * @param siblings the same lines at other spots of the sample
 */
public record ChargeEvidence(
        List<String> declared,
        Optional<Drift> drift,
        List<Position> positions,
        List<Candidate> candidates,
        List<AugerParameterSeen> augerParameters,
        List<UnmovedLine> unmoved,
        Optional<FermiEdge> fermiEdge,
        List<Width> widths,
        Optional<TwoPotentials> shape,
        Optional<Rigidity> rigidity,
        Optional<Candidate> check,
        List<SiblingLine> siblings) {
    public static final ChargeEvidence NONE = new ChargeEvidence(
            List.of(),
            Optional.empty(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            Optional.empty(),
            List.of(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            List.of());

    public ChargeEvidence {
        declared = List.copyOf(declared);
        positions = List.copyOf(positions);
        candidates = List.copyOf(candidates);
        augerParameters = List.copyOf(augerParameters);
        unmoved = List.copyOf(unmoved);
        widths = List.copyOf(widths);
        siblings = List.copyOf(siblings);
    }

    /** The same evidence with what only the other spots of the holder can tell. */
    public ChargeEvidence across(List<Width> newWidths, List<SiblingLine> newSiblings) {
        return new ChargeEvidence(
                declared,
                drift,
                positions,
                candidates,
                augerParameters,
                unmoved,
                fermiEdge,
                newWidths,
                shape,
                rigidity,
                check,
                newSiblings);
    }

    /**
     * Where a line lies.
     *
     * @param measured binding energy as measured, eV
     * @param shiftEv what was added, eV; empty when the reference failed
     * @param referenced measured + shift, with the reference's uncertainty; empty when the reference failed
     * @param fromReferenceLine measured energy less that of the reference line, eV: does not carry the reference's
     *     uncertainty; empty without a reference line
     */
    public record Position(
            String line,
            String spectrum,
            Estimate measured,
            OptionalDouble shiftEv,
            Optional<Estimate> referenced,
            Optional<Estimate> fromReferenceLine) {}

    /**
     * A reference that could be used, and what it would give.
     *
     * @param state whose energy it is: {@code "SiO2"}
     * @param measured eV
     * @param referenceEv energy the line would be set to, eV
     * @param referenceU standard uncertainty of that, eV
     * @param shiftEv that would be added, eV
     * @param standardUncertainty of that shift, eV
     * @param alone whether no other listed state lies near enough to be meant instead
     * @param source of the energy
     */
    public record Candidate(
            ChargeMethod method,
            String line,
            String state,
            String spectrum,
            Estimate measured,
            double referenceEv,
            double referenceU,
            double shiftEv,
            OptionalDouble standardUncertainty,
            boolean alone,
            String source) {}

    /**
     * A modified Auger parameter: binding energy of a photoelectron line plus kinetic energy of an Auger line, eV.
     *
     * @param parameter with its uncertainty; no reference is in it
     * @param kineticEv of the Auger line as measured, eV
     * @param referencedBindingEv for a chemical-state plot, eV; empty when the reference failed
     * @param referencedKineticEv likewise
     * @param listed states that the reference data list for the pair
     */
    public record AugerParameterSeen(
            Line line,
            String transition,
            String spectrum,
            Estimate parameter,
            Estimate bindingEv,
            Estimate kineticEv,
            OptionalDouble referencedBindingEv,
            OptionalDouble referencedKineticEv,
            List<AugerParameter> listed) {
        public AugerParameterSeen {
            listed = List.copyOf(listed);
        }

        /** The listed state whose parameter lies nearest. */
        public Optional<AugerParameter> nearest() {
            return listed.stream()
                    .min(java.util.Comparator.comparingDouble(
                            a -> Math.abs(a.modifiedAugerParameterEv() - parameter.value())));
        }
    }

    /** A line at its metal's energy as measured, eV, though the spot was shifted. */
    public record UnmovedLine(Line line, String spectrum, double measuredEv, double metalEv) {}

    /**
     * How wide a line is.
     *
     * @param component which of its components: widths of one component are compared, not of unlike ones
     * @param passEnergyEv of the scan; only widths of one pass energy are compared
     * @param fwhm of the whole component, eV
     * @param narrowest the narrowest same line on the holder, eV, and the spot it was measured at
     * @param extraEv what broadens the line beyond that, eV: root of the difference of the squares
     */
    public record Width(
            String line,
            String component,
            String spectrum,
            OptionalDouble passEnergyEv,
            Estimate fwhm,
            Optional<Estimate> narrowest,
            String narrowestSpot,
            OptionalDouble extraEv) {}

    /**
     * The reference line fitted as two equal surfaces at two potentials.
     *
     * @param separationEv of the two, eV
     * @param separationU its standard uncertainty, eV
     * @param share of the surface at the higher binding energy
     * @param devianceGain by which two potentials fit better than one
     * @param widthGain what the line's width adds to that, 0 where it is usual or another width is known to hold it against
     * @param asked whether both gains together are more than chance gives
     */
    public record TwoPotentials(
            double separationEv,
            OptionalDouble separationU,
            double share,
            double devianceGain,
            double widthGain,
            boolean asked) {
        /** Whether the width says more than the shape. */
        public boolean byWidth() {
            return widthGain > devianceGain;
        }
    }

    /**
     * Lines measured twice, at two times or two settings of the charge neutraliser.
     *
     * @param lines how far each moved, eV
     * @param meanEv weighted mean of the movements, eV
     * @param largestEv largest departure of a line from it, eV
     * @param together whether all moved alike within their uncertainties
     */
    public record Rigidity(List<Moved> lines, double meanEv, double largestEv, boolean together) {
        /** One line's movement, eV. */
        public record Moved(String line, Estimate changeEv) {}

        public Rigidity {
            lines = List.copyOf(lines);
        }
    }

    /** A line referenced here and at another spot of the sample: the difference, eV, without the shared reference. */
    public record SiblingLine(String line, String otherSpot, Estimate differenceEv) {}
}
