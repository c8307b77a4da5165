package spotline.run.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import spotline.core.Finding;
import spotline.core.Provenance;
import spotline.core.ReadException;
import spotline.core.Severity;
import spotline.core.Work;
import spotline.demo.MixedSpot;
import spotline.holder.HolderPlan;
import spotline.holder.HolderRunReader;
import spotline.holder.SpectrumRole;
import spotline.holder.Spot;
import spotline.reference.ReferenceData;
import spotline.run.BoundedMemo;
import spotline.run.HolderRun;
import spotline.run.Led;
import spotline.run.LinkedSpectrum;
import spotline.run.Memo;
import spotline.run.RunPipeline;
import spotline.run.RunResult;
import spotline.run.SpotInput;
import spotline.run.TreatmentStack;
import spotline.spectra.BindingScan;
import spotline.spectra.HeaderField;
import spotline.spectra.Transmission;

/**
 * Simulated holders with one thing wrong: the finding that says so leads, and no caution and no stop stands beside it that
 * does not hang under it.
 */
class PlantedTrapsTest {
    private static final ReferenceData REFERENCE = ReferenceData.shipped();
    /** What a trap leaves alone is treated once. */
    private static final Memo MEMO = new BoundedMemo(20_000);

    private static final String PLAN = """
            {"format": "spotline-holder-run/1", "date": "2026-05-12",
             "instrument": {"sourceAnalyserAngleDeg": 54.7, "excitation": {"source": "Al Ka", "monochromated": true}},
             "treatment": {"findings": {"limits": {"highestCountRatePerSecond": RATE}}},
             "spots": [
              {"id": "5", "xMm": 20, "yMm": 9,
               "sample": {"name": "pigment", "form": "powder", "conductivity": "insulator", "carbon": "adventitious",
                          "expectedElements": ["Ti", "O", "C"]},
               "mount": {"method": "MOUNT", "electricalState": "isolated"}},
              {"id": "3", "xMm": 40, "yMm": 9,
               "sample": {"name": "coupon", "form": "solid", "conductivity": "insulator", "carbon": "adventitious",
                          "expectedElements": ["Al", "O", "C", "S"]},
               "mount": {"method": "adhesive-tape", "electricalState": "isolated"}},
              {"id": "4", "xMm": 60, "yMm": 9,
               "sample": {"name": "strip", "form": "foil", "conductivity": "conductor", "carbon": "adventitious",
                          "expectedElements": ["Ag", "C", "O", "S"]},
               "mount": {"method": "metal-clip", "electricalState": "grounded"}}
             ]}
            """;

    /** A holder as it is measured. */
    static final class Load {
        String mount = "cover-slip";
        double rate = 1e7;
        final Map<String, List<MixedSpot.Taken>> taken = new TreeMap<>();
        final Map<String, List<HeaderField>> headers = new TreeMap<>();

        Load() {
            for (String id : List.of("3", "4", "5"))
                taken.put(id, MixedSpot.of(id, 1).taken("clean " + id));
        }

        Load measured(String id, MixedSpot spot) {
            taken.put(id, spot.taken("trap " + id));
            return this;
        }

        /** Changes every scan of a spot. */
        Load changed(String id, Function<MixedSpot.Taken, MixedSpot.Taken> change) {
            taken.computeIfPresent(id, (k, scans) -> scans.stream().map(change).toList());
            return this;
        }
    }

    /** @param leader rules of which one leads */
    private record Trap(String what, String spot, Set<String> leader, Function<Load, Load> plant) {
        @Override
        public String toString() {
            return what;
        }
    }

