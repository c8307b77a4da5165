package spotline.run;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import spotline.analysis.calibration.CalibrationRecord;
import spotline.core.Finding;
import spotline.core.Provenance;
import spotline.core.ReadException;
import spotline.formats.Block;
import spotline.formats.SpectrumFile;
import spotline.formats.text.TextColumns;
import spotline.holder.SpectrumEntry;
import spotline.holder.SpectrumRole;
import spotline.holder.Spot;
import spotline.spectra.Acquisition;
import spotline.spectra.BindingScan;
import spotline.spectra.EnergyScale;
import spotline.spectra.Excitation;
import spotline.spectra.HeaderField;
import spotline.spectra.Ordinate;
import spotline.spectra.Spectrum;
import spotline.spectra.SpectrumSet;
import spotline.spectra.Transmission;

/** Ties the blocks of spectrum files to spots. A file that several spots name is read once. */
final class SpectrumLinker {
    private final InputFiles inputs;
    private final SpectrumStore store;
    private final Memo memo;
    private final TransmissionSource transmission;
    private final DeclaredPhotons declared;
    private final Optional<CalibrationRecord> calibration;
    private @Nullable OffsetDateTime earliest;
    private final Map<SpectrumEntry, Read> read = new HashMap<>();
    private final Set<String> overruled = new HashSet<>();
    private final SortedMap<String, String> files = new TreeMap<>();
    private final Map<String, Boolean> monochromated = new HashMap<>();

    private record Read(Optional<SpectrumFile> file, Optional<ReadException> fault) {}

    SpectrumLinker(
            InputFiles inputs,
            SpectrumStore store,
            Memo memo,
            TransmissionSource transmission,
            DeclaredPhotons declared,
            Optional<CalibrationRecord> calibration) {
        this.inputs = inputs;
        this.store = store;
        this.memo = memo;
        this.transmission = transmission;
        this.declared = declared;
        this.calibration = calibration;
    }

    /** Day of the earliest spectrum that has a time, in its own offset. */
    Optional<LocalDate> firstDay() {
        return Optional.ofNullable(earliest).map(OffsetDateTime::toLocalDate);
    }

    SortedMap<String, String> files() {
        return files;
    }

    /** Whether a header of the spot says that its source was monochromated. */
    boolean monochromated(Spot spot) {
        return monochromated.getOrDefault(spot.id(), false);
    }

    List<LinkedSpectrum> link(Spot spot, Treatment treatment, List<Finding> findings) {
        List<LinkedSpectrum> linked = new ArrayList<>();
        for (SpectrumEntry entry : spot.spectra()) {
            Read result = read(entry);
            result.fault()
                    .ifPresent(fault -> findings.add(Finding.stop("spectrum-unreadable", fault.getMessage() + ".")
                            .in(entry.file())));
            if (result.file().isEmpty()) continue;
            SpectrumFile file = result.file().get();
            for (Finding warning : file.warnings()) findings.add(warning.in(entry.file()));
            for (int block : entry.blocks()) {
                if (block > file.blocks().size()) {
                    findings.add(Finding.stop(
                                    "spectrum-unreadable",
                                    entry.file() + ": block " + block + " was asked for, the file holds "
                                            + file.blocks().size() + ".")
                            .in(entry.file()));
                }
            }
            for (Block block : file.blocks()) {
                if (!entry.blocks().isEmpty() && !entry.blocks().contains(block.number())) continue;
                block(spot, entry, file, block, treatment, findings).ifPresent(linked::add);
            }
        }
        if (linked.stream().allMatch(s -> s.time().isPresent())) {
            linked.sort(Comparator.comparing(s -> s.time().orElseThrow()));
        }
        return linked;
    }

    private Read read(SpectrumEntry entry) {
        SpectrumEntry key =
                new SpectrumEntry(entry.file(), List.of(), SpectrumRole.UNKNOWN, entry.columns(), Optional.empty());
        return read.computeIfAbsent(key, k -> {
            try {
                SpectrumFile file =
                        store.open(inputs, entry.file(), entry.columns().map(SpectrumLinker::columns));
                files.put(entry.file(), file.sha256());
                return new Read(Optional.of(file), Optional.empty());
            } catch (ReadException e) {
                return new Read(Optional.empty(), Optional.of(e));
            }
        });
    }

    private static TextColumns columns(SpectrumEntry.TextColumns c) {
        return new TextColumns(
                c.energy(),
                c.ordinate(),
                c.scale() == SpectrumEntry.Scale.BINDING ? EnergyScale.BINDING : EnergyScale.KINETIC,
                switch (c.ordinateKind()) {
                    case COUNTS -> TextColumns.OrdinateKind.COUNTS;
                    case COUNTS_PER_SECOND -> TextColumns.OrdinateKind.COUNTS_PER_SECOND;
                    case UNKNOWN -> TextColumns.OrdinateKind.UNKNOWN;
                },
                c.dwellSeconds(),
                c.scans().isPresent() ? OptionalDouble.of(c.scans().getAsInt()) : OptionalDouble.empty(),
                c.passEnergyEv(),
                c.photonEnergyEv());
    }

