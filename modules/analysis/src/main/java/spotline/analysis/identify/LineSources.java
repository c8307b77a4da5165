package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import spotline.reference.GhostLine;

/**
 * What the other elements of a model could make at the place of a line: ghosts, losses, shake-up, states, Auger groups,
 * and lines that simply lie there.
 *
 * <p>Source: shares and reaches: common practice, no source.
 */
final class LineSources {
    private static final double GHOST_WITHIN_EV = 1.5;
    private static final double GHOST_SHARE = 0.06;
    private static final double LOSS_FROM_EV = 2;
    private static final double SHAKE_UP_TO_EV = 11;
    private static final double SHAKE_UP_SHARE = 0.4;
    private static final double LOSS_TO_EV = 30;
    private static final double LOSS_SHARE = 0.32;
    /** Second plasmons follow on the first. */
    private static final double SECOND_LOSS_TO_EV = 52;

    private static final double SECOND_LOSS_SHARE = 0.1;
    private static final double SHOULDER_EV = 6;
    private static final double SHOULDER_SHARE = 0.05;
    private static final double AUGER_SLACK_EV = 4;

    private final SurveyModelFit model;
    private final List<GhostLine> ghosts;

    LineSources(SurveyModelFit model, List<GhostLine> ghosts) {
        this.model = model;
        this.ghosts = ghosts;
    }

    /**
     * @param energyEv measured binding energy of the line
     * @param area of it, in the survey's counts eV
     */
    List<String> of(int owner, double energyEv, double area) {
        List<String> found = new ArrayList<>();
        for (int e = 0; e < model.members.size(); e++) {
            if (e == owner || !model.active(e)) continue;
            double amount = model.amount(e);
            Emitter emitter = model.members.get(e).emitter();
            for (AtomLine line : emitter.atom().lines()) {
                double ratio = Math.max(1, model.fittedRatio(e, line));
                for (AtomLine.Member m : line.members()) {
                    double strong = amount * ratio * model.templates.area(emitter, m);
                    double at = m.bindingEv() + model.meanOffset(e);
                    fromLine(emitter.atom(), m, energyEv - at, area, strong, found);
                }
            }
            for (AugerBranch b : emitter.atom().auger()) {
                double at = model.templates.grid.photonEv - b.kineticEv() + model.meanOffset(e);
                double group = amount * model.templates.area(emitter, b);
                double reach = b.widthEv() + AUGER_SLACK_EV + (b.listed() ? 0 : 3 * AUGER_SLACK_EV);
                if (Math.abs(at - energyEv) < reach && area < group) {
                    found.add("Auger group " + emitter.atom().symbol() + " " + b.name());
                }
            }
        }
        return found.stream().distinct().toList();
    }

    private void fromLine(Atom atom, AtomLine.Member m, double behind, double area, double strong, List<String> to) {
        for (GhostLine ghost : ghosts) {
            boolean here = Math.abs(behind - ghost.apparentShiftEv()) < GHOST_WITHIN_EV;
            if (here && area < GHOST_SHARE * strong && ghost.apparentShiftEv() != 0) {
                to.add(m.line() + " excited by stray " + ghost.contaminant());
            }
        }
        if (Math.abs(behind) < SHOULDER_EV && area < SHOULDER_SHARE * strong) {
            to.add("another state of " + m.line());
        } else if (behind > LOSS_FROM_EV && behind < SHAKE_UP_TO_EV && area < shakeUpShare(atom, m) * strong) {
            to.add("shake-up or loss behind " + m.line());
        } else if (behind > LOSS_FROM_EV && behind < LOSS_TO_EV && area < LOSS_SHARE * strong) {
            to.add("energy loss behind " + m.line());
        } else if (behind > LOSS_TO_EV && behind < SECOND_LOSS_TO_EV && area < SECOND_LOSS_SHARE * strong) {
            to.add("second energy loss behind " + m.line());
        }
    }

    /** Open 3d and 4f shells shake up strongly. */
    private static double shakeUpShare(Atom atom, AtomLine.Member m) {
        int z = atom.element().z();
        boolean first = z >= 21 && z <= 29 && m.line().orbital().n() == 2;
        boolean second = z >= 57 && z <= 71 && m.line().orbital().n() == 3;
        return first || second ? SHAKE_UP_SHARE : LOSS_SHARE;
    }

    /** Lines and Auger groups of other elements at the place of a line. */
    Set<String> overlapping(int owner, LineTests.Test test) {
        Set<String> names = new TreeSet<>();
        double own = model.amount(owner)
                * model.templates.area(model.members.get(owner).emitter(), test.line());
        for (int e = 0; e < model.members.size(); e++) {
            if (e == owner || !model.active(e)) continue;
            Emitter emitter = model.members.get(e).emitter();
            double amount = model.amount(e);
            double offset = model.meanOffset(e);
            for (AtomLine line : emitter.atom().lines()) {
                for (AtomLine.Member m : line.members()) {
                    double apart = Math.abs(m.bindingEv() + offset - test.energyEv());
                    double area = amount * model.templates.area(emitter, m);
                    if (apart < model.templates.gaussianEv && area > 0.1 * own) {
                        names.add(m.line() + " under " + test.line().line());
                    }
                }
            }
            for (AugerBranch b : emitter.atom().auger()) {
                double at = model.templates.grid.photonEv - b.kineticEv() + offset;
                double area = amount * model.templates.area(emitter, b);
                if (Math.abs(at - test.energyEv()) < b.widthEv() && area > 0.3 * own) {
                    names.add(emitter.atom().symbol() + " " + b.name() + " under "
                            + test.line().line());
                }
            }
        }
        return names;
    }
}
