package spotline.run;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import spotline.core.Provenance;
import spotline.holder.HolderPlan;
import spotline.holder.HolderRunReader;
import spotline.holder.SpectrumRole;
import spotline.holder.Spot;
import spotline.numerics.random.PoissonSampler;
import spotline.numerics.random.RandomStreams;
import spotline.reference.Line;
import spotline.reference.Material;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;
import spotline.spectra.Transmission;

/**
 * A compound to simulate.
 *
 * <p>Source: formulae; densities, valence electrons and binding energies typical, from memory.
 *
 * @param states atoms a formula unit with their line and binding energy: {@code "1 Ti 2p3/2 458.6"}
 * @param valence electrons a formula unit, for the mean free path
 */
record SimulatedCompound(
        String name, double density, double molarMass, double valence, double gapEv, List<String> states) {
    static SimulatedCompound of(
            String name, double density, double molarMass, double valence, double gapEv, String... states) {
        return new SimulatedCompound(name, density, molarMass, valence, gapEv, List.of(states));
    }

    /** Compounds whose lines stand clear of each other. */
    static List<SimulatedCompound> isolated() {
        return List.of(
                of("PTFE", 2.2, 50.01, 18, 6, "1 C 1s 292.0", "2 F 1s 689.2"),
                of("PVDF", 1.78, 64.03, 24, 6, "1 C 1s 286.4", "1 C 1s 290.9", "2 F 1s 688.2"),
                of(
                        "PET",
                        1.38,
                        192.17,
                        72,
                        4,
                        "6 C 1s 284.8",
                        "2 C 1s 286.4",
                        "2 C 1s 288.9",
                        "2 O 1s 531.6",
                        "2 O 1s 533.2"),
                of("PVC", 1.4, 62.5, 18, 6, "1 C 1s 285.9", "1 C 1s 287.0", "1 Cl 2p3/2 200.6"),
                of(
                        "nylon-6",
                        1.13,
                        113.16,
                        46,
                        5,
                        "3 C 1s 285.0",
                        "1 C 1s 285.4",
                        "1 C 1s 286.0",
                        "1 C 1s 287.9",
                        "1 N 1s 399.8",
                        "1 O 1s 531.4"),
                of("PDMS", 0.97, 74.15, 28, 6, "2 C 1s 284.5", "1 O 1s 532.0", "1 Si 2p3/2 101.8"),
                of("SiO2", 2.19, 60.08, 16, 9.1, "1 Si 2p3/2 103.4", "2 O 1s 532.9"),
                of("Al2O3", 3.97, 101.96, 24, 8.3, "2 Al 2p3/2 74.3", "3 O 1s 531.1"),
                of("TiO2", 4.2, 79.87, 16, 3.1, "1 Ti 2p3/2 458.6", "2 O 1s 529.9"),
                of("MgO", 3.58, 40.3, 8, 7.8, "1 Mg 2p3/2 50.4", "1 O 1s 530.0"),
                of("ZnO", 5.6, 81.4, 18, 3.3, "1 Zn 2p3/2 1021.9", "1 O 1s 530.3"),
                of("NaCl", 2.17, 58.44, 8, 8.5, "1 Na 1s 1071.6", "1 Cl 2p3/2 198.7"),
                of("CaF2", 3.18, 78.07, 16, 10, "1 Ca 2p3/2 347.9", "2 F 1s 684.8"),
                of("CaCO3", 2.71, 100.09, 24, 6, "1 Ca 2p3/2 347.1", "1 C 1s 289.6", "3 O 1s 531.4"),
                of("Na2SO4", 2.66, 142.04, 32, 6, "2 Na 1s 1071.3", "1 S 2p3/2 168.8", "4 O 1s 531.8"),
                of("Si3N4", 3.2, 140.28, 32, 5, "3 Si 2p3/2 101.7", "4 N 1s 397.6"),
                of("BN", 2.1, 24.82, 8, 5, "1 B 1s 190.5", "1 N 1s 398.1"),
                of("Fe2O3", 5.24, 159.69, 34, 2.2, "2 Fe 2p3/2 710.9", "3 O 1s 530.0"),
                of("CuO", 6.3, 79.55, 17, 1.4, "1 Cu 2p3/2 933.7", "1 O 1s 529.7"),
                of("ZrO2", 5.68, 123.22, 16, 5, "1 Zr 3d5/2 182.2", "2 O 1s 530.0"),
                of("SnO2", 6.95, 150.71, 16, 3.6, "1 Sn 3d5/2 486.6", "2 O 1s 530.5"),
                of("In2O3", 7.18, 277.63, 24, 2.9, "2 In 3d5/2 444.5", "3 O 1s 530.1"),
                of("hydroxyapatite", 3.16, 502.3, 138, 5, "5 Ca 2p3/2 347.2", "3 P 2p3/2 133.1", "13 O 1s 531.2"),
                of("AgCl", 5.56, 143.32, 18, 3.2, "1 Ag 3d5/2 367.8", "1 Cl 2p3/2 197.9"),
                of("PbO", 9.5, 223.2, 12, 2.7, "1 Pb 4f7/2 137.9", "1 O 1s 529.5"));
    }

    /** Compounds in which lines lie under each other. */
    static List<SimulatedCompound> overlapped() {
        return List.of(
                of("MoS2", 5.06, 160.07, 18, 1.3, "1 Mo 3d5/2 229.2", "2 S 2p3/2 162.1"),
                of("V2O5", 3.36, 181.88, 40, 2.3, "2 V 2p3/2 517.1", "5 O 1s 530.0"),
                of("K2CO3", 2.43, 138.2, 24, 5, "2 K 2p3/2 292.8", "1 C 1s 289.2", "3 O 1s 531.2"),
                of("Mo2N", 9.46, 205.9, 17, 0, "2 Mo 3d5/2 228.4", "1 N 1s 397.6"),
                of("TaN", 13.7, 194.95, 10, 0, "1 Ta 4f7/2 23.6", "1 N 1s 396.8"),
                of("CuAl2O4", 4.6, 181.5, 35, 2, "1 Cu 2p3/2 934.6", "2 Al 2p3/2 74.0", "4 O 1s 531.0"),
                of("NiAl2O4", 4.5, 176.65, 34, 2, "1 Ni 2p3/2 855.8", "2 Al 2p3/2 74.0", "4 O 1s 531.0"),
                of("PtAl", 11.8, 222.06, 13, 0, "1 Pt 4f7/2 71.5", "1 Al 2p3/2 72.6"),
                of("Sb2O3", 5.2, 291.5, 28, 3, "2 Sb 3d5/2 530.3", "3 O 1s 530.3"),
                of("SrCO3", 3.5, 147.63, 24, 5, "1 Sr 3d5/2 133.2", "1 C 1s 289.6", "3 O 1s 531.4"),
                of("Zn3(PO4)2", 3.99, 386.1, 94, 4, "3 Zn 2p3/2 1022.0", "2 P 2p3/2 133.4", "8 O 1s 531.4"),
                of("Bi2S3", 6.78, 514.2, 28, 1.3, "2 Bi 4f7/2 158.5", "3 S 2p3/2 161.3"),
                of("La2Si2O7", 4.9, 446, 76, 5, "2 La 3d5/2 835.0", "2 Si 2p3/2 101.8", "7 O 1s 531.0"),
                of("PdO", 8.3, 122.42, 16, 1, "1 Pd 3d5/2 336.9", "1 O 1s 529.9"),
                of("CdS", 4.8, 144.5, 18, 2.4, "1 Cd 3d5/2 405.2", "1 S 2p3/2 161.5"));
    }

    Material material() {
        return new Material(name, density, molarMass, valence, gapEv);
    }

    List<SimulatedSolid.State> atoms() {
        List<SimulatedSolid.State> atoms = new ArrayList<>();
        for (String text : states) {
            int first = text.indexOf(' ');
            int last = text.lastIndexOf(' ');
            atoms.add(new SimulatedSolid.State(
                    Double.parseDouble(text.substring(0, first)),
                    Line.parse(text.substring(first + 1, last)),
                    Double.parseDouble(text.substring(last + 1))));
        }
        return atoms;
    }

    /** The line each element is quantified by: the first narrow line named for it, whole. */
    Map<String, Line> quantified(double overlayerNm) {
        Map<String, Line> lines = new LinkedHashMap<>();
        for (SimulatedSolid.State state : atoms())
            lines.putIfAbsent(state.line().element(), state.line().whole());
        if (overlayerNm > 0) {
            lines.putIfAbsent("C", Line.parse("C 1s"));
            lines.putIfAbsent("O", Line.parse("O 1s"));
        }
        return lines;
    }

    /** A spot with a narrow scan of each element, each 10 eV below its lowest and 14 eV above its highest state. */
    SpotInput spot(ReferenceData reference, SimulatedSolid solid, double overlayerNm, Treatment treatment, long noise) {
        Transmission transmission = new Transmission.PowerLaw(-0.4);
        List<LinkedSpectrum> spectra = new ArrayList<>();
        double brightness = 1e6 / solid.maximum();
        for (Map.Entry<String, Line> e : quantified(overlayerNm).entrySet()) {
            double low = Double.POSITIVE_INFINITY;
            double high = 0;
            for (SimulatedSolid.State state : solid.states()) {
                if (!state.line().element().equals(e.getKey())) continue;
                double splitting = reference
                        .doublet(state.line(), SimulatedSolid.PHOTON)
                        .map(d -> d.splittingEv())
                        .orElse(0.0);
                low = Math.min(low, state.bindingEv());
                high = Math.max(high, state.bindingEv() + splitting);
            }
            String label = e.getValue().toString();
            spectra.add(linked(label, solid, Math.max(2, low - 10), high + 14, brightness, transmission, noise));
        }
        return new SpotInput(declared(overlayerNm), spectra, OptionalDouble.of(54.7), true, treatment, List.of());
    }

    /** The spot with scans of lines that the solid does not have, where none of its own lie. */
    SpotInput withAbsentLines(
            ReferenceData reference, SimulatedSolid solid, double overlayerNm, Treatment treatment, long noise) {
        SpotInput usual = spot(reference, solid, overlayerNm, treatment, noise);
        List<LinkedSpectrum> spectra = new ArrayList<>(usual.spectra());
        for (String name :
                List.of("N 1s", "F 1s", "Si 2p", "P 2p", "S 2p", "Cl 2p", "Na 1s", "Ca 2p", "Ti 2p", "B 1s")) {
            Line line = Line.parse(name);
            double at = reference.bindingEnergy(line.high()).orElseThrow().valueEv();
            if (solid.hasLineWithin(line.element(), at - 14, at + 16)) continue;
            spectra.add(linked(
                    name, solid, at - 10, at + 14, 1e6 / solid.maximum(), new Transmission.PowerLaw(-0.4), noise));
        }
        return usual.withSpectra(spectra);
    }

    private static LinkedSpectrum linked(
            String label,
            SimulatedSolid solid,
            double low,
            double high,
            double brightness,
            Transmission transmission,
            long noise) {
        double start = Math.rint(low * 10) / 10;
        double[] counts = solid.counts(start, high, brightness, transmission);
        if (noise != 0) {
            counts = PoissonSampler.sample(RandomStreams.stream(noise, "simulated", label), counts);
        }
        double[] energy = new double[counts.length];
        for (int i = 0; i < energy.length; i++) energy[i] = start + i * SimulatedSolid.STEP;
        BindingScan scan = new BindingScan(
                label, SimulatedSolid.PHOTON, energy, counts, true, OptionalDouble.of(1), OptionalDouble.of(20));
        return new LinkedSpectrum(
                label,
                new Provenance("simulated", "00", 1, 1, "made"),
                label,
                false,
                SpectrumRole.MAIN,
                scan,
                transmission,
                java.util.Optional.empty());
    }

    private Spot declared(double overlayerNm) {
        String elements = quantified(overlayerNm).keySet().stream()
                .map(e -> "\"" + e + "\"")
                .collect(java.util.stream.Collectors.joining(", "));
        String json = """
                {"format": "spotline-holder-run/1", "spots": [{"id": "1",
                 "sample": {"name": "%s", "conductivity": "conductor", "expectedElements": [%s]},
                 "mount": {"electricalState": "grounded"}}]}
                """.formatted(name, elements);
        try {
            return HolderPlan.of(HolderRunReader.read(name, json.getBytes(java.nio.charset.StandardCharsets.UTF_8)))
                    .spots()
                    .get(0);
        } catch (spotline.core.ReadException e) {
            throw new IllegalStateException(e);
        }
    }
}
