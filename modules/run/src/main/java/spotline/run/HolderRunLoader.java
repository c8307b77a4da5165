package spotline.run;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import spotline.analysis.calibration.CalibrationRecord;
import spotline.analysis.quantify.SensitivityFactors;
import spotline.core.Finding;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.core.Work;
import spotline.holder.HolderPlan;
import spotline.holder.HolderRunFile;
import spotline.holder.HolderRunReader;
import spotline.holder.Spot;
import spotline.reference.ReferenceData;

/**
 * Reads a holder run and every spectrum it names.
 *
 * <p>Errors: {@link ReadException} when the holder-run file itself, a treatment or the transmission table is wrong. A
 * spectrum that cannot be read is a finding of its spot, and the others go on.
 */
public final class HolderRunLoader {
    private final ReferenceData reference;

    public HolderRunLoader(ReferenceData reference) {
        this.reference = reference;
    }

    /** @param treatment a patch laid over the defaults before the holder's own */
    public HolderRun load(Path holderFile, Optional<Path> treatment, long seed, Work work) throws ReadException {
        HolderRunFile file = HolderRunReader.read(holderFile);
        HolderPlan plan = HolderPlan.of(file);
        Optional<ObjectNode> patch = Optional.empty();
        if (treatment.isPresent()) patch = Optional.of(TreatmentStack.read(treatment.get()));
        TreatmentStack treatments = new TreatmentStack(file, holderFile.toString(), patch);
        Path folder =
                Optional.ofNullable(holderFile.toAbsolutePath().getParent()).orElse(Path.of("."));
        TransmissionSource transmission =
                TransmissionSource.of(file.instrument().transmission(), folder);
        DeclaredPhotons declared = DeclaredPhotons.of(file.instrument().excitation(), reference);
        Optional<CalibrationRecord> calibration = calibration(file, folder);
        SpectrumLinker linker = new SpectrumLinker(folder, transmission, declared, calibration);
        List<SpotInput> inputs = new ArrayList<>();
        for (int i = 0; i < plan.spots().size(); i++) {
            work.check();
            Spot spot = plan.spots().get(i);
            work.progress((double) i / plan.spots().size(), "reading spot " + spot.id());
            Treatment settings = treatments.of(spot, i);
            List<Finding> findings = new ArrayList<>();
            List<LinkedSpectrum> spectra = linker.link(spot, settings, findings);
            inputs.add(new SpotInput(
                    spot,
                    spectra,
                    file.instrument().sourceAnalyserAngleDeg(),
                    declared.monochromated() || linker.monochromated(spot),
                    settings,
                    findings,
                    labFactors(settings, folder)));
        }
        List<Finding> findings = calibration
                .map(c -> c.findings(file.date().or(linker::firstDay)))
                .orElse(List.of());
        SortedMap<String, String> files = new TreeMap<>(linker.files());
        if (calibration.isPresent()) {
            String name = file.instrument().energyCalibration().orElseThrow();
            files.put(name, CalibrationFile.sha256(folder.resolve(name)));
        }
        return new HolderRun(plan, inputs, files, findings, seed);
    }

    private static Optional<CalibrationRecord> calibration(HolderRunFile file, Path folder) throws ReadException {
        Optional<String> named = file.instrument().energyCalibration();
        if (named.isEmpty()) return Optional.empty();
        try {
            return Optional.of(CalibrationFile.read(folder.resolve(named.get())));
        } catch (InvalidPathException e) {
            throw new ReadException(
                    Place.file(named.get()), "not a file name on this system", "a readable calibration record");
        }
    }

    private Optional<SensitivityFactors> labFactors(Treatment settings, Path folder) throws ReadException {
        if (settings.quantify().factors() instanceof QuantifySettings.FactorChoice.FromFile file) {
            return Optional.of(FactorFile.read(folder, file.file(), reference));
        }
        return Optional.empty();
    }
}