    private Optional<LinkedSpectrum> block(
            Spot spot,
            SpectrumEntry entry,
            SpectrumFile file,
            Block block,
            Treatment treatment,
            List<Finding> findings) {
        String label = entry.file() + "#" + block.number();
        SpectrumSet set = block.set();
        Acquisition acquisition = set.acquisition();
        if (!acquisition.technique().isEmpty() && !acquisition.technique().equals("XPS")) {
            findings.add(Finding.note(
                            "technique-not-treated",
                            "The technique is " + acquisition.technique() + "; only XPS spectra are treated.")
                    .in(label));
            return Optional.empty();
        }
        if (set.size() != 1) {
            findings.add(Finding.note(
                            "series-not-treated",
                            "The block holds " + set.size() + " spectra; only single spectra are treated.")
                    .in(label));
            return Optional.empty();
        }
        OptionalDouble photons = photons(entry, acquisition.excitation(), treatment, label, findings);
        if (photons.isEmpty()) {
            findings.add(Finding.stop(
                            "photon-energy-unknown",
                            "Neither the header nor the holder run gives a photon energy: no binding energy can be told.")
                    .in(label));
            return Optional.empty();
        }
        if (acquisition.excitation().monochromated().orElse(false)) monochromated.put(spot.id(), true);
        try {
            Placed placed = memo.of(
                    Memo.Key.of(
                            "read/1",
                            new Memo.Same(block),
                            photons.getAsDouble(),
                            calibration,
                            transmission.fixed().map(Memo.Same::new)),
                    () -> placed(set.spectrum(0), photons.getAsDouble(), label));
            BindingScan scan = placed.scan();
            Transmission response = placed.response();
            notCalibrated(scan).ifPresent(findings::add);
            notUsed(set, entry.file()).ifPresent(findings::add);
            boolean survey = scan.range().widthEv() >= treatment.limits().surveySpanEv();
            Optional<OffsetDateTime> time = acquisition.time();
            if (time.isPresent() && (earliest == null || time.get().isBefore(earliest))) earliest = time.get();
            return Optional.of(new LinkedSpectrum(
                    label,
                    new Provenance(entry.file(), file.sha256(), block.number(), block.line(), "read/1"),
                    acquisition.label(),
                    survey,
                    entry.role(),
                    scan,
                    response,
                    time,
                    header(set)));
        } catch (IllegalArgumentException e) {
            findings.add(Finding.stop("spectrum-untreatable", "The block cannot be treated: " + e.getMessage() + ".")
                    .in(label));
            return Optional.empty();
        }
    }

    private record Placed(BindingScan scan, Transmission response) {}

    private static List<HeaderField> header(SpectrumSet set) {
        List<HeaderField> fields = new ArrayList<>(set.acquisition().header());
        set.acquisition().comments().forEach(c -> fields.add(new HeaderField("", c)));
        set.ordinate(Ordinate.Kind.INTENSITY)
                .ifPresent(
                        o -> fields.add(new HeaderField("ordinate", o.quantity().label())));
        return fields;
    }

    /** The one place where an energy scale is corrected. */
    private Placed placed(Spectrum spectrum, double photonEnergyEv, String label) {
        BindingScan scan = BindingScan.of(spectrum, photonEnergyEv, label);
        boolean applies = calibration.isPresent() && calibration.get().appliesTo(scan);
        return new Placed(
                applies ? calibration.get().corrected(scan) : scan, transmission.of(spectrum, photonEnergyEv));
    }

    /** A transmission that the file carries and the record overrules, once a file. */
    private Optional<Finding> notUsed(SpectrumSet set, String file) {
        Optional<Transmission> fixed = transmission.fixed();
        if (fixed.isEmpty() || set.ordinate(Ordinate.Kind.TRANSMISSION).isEmpty() || !overruled.add(file)) {
            return Optional.empty();
        }
        String what = "The file carries a transmission of its own, and the record states another ("
                + fixed.get().describe() + "): the stated one was used.";
        Finding finding = fixed.get().corrects()
                ? Finding.note("transmission-not-used", what)
                : Finding.caution("transmission-not-used", what);
        return Optional.of(finding.in(file));
    }

    private Optional<Finding> notCalibrated(BindingScan scan) {
        if (calibration.isEmpty() || calibration.get().appliesTo(scan)) return Optional.empty();
        return Optional.of(Finding.caution(
                        "energy-calibration-not-applied",
                        String.format(
                                Locale.ROOT,
                                "The energy calibration is of a photon energy of %.2f eV, the scan of %.2f eV: it was not"
                                        + " applied.",
                                calibration.get().photonEnergyEv(),
                                scan.photonEnergyEv()))
                .in(scan.label()));
    }

    private OptionalDouble photons(
            SpectrumEntry entry, Excitation header, Treatment treatment, String label, List<Finding> findings) {
        if (entry.override().isPresent()) {
            SpectrumEntry.PhotonEnergyOverride override = entry.override().get();
            findings.add(Finding.note(
                            "photon-energy-overridden",
                            String.format(
                                    Locale.ROOT,
                                    "Photon energy %.2f eV is used by override: %s",
                                    override.photonEnergyEv(),
                                    override.reason()))
                    .in(label));
            return OptionalDouble.of(override.photonEnergyEv());
        }
        OptionalDouble recorded = header.photonEnergyEv();
        if (recorded.isEmpty()) return declared.photonEnergyEv();
        double limit = treatment.limits().photonEnergyAgreementEv();
        if (declared.photonEnergyEv().isPresent()
                && Math.abs(recorded.getAsDouble() - declared.photonEnergyEv().getAsDouble()) > limit) {
            findings.add(Finding.caution(
                            "photon-energy-differs",
                            String.format(
                                    Locale.ROOT,
                                    "The header gives a photon energy of %.2f eV, the holder run %.2f eV (limit %.2f eV);"
                                            + " the header's is used.",
                                    recorded.getAsDouble(),
                                    declared.photonEnergyEv().getAsDouble(),
                                    limit))
                    .in(label));
        }
        return recorded;
    }
}
