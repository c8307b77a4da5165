package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import spotline.analysis.calibration.PeakTop;
import spotline.analysis.charge.ChargeEvidence.AugerParameterSeen;
import spotline.analysis.charge.ChargeInput.MeasuredLine;
import spotline.analysis.charge.ChargeInput.OtherScan;
import spotline.core.Estimate;
import spotline.core.Work;
import spotline.reference.AugerParameter;
import spotline.reference.Line;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * Modified Auger parameters: {@code alpha' = binding energy of a photoelectron line + kinetic energy of an Auger line}. A
 * shift takes from the one what it gives to the other.
 *
 * <p>Source: C. D. Wagner's definition as ISO 18115-1 has it; listed values from the reference data.
 */
final class AugerParameters {
    /** The Auger line is looked for this far around the listed kinetic energies, eV. */
    private static final double REACH = 3.5;

    private AugerParameters() {}

    static List<AugerParameterSeen> of(ChargeInput input, OptionalDouble shiftEv, ReferenceData reference, Work work) {
        List<AugerParameterSeen> seen = new ArrayList<>();
        for (MeasuredLine measured : input.firstOfEachLine()) {
            List<AugerParameter> listed = reference.augerParameters(measured.line());
            Set<String> transitions = listed.stream()
                    .map(AugerParameter::augerTransition)
                    .collect(Collectors.toCollection(LinkedHashSet::new));
            for (String transition : transitions) {
                List<AugerParameter> states = listed.stream()
                        .filter(p -> p.augerTransition().equals(transition))
                        .toList();
                pair(measured, transition, states, input, shiftEv, reference, work)
                        .ifPresent(seen::add);
            }
        }
        return seen;
    }

    private static Optional<AugerParameterSeen> pair(
            MeasuredLine measured,
            String transition,
            List<AugerParameter> listed,
            ChargeInput input,
            OptionalDouble shiftEv,
            ReferenceData reference,
            Work work) {
        BindingScan photo = measured.scan();
        double lowKe = listed.stream()
                .mapToDouble(AugerParameter::augerKineticEv)
                .min()
                .orElseThrow();
        double highKe = listed.stream()
                .mapToDouble(AugerParameter::augerKineticEv)
                .max()
                .orElseThrow();
        double shift = shiftEv.orElse(input.workingShiftEv());
        double hv = photo.photonEnergyEv();
        Window window = new Window(hv - highKe - shift - REACH, hv - lowKe - shift + REACH);
        Optional<BindingScan> scan = input.others().stream()
                .filter(o -> o.region().startsWith(measured.line().element() + " "))
                .map(OtherScan::scan)
                .filter(s -> s.range().lowEv() <= window.lowEv() && s.range().highEv() >= window.highEv())
                .findFirst();
        if (scan.isEmpty()) return Optional.empty();
        Optional<PeakTop> auger = PeakTop.find(scan.get(), window, work);
        Line line = listed.get(0).line();
        Optional<ReferenceLineFit> position =
                TopFit.place(line, photo, TopFit.doubletOf(reference.doublet(line, hv), line), work);
        if (auger.isEmpty() || position.isEmpty()) return Optional.empty();
        Estimate binding = position.get().reference().position();
        Estimate kinetic = auger.get().positionEv().times(-1).plus(scan.get().photonEnergyEv());
        return Optional.of(new AugerParameterSeen(
                line,
                transition,
                scan.get().label(),
                binding.plus(kinetic),
                binding,
                kinetic,
                moved(binding.value(), shiftEv, 1),
                moved(kinetic.value(), shiftEv, -1),
                listed));
    }

    private static OptionalDouble moved(double energy, OptionalDouble shift, int sign) {
        return shift.isPresent() ? OptionalDouble.of(energy + sign * shift.getAsDouble()) : OptionalDouble.empty();
    }
}