    static Stream<Trap> traps() {
        return Stream.of(
                new Trap(
                        "brass clip",
                        "5",
                        Set.of("clip-metal"),
                        l -> l.measured(
                                "5",
                                MixedSpot.of("5", 0.8)
                                        .with(
                                                0.2,
                                                0,
                                                0,
                                                0.4,
                                                Map.of("Cu 2p3/2 932.6", 0.62, "Zn 2p3/2 1021.6", 0.38)))),
                new Trap(
                        "cover slip showing",
                        "5",
                        Set.of("undeclared-silicon"),
                        l -> l.measured(
                                "5",
                                MixedSpot.of("5", 0.7)
                                        .with(
                                                0.3,
                                                4.2,
                                                7,
                                                1.2,
                                                Map.of(
                                                        "Si 2p3/2 103.2",
                                                        0.27,
                                                        "O 1s 532.6",
                                                        0.62,
                                                        "Na 1s 1072.0",
                                                        0.07,
                                                        "Zn 2p3/2 1022.2",
                                                        0.02,
                                                        "K 2p3/2 293.0",
                                                        0.02)))),
                new Trap(
                        "silicone",
                        "4",
                        Set.of("silicone-film"),
                        l -> l.measured(
                                "4",
                                MixedSpot.of("4", 0.7)
                                        .with(
                                                0.3,
                                                0,
                                                6,
                                                1.1,
                                                Map.of(
                                                        "Si 2p3/2 102.3",
                                                        0.25,
                                                        "O 1s 532.3",
                                                        0.25,
                                                        "C 1s 284.6",
                                                        0.5)))),
                new Trap("swapped spots", "5", Set.of("swapped-spots"), l -> {
                    List<MixedSpot.Taken> three = l.taken.get("3");
                    l.taken.put("3", l.taken.get("5"));
                    l.taken.put("5", three);
                    return l;
                }),
                new Trap(
                        "another anode",
                        "5",
                        Set.of("photon-energy-inconsistent"),
                        l -> l.measured("5", MixedSpot.of("5", 1).excitedBy(1253.6))),
                new Trap("transmission applied twice", "3", Set.of("transmission-applied-twice"), l -> {
                    l.headers.put("3", List.of(new HeaderField("Transmission correction", "applied")));
                    return l.changed(
                            "3", t -> counts(t, (c, k) -> c / (t.transmission().at(k) * 5)));
                }),
                new Trap(
                        "drift",
                        "5",
                        Set.of("surface-potential-drifted"),
                        l -> l.measured("5", MixedSpot.of("5", 1).drifting(0.5))),
                new Trap("tape", "5", Set.of("tape-signals"), l -> {
                    l.mount = "powder-on-tape";
                    return l.measured(
                            "5",
                            MixedSpot.of("5", 0.45)
                                    .with(
                                            0.55,
                                            3.9,
                                            6,
                                            1.0,
                                            Map.of(
                                                    "C 1s 284.8",
                                                    0.57,
                                                    "C 1s 286.5",
                                                    0.10,
                                                    "C 1s 289.0",
                                                    0.14,
                                                    "O 1s 532.2",
                                                    0.10,
                                                    "O 1s 533.5",
                                                    0.09)));
                }),
                new Trap(
                        "fingerprint",
                        "5",
                        Set.of("salt-signals"),
                        l -> l.measured(
                                "5",
                                MixedSpot.of("5", 0.85)
                                        .with(0.15, 3.9, 6, 1.1, Map.of("Na 1s 1071.6", 0.5, "Cl 2p3/2 198.6", 0.5)))),
                new Trap("degradation", "3", Set.of("degradation"), l -> {
                    List<MixedSpot.Taken> scans = new ArrayList<>(l.taken.get("3"));
                    MixedSpot.Taken al = scans.get(3);
                    scans.add(labelled(counts(al, (c, k) -> Math.rint(0.85 * c)), "trap 3#9"));
                    l.taken.put("3", scans);
                    return l;
                }),
                new Trap(
                        "two pass energies",
                        "5",
                        Set.of("pass-energies-differ"),
                        l -> l.changed("5", t -> flat(t, t.region().startsWith("Ti") ? 80 : 30))),
                new Trap("smoothed", "5", Set.of("counts-not-poisson"), l -> l.changed("5", PlantedTrapsTest::smooth)),
                new Trap("saturated", "4", Set.of("count-rate-too-high"), l -> {
                    l.rate = 50_000;
                    return l.changed(
                            "4",
                            t -> counts(
                                    t,
                                    (c, k) -> Math.rint(c
                                            / (1
                                                    + 4e-6
                                                            * c
                                                            / t.scan()
                                                                    .secondsPerChannel()
                                                                    .orElse(1)))));
                }));
    }

    private interface Change {
        double of(double counts, double kineticEv);
    }

    private static MixedSpot.Taken counts(MixedSpot.Taken t, Change change) {
        double[] counts = t.scan().counts();
        for (int i = 0; i < counts.length; i++) {
            counts[i] = change.of(counts[i], t.scan().kineticEv(i));
        }
        return new MixedSpot.Taken(
                t.region(), t.survey(), with(t.scan(), counts, t.scan().passEnergyEv()), t.transmission());
    }

