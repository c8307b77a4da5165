package spotline.demo;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * The invented demonstration: bearing parts of a harbour footbridge on one flat bar, five samples and six spots.
 *
 * <p>Compositions, potentials and settings are made up. State energies are rounded general knowledge of the field, from memory.
 */
final class Footbridge {
    /** Seed of all noise in the demonstration. */
    static final long SEED = 20260317;

    private static final AnalyserMode SURVEY = new AnalyserMode(120, 1.75, 1.0, -0.55);
    private static final AnalyserMode NARROW = new AnalyserMode(30, 0.70, 0.2, -0.35);

    static final InstrumentModel INSTRUMENT = new InstrumentModel(1486.69, 0, 2200, 1.6, SURVEY, NARROW);

    private Footbridge() {}

    static List<SpotPlan> spots() {
        List<SpotPlan> spots = new ArrayList<>();
        OffsetDateTime start = OffsetDateTime.parse("2026-03-17T08:40:00+01:00");
        for (SpotPlan plan :
                List.of(liner(start), primer(start), coupon(start), strip(start), pigment1(start), pigment2(start))) {
            SpotPlan placed = new SpotPlan(
                    plan.id(),
                    plan.file(),
                    plan.sampleId(),
                    plan.sampleName(),
                    plan.surface(),
                    plan.scans(),
                    start,
                    plan.quantified());
            spots.add(placed);
            start = placed.startOf(placed.scans().size()).plusSeconds(95);
        }
        return List.copyOf(spots);
    }

    private static SpotPlan liner(OffsetDateTime start) {
        Surface surface = new Surface(
                "PTFE-filled liner",
                new Medium(2.0, 50.01, 3, 18, 6.5),
                List.of(
                        new ElementState("C", "CF2", 0.270, "1s", 292.0, 1.00),
                        new ElementState("F", "CF2", 0.540, "1s", 689.2, 1.45),
                        new ElementState("C", "C-C, C-H", 0.095, "1s", 284.8, 0.95),
                        new ElementState("C", "C-O", 0.040, "1s", 286.4, 0.95),
                        new ElementState("C", "C=O", 0.010, "1s", 288.0, 0.95),
                        new ElementState("O", "C-O", 0.035, "1s", 533.1, 1.25),
                        new ElementState("O", "C=O", 0.010, "1s", 532.0, 1.25)),
                new Overlayer(0.12, 284.8),
                3.1,
                0.02,
                OptionalDouble.empty());
        List<Scan> scans = List.of(
                survey(2),
                narrow("C", "1s", 308, 276, 6),
                narrow("F", "1s", 706, 680, 3),
                narrow("O", "1s", 550, 524, 10),
                narrow("C", "1s", 308, 276, 6));
        return new SpotPlan(
                "1", "01-liner-chip.txt", "L-1", "liner chip", surface, scans, start, lines("C 1s", "O 1s", "F 1s"));
    }

    private static SpotPlan primer(OffsetDateTime start) {
        Surface surface = new Surface(
                "zinc-rich silicate primer, weathered",
                new Medium(2.6, 23.5, 1, 6.3, 4.0),
                List.of(
                        new ElementState("Zn", "oxide and hydroxide", 0.135, "2p3/2", 1021.8, 1.30),
                        new ElementState("O", "oxide", 0.090, "1s", 530.4, 1.10),
                        new ElementState("O", "hydroxide, carbonate", 0.270, "1s", 531.7, 1.40),
                        new ElementState("O", "silicate", 0.140, "1s", 532.4, 1.30),
                        new ElementState("C", "carbonate", 0.030, "1s", 289.7, 1.10),
                        new ElementState("Si", "silicate", 0.095, "2p3/2", 102.2, 1.25),
                        new ElementState("Cl", "chloride", 0.038, "2p3/2", 198.8, 1.00)),
                new Overlayer(1.25, 284.8),
                1.4,
                0,
                OptionalDouble.empty());
        List<Scan> scans = List.of(
                survey(2),
                narrow("C", "1s", 304, 275, 8),
                narrow("Zn", "2p", 1064, 1011, 4),
                narrow("O", "1s", 548, 520, 4),
                narrow("Si", "2p", 118, 97.5, 16),
                narrow("Cl", "2p", 216, 189, 16),
                narrow("Zn", "LMM", 520, 468, 4),
                narrow("C", "1s", 304, 275, 8));
        return new SpotPlan(
                "2",
                "02-primer-flake.txt",
                "P-1",
                "primer flake",
                surface,
                scans,
                start,
                lines("C 1s", "O 1s", "Si 2p", "Cl 2p", "Zn 2p"));
    }

