package spotline.report;

import static spotline.report.ExampleSpectra.linked;
import static spotline.report.ExampleSpectra.scan;
import static spotline.report.ExampleSpectra.straight;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import spotline.analysis.charge.ChargeMethod;
import spotline.analysis.charge.ChargeReference;
import spotline.analysis.charge.ChargeVerdict;
import spotline.analysis.identify.Identification;
import spotline.analysis.intensity.Intensity;
import spotline.analysis.quantify.Basis;
import spotline.analysis.quantify.Quantified;
import spotline.analysis.quantify.StateShare;
import spotline.core.Estimate;
import spotline.core.Finding;
import spotline.holder.HolderPlan;
import spotline.holder.HolderRunReader;
import spotline.reference.Line;
import spotline.report.ExampleSpectra.Peak;
import spotline.run.FittedPeak;
import spotline.run.LinkedSpectrum;
import spotline.run.MeasuredIntensity;
import spotline.run.RunResult;
import spotline.run.SampleComposition;
import spotline.run.SampleComposition.Mean;
import spotline.run.SpotResult;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/** An invented, small result that has one of everything: numbers, limits, withheld rows, unknown statistics. */
final class ExampleRun {
    private static final String HOLDER = """
            {
              "format": "spotline-holder-run/1", "title": TITLE, "date": "2026-05-12", "operator": "invented lab",
              "holder": { "template": "flat-bar" },
              "instrument": { "excitation": { "source": "Al Ka", "monochromated": true },
                              "emissionAngleDeg": 0.0, "chargeNeutraliser": "on", "transmission": "flat" },
              "spots": [
                { "id": "1", "xMm": 11.0, "yMm": 7.5,
                  "sample": { "id": "L-1", "name": SAMPLE, "owner": SAMPLE, "form": "solid", "conductivity": "insulator",
                              "expectedElements": ["C", "F"] },
                  "mount": { "method": "carbon-tape", "electricalState": "isolated" } },
                { "id": "2", "sample": { "name": "contact strip", "conductivity": "conductor" },
                  "mount": { "method": "metal-clip", "electricalState": "grounded" } }
              ]
            }
            """;

    private static final ObjectMapper MAPPER = new ObjectMapper();

    private ExampleRun() {}

    static RunResult plain() {
        return named("Invented study", "liner chip", "01-liner.txt");
    }

