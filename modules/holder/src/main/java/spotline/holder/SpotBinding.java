package spotline.holder;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.holder.SpectrumEntry.OrdinateKind;
import spotline.holder.SpectrumEntry.PhotonEnergyOverride;
import spotline.holder.SpectrumEntry.Scale;
import spotline.holder.SpectrumEntry.TextColumns;

/** Makes spots and their spectra out of JSON objects that the schema and the cross-checks have accepted. */
final class SpotBinding {
    private SpotBinding() {}

    static List<SpotEntry> spots(Fields file) {
        List<SpotEntry> spots = new ArrayList<>();
        for (Fields fields : file.entries("spots")) spots.add(spot(fields));
        return spots;
    }

    private static SpotEntry spot(Fields fields) {
        Fields mount = fields.must("mount");
        return new SpotEntry(
                fields.mustText("id"),
                fields.text("specimen"),
                fields.number("xMm"),
                fields.number("yMm"),
                fields.number("zMm"),
                fields.number("tiltDeg"),
                fields.number("emissionAngleDeg"),
                fields.number("azimuthDeg"),
                fields.area("analysisAreaMm"),
                fields.number("positionUncertaintyMm"),
                fields.word("purpose", SpotPurpose.SAMPLE),
                SpecimenBinding.sample(fields),
                SpecimenBinding.mount(fields),
                SpecimenBinding.outline(mount, "outlineMm"),
                mount.number("thicknessMm"),
                SpecimenBinding.transfer(fields),
                etchSteps(fields),
                spectra(fields),
                fields.patch("treatment"));
    }

    private static List<EtchStep> etchSteps(Fields spot) {
        List<EtchStep> steps = new ArrayList<>();
        for (Fields fields : spot.entries("etchSteps")) {
            steps.add(new EtchStep(
                    fields.text("projectile"),
                    fields.number("energyEv"),
                    fields.number("seconds"),
                    fields.area("rasterMm"),
                    fields.number("incidenceDeg"),
                    fields.truth("rotation"),
                    fields.integer("cycles").orElse(1)));
        }
        return steps;
    }

    private static List<SpectrumEntry> spectra(Fields spot) {
        List<SpectrumEntry> spectra = new ArrayList<>();
        for (Fields fields : spot.entries("spectra")) {
            spectra.add(new SpectrumEntry(
                    fields.mustText("file"),
                    fields.integers("blocks"),
                    fields.word("role", SpectrumRole.UNKNOWN),
                    columns(fields),
                    override(fields)));
        }
        return spectra;
    }

    private static Optional<TextColumns> columns(Fields spectrum) {
        if (!spectrum.has("columns")) return Optional.empty();
        Fields fields = spectrum.must("columns");
        return Optional.of(new TextColumns(
                fields.integer("energy").orElseThrow(),
                fields.integer("ordinate").orElseThrow(),
                fields.word("scale", Scale.BINDING),
                fields.word("ordinateKind", OrdinateKind.UNKNOWN),
                fields.number("dwellSeconds"),
                fields.integer("scans"),
                fields.number("passEnergyEv"),
                fields.mustNumber("photonEnergyEv")));
    }

    private static Optional<PhotonEnergyOverride> override(Fields spectrum) {
        if (!spectrum.has("override")) return Optional.empty();
        Fields fields = spectrum.must("override");
        return Optional.of(new PhotonEnergyOverride(fields.mustNumber("photonEnergyEv"), fields.mustText("reason")));
    }
}
