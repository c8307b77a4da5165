package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import spotline.reference.GhostLine;
import spotline.reference.Line;
import spotline.reference.MountMaterial;
import spotline.reference.ReferenceData;
import spotline.reference.XraySatellite;
import spotline.reference.XraySource;

/**
 * What is left standing in the residual of a survey's model, with the nearest explanations.
 *
 * <p>Units: eV. Errors: none.
 */
final class Features {
    private static final double NEAR_EV = 1.5;
    private static final double NEAR_AUGER_EV = 12;
    private static final double LOSS_FROM_EV = 2;
    private static final double LOSS_TO_EV = 35;
    private static final double STRONG_SHARE = 0.05;

    private final ReferenceData reference;
    private final SurveyModelFit model;
    private final List<GhostLine> ghosts;
    private final boolean monochromated;

    Features(ReferenceData reference, SurveyModelFit model, List<GhostLine> ghosts, boolean monochromated) {
        this.reference = reference;
        this.model = model;
        this.ghosts = ghosts;
        this.monochromated = monochromated;
    }

    List<Feature> above(double significance) {
        Templates templates = model.templates;
        SurveyGrid grid = templates.grid;
        Design design = model.design;
        Design.White residual = design.residual(model.fit().curve());
        Hunt.Base base = new Hunt.Base(design, model.fit().passive, c -> true);
        double[] values = residual.values();
        PeakShape shape = new PeakShape(templates.gaussianEv * 1.1, 0.2);
        int reach = Math.max(1, (int) Math.round(0.7 * templates.gaussianEv / grid.step));
        double[] z = new double[grid.channels];
        double[] area = new double[grid.channels];
        for (int i = 0; i < grid.channels; i++) {
            double rough = 0;
            for (int k = Math.max(0, i - reach); k <= Math.min(grid.channels - 1, i + reach); k++) rough += values[k];
            if (rough / Math.sqrt(2 * reach + 1) < 0.5 * significance) continue;
            Curve bump = templates.bump(shape, grid.energy[i]);
            if (bump.isEmpty()) continue;
            Hunt.Added added = base.added(bump, residual);
            z[i] = Math.sqrt(added.gain());
            area[i] = added.amount();
        }
        List<Feature> features = new ArrayList<>();
        int apart = Math.max(1, (int) Math.round(2 * templates.gaussianEv / grid.step));
        for (int i = 0; i < grid.channels; i++) {
            if (z[i] < significance) continue;
            boolean top = true;
            for (int k = Math.max(0, i - apart); k <= Math.min(grid.channels - 1, i + apart); k++) {
                top &= z[k] < z[i] || (z[k] == z[i] && k >= i);
            }
            if (!top) continue;
            SurveyPeak peak = new SurveyPeak(grid.energy[i], z[i], area[i] * grid.unitsPerCount);
            features.add(new Feature(peak, explanations(grid.energy[i], area[i])));
        }
        return features;
    }

    private List<String> explanations(double energy, double area) {
        List<String> found = new ArrayList<>();
        for (int e = 0; e < model.members.size(); e++) {
            if (!model.active(e) || !(model.amount(e) > 0)) continue;
            fromElement(e, energy, area, found);
        }
        fromTables(energy, found);
        return found.stream().distinct().limit(6).toList();
    }

    private void fromElement(int owner, double energy, double area, List<String> to) {
        Atom atom = model.members.get(owner).atom();
        double offset = model.meanOffset(owner);
        for (AtomLine line : atom.lines()) {
            double strong = model.amount(owner)
                    * model.templates.area(model.members.get(owner).emitter(), line);
            if (area > strong) continue;
            double at = line.bindingEv() + offset;
            for (GhostLine ghost : ghosts) {
                boolean here = Math.abs(at + ghost.apparentShiftEv() - energy) < NEAR_EV;
                if (here && ghost.apparentShiftEv() != 0 && area < 2 * STRONG_SHARE * strong) {
                    to.add(line.line() + " excited by stray " + ghost.contaminant() + " (" + ghost.cause() + ")");
                }
            }
            for (XraySatellite s : monochromated ? satellitesOfSource() : model.templates.satellites()) {
                if (Math.abs(at - s.displacementEv() - energy) < NEAR_EV && area < 3 * s.relativeHeight() * strong) {
                    to.add("X-ray satellite " + s.line() + " of " + line.line());
                }
            }
            double behind = energy - at;
            if (behind > LOSS_FROM_EV && behind < LOSS_TO_EV) {
                to.add(String.format(
                        Locale.ROOT,
                        "%s %.1f eV behind %s",
                        behind < 10 ? "shake-up or loss" : "energy loss",
                        behind,
                        line.line()));
            }
        }
        for (AugerBranch b : atom.auger()) {
            double at = model.templates.grid.photonEv - b.kineticEv() + offset;
            if (Math.abs(at - energy) < NEAR_AUGER_EV + b.widthEv() / 2) {
                to.add("Auger group " + atom.symbol() + " " + b.name());
            }
        }
    }

    private List<XraySatellite> satellitesOfSource() {
        return reference
                .sourceNear(model.templates.grid.photonEv, false)
                .map((XraySource s) -> reference.satellites(s))
                .orElse(List.of());
    }

    /** Main lines of elements not in the model, and markers of mounts, that lie here. */
    private void fromTables(double energy, List<String> to) {
        double binding = energy + model.shiftEv();
        for (MountMaterial mount : reference.mountMaterials()) {
            for (MountMaterial.Marker marker : mount.markers()) {
                Line line = marker.line();
                boolean inModel = model.owner(line.element()) >= 0;
                if (!inModel && binding > marker.lowEv() - NEAR_EV && binding < marker.highEv() + NEAR_EV) {
                    to.add(line + " of " + mount.name());
                }
            }
        }
    }
}
