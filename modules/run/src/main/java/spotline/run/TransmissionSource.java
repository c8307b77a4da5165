package spotline.run;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.holder.DeclaredTransmission;
import spotline.spectra.EnergyScale;
import spotline.spectra.Ordinate;
import spotline.spectra.Spectrum;
import spotline.spectra.Transmission;

/** Where the transmission of each spectrum comes from; applied exactly once, when an intensity is divided by it. */
final class TransmissionSource {
    static final String RECORDED = "as recorded in the file";
    static final TransmissionSource RECORDED_OR_FLAT = new TransmissionSource(Optional.empty());
    private static final String HEADER = "kinetic_energy_ev,transmission";

    private final Optional<Transmission> fixed;

    private TransmissionSource(Optional<Transmission> fixed) {
        this.fixed = fixed;
    }

    static TransmissionSource of(DeclaredTransmission declared, InputFiles inputs, SpectrumStore store)
            throws ReadException {
        if (declared instanceof DeclaredTransmission.Flat) {
            return new TransmissionSource(Optional.of(new Transmission.Flat()));
        }
        if (declared instanceof DeclaredTransmission.PowerLaw law) {
            return new TransmissionSource(Optional.of(new Transmission.PowerLaw(law.power())));
        }
        if (declared instanceof DeclaredTransmission.FromFile table) {
            return new TransmissionSource(
                    Optional.of(store.once("transmission " + table.file(), () -> table(table.file(), inputs))));
        }
        return RECORDED_OR_FLAT;
    }

    /** What is the same for all spectra; empty when each file says its own. */
    Optional<Transmission> fixed() {
        return fixed;
    }

    /** Errors: {@link IllegalArgumentException} when a recorded transmission is not above 0 throughout. */
    Transmission of(Spectrum spectrum, double photonEnergyEv) {
        if (fixed.isPresent()) return fixed.get();
        Optional<double[]> recorded = spectrum.values(Ordinate.Kind.TRANSMISSION);
        if (recorded.isEmpty()) return new Transmission.Flat();
        double[] values = recorded.get();
        int n = values.length;
        boolean kinetic = spectrum.axis().quantity().scale() == EnergyScale.KINETIC;
        double[] energy = new double[n];
        for (int i = 0; i < n; i++) {
            double at = spectrum.axis().value(i);
            energy[i] = kinetic ? at : photonEnergyEv - at;
        }
        if (n > 1 && energy[0] > energy[n - 1]) {
            reverse(energy);
            reverse(values);
        }
        return new Transmission.Tabulated(RECORDED, energy, values);
    }

    private static void reverse(double[] values) {
        for (int i = 0, j = values.length - 1; i < j; i++, j--) {
            double kept = values[i];
            values[i] = values[j];
            values[j] = kept;
        }
    }

    private static Transmission table(String name, InputFiles inputs) throws ReadException {
        List<String> lines;
        try {
            lines = Files.readAllLines(inputs.path(name), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new ReadException(Place.file(name), "no readable file", "a transmission table");
        }
        List<double[]> rows = new ArrayList<>();
        boolean header = false;
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i).strip();
            if (line.isEmpty() || line.startsWith("#")) continue;
            if (!header) {
                if (!line.replace(" ", "").toLowerCase(Locale.ROOT).equals(HEADER)) {
                    throw new ReadException(Place.line(name, i + 1), "\"" + line + "\"", "the header " + HEADER);
                }
                header = true;
                continue;
            }
            String[] cells = line.split(",", -1);
            try {
                if (cells.length != 2) throw new NumberFormatException();
                rows.add(new double[] {Double.parseDouble(cells[0].strip()), Double.parseDouble(cells[1].strip())});
            } catch (NumberFormatException e) {
                throw new ReadException(Place.line(name, i + 1), "\"" + line + "\"", "two numbers: " + HEADER);
            }
        }
        try {
            return new Transmission.Tabulated(
                    "table " + name,
                    rows.stream().mapToDouble(r -> r[0]).toArray(),
                    rows.stream().mapToDouble(r -> r[1]).toArray());
        } catch (IllegalArgumentException e) {
            throw new ReadException(
                    Place.file(name), String.valueOf(e.getMessage()), "rising energies with values above 0");
        }
    }
}