    /** The plain one, its first sample with an opening sentence that was accepted or declined. */
    static RunResult judged(boolean accepted) {
        RunResult run = plain();
        try {
            String json = HOLDER.replace("TITLE", "\"t\"")
                    .replace("SAMPLE", "\"liner chip\"")
                    .replace(
                            "\"form\": \"solid\"",
                            "\"form\": \"solid\", \"openingSentence\": {\"accepted\": " + accepted
                                    + ", \"by\": \"an analyst\"}");
            HolderPlan plan = HolderPlan.of(HolderRunReader.read("holder.json", json.getBytes(StandardCharsets.UTF_8)));
            return new RunResult(
                    plan,
                    run.spots(),
                    run.samples(),
                    run.findings(),
                    run.treatments(),
                    run.files(),
                    run.programVersion(),
                    run.seed());
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }

    /** The same with a title, a sample and a file called as told. */
    static RunResult named(String title, String sample, String file) {
        try {
            String json = HOLDER.replace("TITLE", MAPPER.writeValueAsString(title))
                    .replace("SAMPLE", MAPPER.writeValueAsString(sample));
            HolderPlan plan = HolderPlan.of(HolderRunReader.read("holder.json", json.getBytes(StandardCharsets.UTF_8)));
            JsonNode treatment = MAPPER.readTree(
                    "{\"narrow\":{\"background\":{\"kind\":\"linear\",\"endpointChannels\":5},"
                            + "\"highMarginFwhm\":2.50},\"quantify\":{\"meanFreePathExponent\":0.75,\"crossSectionRelativeU\":0.05}}");
            SortedMap<String, JsonNode> treatments = new TreeMap<>();
            treatments.put("1", treatment);
            treatments.put("2", MAPPER.readTree("{\"quantify\":{\"meanFreePathExponent\":0.75}}"));
            SortedMap<String, String> files = new TreeMap<>();
            files.put(file, "ab".repeat(32));
            files.put("02-strip.txt", "cd".repeat(32));
            SpotResult first = first(sample, file);
            SpotResult second = second();
            List<Finding> findings = new ArrayList<>();
            second.findings().forEach(findings::add);
            first.findings().forEach(findings::add);
            return new RunResult(
                    plan, List.of(first, second), samples(sample), findings, treatments, files, "0.1.0", 7);
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }

    private static List<SampleComposition> samples(String sample) {
        OptionalDouble none = OptionalDouble.empty();
        return List.of(
                new SampleComposition(
                        sample,
                        List.of("1"),
                        List.of(
                                new Mean("C", OptionalDouble.of(33.4567891234), OptionalDouble.of(0.91)),
                                new Mean("O", none, none),
                                new Mean("F", OptionalDouble.of(66.5432108766), OptionalDouble.of(0.91)))),
                new SampleComposition(
                        "contact strip", List.of("2"), List.of(new Mean("C", none, none), new Mean("Ti", none, none))));
    }

    static SpotResult first(String sample, String file) {
        List<Peak> carbon = List.of(new Peak(287.35, 4200, 1.3), new Peak(294.4, 9000, 1.5));
        List<Peak> all = List.of(
                new Peak(287.4, 9000, 2.6),
                new Peak(294.5, 20000, 2.8),
                new Peak(691.6, 90000, 3),
                new Peak(835, 40000, 9),
                new Peak(862, 15000, 9),
                new Peak(534.8, 2500, 3),
                new Peak(34, 9000, 3));
        BindingScan wide = scan(file + "#1", 0, 1200, 1, 4000, true, all);
        BindingScan c1s = scan(file + "#2", 280, 300, 0.1, 600, true, carbon);
        BindingScan f1s = scan(file + "#3", 684, 700, 0.1, 900, false, List.of(new Peak(691.6, 30000, 1.8)));
        BindingScan o1s = scan(file + "#4", 528, 541, 0.1, 900, true, List.of());
        List<LinkedSpectrum> spectra = List.of(
                linked(wide, file, 1, "survey", true),
                linked(c1s, file, 2, "C 1s", false),
                linked(f1s, file, 3, "F 1s", false),
                linked(o1s, file, 4, "O 1s", false));
        Identification found = ExampleIdentification.found();
        ChargeReference charge = new ChargeReference(
                        ChargeMethod.ADVENTITIOUS_CARBON,
                        "C 1s",
                        OptionalDouble.of(284.8),
                        OptionalDouble.of(287.35),
                        OptionalDouble.of(-2.55),
                        OptionalDouble.of(0.02),
                        OptionalDouble.of(0.25),
                        ChargeVerdict.ACCEPTED,
                        "The sample charges: adventitious carbon, measured at 287.35 eV, is set to 284.80 eV.",
                        Optional.of(ExampleSpectra.fit(c1s, "C 1s", new Window(282, 298), carbon)))
                .with(ExampleEvidence.of(file));
        List<MeasuredIntensity> intensities = List.of(
                intensity(
                        c1s,
                        "C 1s",
                        294.4,
                        new Window(282.5, 298.2),
                        Estimate.of(19876.54321987, "counting/" + file + "#2", 171.5),
                        true),
                intensity(f1s, "F 1s", 691.6, new Window(686, 697), Estimate.unknown(57484.25), true),
                intensity(
                        o1s,
                        "O 1s",
                        533,
                        new Window(530, 537),
                        Estimate.of(-12.5, "counting/" + file + "#4", 88),
                        false));
        Estimate x = Estimate.of(33.4567891234, "counting/" + file + "#2", 0.3)
                .with("factor/cross section C 1s", 0.8)
                .with("factor/cross section F 1s", -0.31);
        Estimate y = Estimate.of(66.5432108766, "counting/" + file + "#2", -0.3)
                .with("factor/cross section C 1s", -0.8)
                .with("factor/cross section F 1s", 0.31);
        List<Quantified> rows = List.of(
                new Quantified(
                        "C",
                        "C 1s",
                        c1s.label(),
                        Basis.NARROW,
                        Optional.of(x),
                        OptionalDouble.of(0.3),
                        false,
                        OptionalDouble.of(0.12)),
                new Quantified(
                        "O",
                        "O 1s",
                        o1s.label(),
                        Basis.NARROW,
                        Optional.empty(),
                        OptionalDouble.empty(),
                        true,
                        OptionalDouble.of(0.6234)),
                new Quantified(
                        "F",
                        "F 1s",
                        f1s.label(),
                        Basis.LINKED,
                        Optional.of(y),
                        OptionalDouble.of(0.3),
                        false,
                        OptionalDouble.empty()));
        return new SpotResult(
                "1",
                sample,
                "isolated",
                spectra,
                Optional.of(found),
                charge,
                intensities,
                List.of(new FittedPeak(
                        c1s.label(),
                        "C 1s",
                        "C\u2013C/C\u2013H",
                        "Voigt",
                        Estimate.of(287.35, "fit/position", 0.02),
                        OptionalDouble.of(284.8),
                        Estimate.of(1.3, "fit/width", 0.03),
                        Estimate.unknown(5812.17),
                        1.08)),
                rows,
                List.of(new SpotResult.Variant("survey", List.of(rows.get(0)))),
                List.of(Finding.note("one-spot-only", "One spot was measured, nothing is known of the scatter.")
                        .at("1", sample)),
                List.of(),
                StateShare.of(
                        "C",
                        "C 1s",
                        Optional.of(x),
                        List.of(
                                new StateShare.Component("CF2", Estimate.of(15000.125, "fit/area CF2", 140)),
                                new StateShare.Component(
                                        "C\u2013C/C\u2013H, =1+1", Estimate.of(5812.17, "fit/area C-C", 95.5)),
                                new StateShare.Component("C=O", Estimate.of(120, "fit/area C=O", 45)))),
                List.of(),
                Optional.empty());
    }

    /** Everything withheld, no energy reference, no survey. */
    static SpotResult second() {
        BindingScan ti = scan(
                "02-strip.txt#1",
                450,
                475,
                0.1,
                2000,
                true,
                List.of(new Peak(459, 8000, 1.4), new Peak(464.7, 4000, 2)));
        return new SpotResult(
                "2",
                "contact strip",
                "grounded",
                List.of(linked(ti, "02-strip.txt", 1, "Ti 2p", false)),
                Optional.empty(),
                new ChargeReference(
                        ChargeMethod.FERMI_EDGE,
                        "",
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        ChargeVerdict.FAILED,
                        "No reference line was measured.",
                        Optional.empty()),
                List.of(intensity(
                        ti, "Ti 2p", 459, new Window(455, 469), Estimate.of(24000, "counting/ti", 250), true)),
                List.of(),
                List.of(
                        new Quantified(
                                "C",
                                "",
                                "",
                                Basis.NARROW,
                                Optional.empty(),
                                OptionalDouble.empty(),
                                false,
                                OptionalDouble.empty()),
                        new Quantified(
                                "Ti",
                                "Ti 2p",
                                ti.label(),
                                Basis.NARROW,
                                Optional.empty(),
                                OptionalDouble.empty(),
                                false,
                                OptionalDouble.of(0.2))),
                List.of(),
                List.of(Finding.stop(
                                "pass-energies-differ",
                                "Quantified lines were measured at two pass energies, \"10\" and \"20\" eV.")
                        .at("2", "contact strip")),
                List.of(),
                StateShare.of(
                        "Ti",
                        "Ti 2p",
                        Optional.empty(),
                        List.of(new StateShare.Component("TiO2", Estimate.of(24000, "fit/area TiO2", 260)))),
                List.of(),
                Optional.empty());
    }

    private static MeasuredIntensity intensity(
            BindingScan scan, String line, double peak, Window window, Estimate area, boolean detected) {
        return new MeasuredIntensity(
                new Intensity(
                        Line.parse(line),
                        scan.label(),
                        peak,
                        1.5,
                        window,
                        "linear, 5 endpoint channels",
                        area,
                        detected,
                        OptionalDouble.of(120),
                        OptionalDouble.of(250),
                        straight(scan, window)),
                Basis.NARROW,
                "flat");
    }
}