    private static SpotPlan coupon(OffsetDateTime start) {
        Surface surface = new Surface(
                "anodised and sealed aluminium",
                new Medium(3.0, 59.99, 3, 16, 7.0),
                List.of(
                        new ElementState("Al", "oxide and hydroxide", 0.290, "2p3/2", 74.5, 1.15),
                        new ElementState("O", "oxide and hydroxide", 0.485, "1s", 531.5, 1.55),
                        new ElementState("O", "sulfate", 0.180, "1s", 532.2, 1.35),
                        new ElementState("S", "sulfate", 0.045, "2p3/2", 168.9, 1.15)),
                new Overlayer(0.85, 284.8),
                2.7,
                0.01,
                OptionalDouble.empty());
        List<Scan> scans = List.of(
                survey(3),
                narrow("C", "1s", 305, 276, 10),
                narrow("O", "1s", 548, 522, 3),
                narrow("Al", "2p", 91, 65, 12),
                narrow("Al", "2s", 136, 110, 12),
                narrow("C", "1s", 305, 276, 10));
        return new SpotPlan(
                "3",
                "03-anodised-coupon.txt",
                "K-1",
                "anodised coupon",
                surface,
                scans,
                start,
                lines("C 1s", "O 1s", "Al 2p", "S 2p"));
    }

    private static SpotPlan strip(OffsetDateTime start) {
        Surface surface = new Surface(
                "silver plate, lightly tarnished",
                new Medium(10.5, 107.868, 1, 11, 0),
                List.of(
                        new ElementState("Ag", "metal", 0.820, "3d5/2", 368.21, 0.25),
                        new ElementState("S", "sulfide", 0.110, "2p3/2", 161.3, 0.75),
                        new ElementState("O", "adsorbed", 0.070, "1s", 531.2, 1.40)),
                new Overlayer(0.65, 284.6),
                0,
                0,
                OptionalDouble.of(0.12));
        List<Scan> scans = List.of(
                survey(2),
                narrow("C", "1s", 302, 273, 10),
                narrow("Ag", "3d", 388, 356, 2),
                narrow("O", "1s", 546, 520, 14),
                narrow("S", "2p", 176, 150, 14),
                narrow("Ag", "MNN", 1158, 1112, 4),
                narrow("valence", "band", 14, -4, 20),
                narrow("C", "1s", 302, 273, 10));
        return new SpotPlan(
                "4",
                "04-contact-strip.txt",
                "S-1",
                "contact strip",
                surface,
                scans,
                start,
                lines("C 1s", "O 1s", "S 2p", "Ag 3d"));
    }

    private static SpotPlan pigment1(OffsetDateTime start) {
        return pigment("5", "05-pigment-a.txt", 0.80, 3.9, start);
    }

    private static SpotPlan pigment2(OffsetDateTime start) {
        return pigment("6", "06-pigment-b.txt", 0.90, 4.3, start);
    }

    private static SpotPlan pigment(
            String id, String file, double overlayerNm, double potentialEv, OffsetDateTime start) {
        Surface surface = new Surface(
                "titanium dioxide pigment",
                new Medium(3.9, 79.87, 3, 16, 3.2),
                List.of(
                        new ElementState("Ti", "TiO2", 0.315, "2p3/2", 458.7, 0.70),
                        new ElementState("O", "TiO2", 0.630, "1s", 529.95, 0.85),
                        new ElementState("O", "hydroxide", 0.055, "1s", 531.5, 1.25)),
                new Overlayer(overlayerNm, 284.8),
                potentialEv,
                0.02,
                OptionalDouble.empty());
        List<Scan> scans = List.of(
                survey(2),
                narrow("C", "1s", 306, 277, 10),
                narrow("Ti", "2p", 484, 450, 4),
                narrow("O", "1s", 550, 523, 4),
                narrow("C", "1s", 306, 277, 10));
        return new SpotPlan(
                id, file, "T-1", "titanium dioxide pigment", surface, scans, start, lines("C 1s", "O 1s", "Ti 2p"));
    }

    private static Scan survey(int scans) {
        return new Scan("survey", "", SURVEY, 1205, -5, 1, 0.1, scans);
    }

    private static Scan narrow(String species, String transition, double highEv, double lowEv, int scans) {
        return new Scan(species, transition, NARROW, highEv, lowEv, 0.1, 0.1, scans);
    }

    private static Map<String, String> lines(String... lines) {
        Map<String, String> shells = new LinkedHashMap<>();
        for (String line : lines) {
            String[] parts = line.split(" ", 2);
            shells.put(parts[0], parts[1]);
        }
        return shells;
    }
}
