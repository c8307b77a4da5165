package spotline.run;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import spotline.analysis.calibration.CalibrationRecord;
import spotline.analysis.quantify.SensitivityFactors;
import spotline.core.Finding;
import spotline.core.ReadException;
import spotline.core.Work;
import spotline.holder.HolderPlan;
import spotline.holder.HolderRunFile;
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
    private final SpectrumStore store;
    private final Memo memo;

    public HolderRunLoader(ReferenceData reference) {
        this(reference, new SpectrumStore(), Memo.NONE);
    }

    /**
     * @param store keeps what is read for the next load of the same holder run
     * @param memo keeps the spectra made of it
     */
    public HolderRunLoader(ReferenceData reference, SpectrumStore store, Memo memo) {
        this.reference = reference;
        this.store = store;
        this.memo = memo;
    }

    /** @param treatment a patch laid over the defaults before the holder's own */
    public HolderRun load(Path holderFile, Optional<Path> treatment, long seed, Work work) throws ReadException {
        return load(RunSource.of(holderFile, treatment, seed), work);
    }

    public HolderRun load(RunSource source, Work work) throws ReadException {
        HolderRunFile file = source.file();
        InputFiles inputFiles = source.inputs();
        HolderPlan plan = HolderPlan.of(file);
        TreatmentStack treatments = new TreatmentStack(file, source.name(), source.treatment());
        TransmissionSource transmission =
                TransmissionSource.of(file.instrument().transmission(), inputFiles, store);
        DeclaredPhotons declared = DeclaredPhotons.of(file.instrument().excitation(), reference);
        Optional<CalibrationRecord> calibration = calibration(file, inputFiles);
        SpectrumLinker linker = new SpectrumLinker(inputFiles, store, memo, transmission, declared, calibration);
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
                    labFactors(settings, inputFiles)));
        }
        List<Finding> findings = calibration
                .map(c -> c.findings(file.date().or(linker::firstDay)))
                .orElse(List.of());
        SortedMap<String, String> files = new TreeMap<>(linker.files());
        if (calibration.isPresent()) {
            String name = file.instrument().energyCalibration().orElseThrow();
            files.put(name, store.once("sum " + name, () -> CalibrationFile.sha256(inputFiles.path(name))));
        }
        return new HolderRun(
                plan,
                inputs,
                files,
                findings,
                source.seed(),
                Optional.of(PlanFindings.of(plan, inputFiles)),
                calibration);
    }

    private Optional<CalibrationRecord> calibration(HolderRunFile file, InputFiles inputs) throws ReadException {
        Optional<String> named = file.instrument().energyCalibration();
        if (named.isEmpty()) return Optional.empty();
        return Optional.of(
                store.once("calibration " + named.get(), () -> CalibrationFile.read(inputs.path(named.get()))));
    }

    private Optional<SensitivityFactors> labFactors(Treatment settings, InputFiles inputs) throws ReadException {
        if (settings.quantify().factors() instanceof QuantifySettings.FactorChoice.FromFile file) {
            return Optional.of(
                    store.once("factors " + file.file(), () -> FactorFile.read(inputs, file.file(), reference)));
        }
        return Optional.empty();
    }
}
