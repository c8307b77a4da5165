package spotline.run.findings;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spotline.analysis.charge.ChargeEvidence;
import spotline.analysis.charge.ChargeMethod;
import spotline.analysis.charge.FermiEdge;
import spotline.analysis.quantify.StateShare;
import spotline.core.Estimate;
import spotline.core.Finding;
import spotline.core.ReadException;
import spotline.holder.HolderPlan;
import spotline.holder.HolderRunReader;
import spotline.holder.SpectrumRole;
import spotline.holder.Spot;
import spotline.numerics.shape.Gaussian;
import spotline.reference.Line;
import spotline.reference.MountMaterial;
import spotline.reference.ReferenceData;
import spotline.run.DefaultTreatment;
import spotline.run.FittedPeak;
import spotline.run.RunRules;
import spotline.run.RunView;
import spotline.run.SpotView;
import spotline.run.Treatment;

/**
 * A made-up holder on which every rule has what it needs and none fires: two spots of an alumina powder on carbon tape, a
 * silver foil, a zinc oxide. A test changes one thing of it.
 */
final class CleanHolder {
    private static final ReferenceData REFERENCE = ReferenceData.shipped();

    final Map<String, Draft> spots = new LinkedHashMap<>();
    final List<Finding> found = new ArrayList<>();
    final ObjectNode settings;
    String plan = """
            {"format": "spotline-holder-run/1", "date": "2026-05-12", "holder": {"template": "flat-bar"},
             "instrument": {"sourceAnalyserAngleDeg": 54.7, "energyCalibration": "scale.json"},
             "silence": [SILENCE],
             "spots": [
              {"id": "1", "xMm": 10, "yMm": 9,
               "sample": {"name": "alumina", "form": "powder", "conductivity": "insulator", "carbon": "adventitious",
                          "expectedElements": ["Al", "O", "C"]},
               "mount": {"method": "powder-on-tape", "electricalState": "isolated", "materials": ["carbon tape"],
                         "outlineMm": {"width": 6, "height": 5}}},
              {"id": "2", "xMm": 20, "yMm": 9,
               "sample": {"name": "alumina", "form": "powder", "conductivity": "insulator", "carbon": "adventitious",
                          "expectedElements": ["Al", "O", "C"]},
               "mount": {"method": "powder-on-tape", "electricalState": "isolated", "materials": ["carbon tape"],
                         "outlineMm": {"width": 6, "height": 5}}},
              {"id": "3", "xMm": 40, "yMm": 9,
               "sample": {"name": "silver foil", "form": "foil", "conductivity": "conductor", "carbon": "adventitious",
                          "expectedElements": ["Ag", "C", "O"]},
               "mount": {"method": "metal-clip", "electricalState": "grounded",
                         "outlineMm": {"width": 6, "height": 5}}},
              {"id": "4", "xMm": 60, "yMm": 9,
               "sample": {"name": "zinc oxide", "form": "solid", "conductivity": "insulator", "carbon": "adventitious",
                          "expectedElements": ["Zn", "O", "C"]},
               "mount": {"method": "cover-slip", "electricalState": "isolated",
                         "outlineMm": {"width": 6, "height": 5}}}
             ]}
            """;
    String silence = "";

    CleanHolder() {
        settings = (ObjectNode) DefaultTreatment.json().deepCopy();
        limit("highestCountRatePerSecond", 1e6);
        limit("instrumentFwhmEv", 0.5);
        charge("referenceEv", 284.8);
        charge("referenceUncertaintyEv", 0.25);
        alumina("1");
        alumina("2");
        silver();
        zinc();
    }

    void limit(String name, double value) {
        ((ObjectNode) settings.at("/findings/limits")).put(name, value);
    }

    void charge(String name, double value) {
        ((ObjectNode) settings.path("charge")).put(name, value);
    }

    Draft spot(String id) {
        Draft draft = spots.get(id);
        if (draft == null) throw new IllegalArgumentException(id);
        return draft;
    }

    private Draft begin(String id, double shiftEv, double carbon, double oxygen, double oxygenEv) {
        Draft d = new Draft(id, shiftEv);
        spots.put(id, d);
        d.measure("C 1s", 284.8, carbon);
        d.measure("O 1s", oxygenEv, oxygen);
        d.survey.add("C");
        d.survey.add("O");
        states(d, carbon, 0.05);
        return d;
    }