    private static MixedSpot.Taken smooth(MixedSpot.Taken t) {
        double[] c = t.scan().counts();
        double[] counts = c.clone();
        for (int i = 2; i + 2 < c.length; i++) {
            counts[i] = (-3 * c[i - 2] + 12 * c[i - 1] + 17 * c[i] + 12 * c[i + 1] - 3 * c[i + 2]) / 35;
        }
        return new MixedSpot.Taken(
                t.region(), t.survey(), with(t.scan(), counts, t.scan().passEnergyEv()), t.transmission());
    }

    private static MixedSpot.Taken flat(MixedSpot.Taken t, double pass) {
        return new MixedSpot.Taken(
                t.region(),
                t.survey(),
                with(t.scan(), t.scan().counts(), OptionalDouble.of(pass)),
                new Transmission.Flat());
    }

    private static MixedSpot.Taken labelled(MixedSpot.Taken t, String label) {
        BindingScan s = t.scan();
        return new MixedSpot.Taken(
                t.region(),
                t.survey(),
                new BindingScan(
                        label,
                        s.photonEnergyEv(),
                        s.energies(),
                        s.counts(),
                        true,
                        s.secondsPerChannel(),
                        s.passEnergyEv()),
                t.transmission());
    }

    private static BindingScan with(BindingScan s, double[] counts, OptionalDouble pass) {
        return new BindingScan(s.label(), s.photonEnergyEv(), s.energies(), counts, true, s.secondsPerChannel(), pass);
    }

    static RunResult treated(Load load) throws ReadException {
        String text = PLAN.replace("MOUNT", load.mount).replace("RATE", Double.toString(load.rate));
        HolderPlan plan = HolderPlan.of(HolderRunReader.read("made.json", text.getBytes(StandardCharsets.UTF_8)));
        TreatmentStack treatments = new TreatmentStack(plan.file(), "made.json", Optional.empty());
        List<SpotInput> inputs = new ArrayList<>();
        for (int i = 0; i < plan.spots().size(); i++) {
            Spot spot = plan.spots().get(i);
            List<LinkedSpectrum> spectra = new ArrayList<>();
            for (MixedSpot.Taken t : load.taken.getOrDefault(spot.id(), List.of())) {
                spectra.add(new LinkedSpectrum(
                        t.scan().label(),
                        new Provenance("made", "00", 1, 1, "made"),
                        t.region(),
                        t.survey(),
                        SpectrumRole.UNKNOWN,
                        t.scan(),
                        t.transmission(),
                        Optional.empty(),
                        load.headers.getOrDefault(spot.id(), List.of())));
            }
            inputs.add(new SpotInput(spot, spectra, OptionalDouble.of(54.7), true, treatments.of(spot, i), List.of()));
        }
        HolderRun run = new HolderRun(plan, inputs, new TreeMap<>(), List.of(), 1, Optional.of(List.of()));
        return new RunPipeline(REFERENCE, "test", RuleBook.standard(), MEMO).treat(run, 1, Work.UNWATCHED);
    }

    private static List<Finding> standing(RunResult result) {
        Set<Finding> followers = new HashSet<>();
        for (Led led : result.led()) followers.addAll(led.followers());
        return result.findings().stream()
                .filter(f -> f.severity() != Severity.NOTE && !followers.contains(f))
                .toList();
    }

    @Test
    void aClipInTheAreaLeads() throws ReadException {
        theTrapsFindingLeadsAndNothingUnrelatedStands(traps().findFirst().orElseThrow());
    }

    @Tag("slow")
    @ParameterizedTest
    @MethodSource("traps")
    void theTrapsFindingLeadsAndNothingUnrelatedStands(Trap trap) throws ReadException {
        RunResult result = treated(trap.plant().apply(new Load()));
        List<Finding> standing = standing(result);
        assertThat(standing)
                .as(
                        "standing, of %s",
                        result.findings().stream()
                                .filter(f -> f.severity() != Severity.NOTE)
                                .toList())
                .isNotEmpty()
                .allSatisfy(f -> assertThat(f.rule()).isIn(trap.leader()));
        assertThat(standing).anySatisfy(f -> assertThat(f.spot()).isEqualTo(trap.spot()));
    }

    @Test
    void theCleanHolderHasNeitherCautionNorStop() throws ReadException {
        assertThat(standing(treated(new Load()))).isEmpty();
    }
}