    /** Shares of C 1s: a little ether, so much ester, the rest hydrocarbon. */
    void states(Draft d, double carbon, double ester) {
        d.states.clear();
        state(d, "C-C, C-H", carbon, 0.95 - ester);
        state(d, "C-O", carbon, 0.05);
        state(d, "O-C=O or carbonate", carbon, ester);
    }

    private static void state(Draft d, String name, double carbon, double share) {
        Estimate fraction = Estimate.of(share, "fit/" + name, 0.01);
        d.states.add(new StateShare("C", "C 1s", name, Optional.of(fraction.times(carbon)), fraction));
    }

    private void alumina(String id) {
        Draft d = begin(id, -3, 20, 48, 531.5);
        d.measure("Al 2p", 74.5, 32);
        d.measure("Al 2s", 119.5, 32);
        d.survey.add("Al");
        d.add("C 1s", 284.8, 20, SpectrumRole.LAST);
        d.add("Al 2p", 74.5, 32, SpectrumRole.ETCH);
        d.add("O 1s", 531.5, 48, SpectrumRole.ETCH);
        d.fit("Al 2p", Map.of("oxide", 74.5), new Gaussian());
        d.peaks.add(new FittedPeak(
                d.label("C 1s", SpectrumRole.MAIN),
                "C 1s",
                "hydrocarbon C-C/C-H",
                "gaussian",
                Estimate.exact(287.8),
                java.util.OptionalDouble.of(284.8),
                Estimate.exact(1.2),
                Estimate.exact(1000),
                1));
        d.parameters.add(parameter(1461.5));
    }

    static ChargeEvidence.AugerParameterSeen parameter(double value) {
        return new ChargeEvidence.AugerParameterSeen(
                Line.parse("Al 2p"),
                "KL23L23",
                "made",
                Estimate.of(value, "auger", 0.02),
                Estimate.exact(77.5),
                Estimate.exact(value - 77.5),
                java.util.OptionalDouble.of(74.5),
                java.util.OptionalDouble.of(value - 74.5),
                List.of());
    }

    private void silver() {
        Draft d = begin("3", 0, 30, 10, 531.5);
        d.method = ChargeMethod.NONE;
        d.measure("Ag 3d", 368.2, 60);
        d.survey.add("Ag");
        d.fit("Ag 3d", Draft.pair("3 Ag 3d pair", 368.2, 6.0, 0.69), pair(), new Gaussian());
        d.edge = Optional.of(edge(0.558));
    }

    /** Both members of Ag 3d in one scan, fitted freely. */
    private static Map<String, Double> pair() {
        return Map.of("first", 368.2, "second", 374.2);
    }

    /** 10 to 90 % widths in squares: 0.114 eV at 300 K, 0.544 eV of an instrument of 0.5 eV; closed forms. */
    static FermiEdge edge(double width) {
        return new FermiEdge("made", Estimate.exact(0), Estimate.exact(0.5), 300, width, 1);
    }

    private void zinc() {
        Draft d = begin("4", -2, 20, 40, 530.4);
        d.measure("Zn 2p3/2", 1021.8, 40);
        d.survey.add("Zn");
    }

    RunView view() {
        try {
            HolderPlan holder = HolderPlan.of(HolderRunReader.read(
                    "made.json", plan.replace("SILENCE", silence).getBytes(StandardCharsets.UTF_8)));
            Treatment defaults = DefaultTreatment.treatment();
            Treatment treatment = new Treatment(
                    defaults.identify(),
                    defaults.charge(),
                    defaults.narrow(),
                    defaults.survey(),
                    defaults.factors(),
                    defaults.prepare(),
                    defaults.peakFit(),
                    defaults.quantify(),
                    defaults.limits(),
                    defaults.lines(),
                    settings);
            List<SpotView> views = new ArrayList<>();
            for (Spot spot : holder.spots()) {
                List<String> ids = spot.mount().markerMaterials();
                List<MountMaterial> mounts = REFERENCE.mountMaterials().stream()
                        .filter(m -> ids.contains(m.id()))
                        .toList();
                views.add(new SpotView(spot, spot(spot.id()).result(spot.sampleName()), treatment, mounts));
            }
            return new RunView(holder, views, List.of(), Optional.of(List.of()), found, REFERENCE);
        } catch (ReadException e) {
            throw new IllegalStateException(e);
        }
    }

    RunRules.Judged judged() {
        return RuleBook.standard().judge(view());
    }
}
