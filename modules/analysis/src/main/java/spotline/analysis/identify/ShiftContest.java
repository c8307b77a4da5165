package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.core.Work;
import spotline.reference.EnergyRange;

/**
 * Settles the shift of a survey: the best proposals of {@link ShiftSearch}, and those that would put a line where
 * hydrocarbon belongs, are each fitted as a whole; the misfit decides, with what is usual of hydrocarbon; its envelope
 * then places the scale.
 */
final class ShiftContest {
    private static final int MOST_BY_SCORE = 3;
    private static final int MOST_BY_CARBON = 3;
    /** Proposals that explain much less than the best are not fitted. */
    private static final double WORTH_FITTING = 0.72;

    private static final double ELEMENT_COST = 25;
    private static final double NO_CARBON_COST = 60;
    private static final double CARBON_COST_PER_EV = 60;
    private static final double LARGEST_CARBON_COST = 200;
    private static final double CARBON_SLACK = 0.5;
    private static final double LEAST_CARBON = 4;

    /** An element seen as clearly as this says where the scale may lie. */
    private static final double PLACING_EVIDENCE = 100;

    private static final double NARROWER = 0.84;
    private static final int MOST_NARROWINGS = 3;
    private static final double WORTH_NARROWING = 0.97;
    private static final double UNKNOWN_RANGE = 5;

    private ShiftContest() {}

    /**
     * @param model fitted at the shift
     * @param carbon how hydrocarbon placed it; empty where it did not
     */
    record Settled(SurveyModelFit model, Optional<CarbonShift.Placed> carbon) {}

    static Settled settle(
            ShiftSearch search,
            FilteredSurvey filtered,
            Templates templates,
            double low,
            double high,
            Atom carbon,
            Work work) {
        List<ShiftSearch.Found> proposals = new ArrayList<>(search.best(low, high, MOST_BY_SCORE));
        double top = proposals.isEmpty() ? 0 : proposals.get(0).score();
        int added = 0;
        for (ShiftSearch.Found found : carbonProposals(search, filtered, low, high)) {
            if (added == MOST_BY_CARBON) break;
            if (proposals.stream().anyMatch(p -> Math.abs(p.shiftEv() - found.shiftEv()) < 0.4)) continue;
            proposals.add(found);
            added++;
        }
        SurveyModelFit best = null;
        double least = Double.POSITIVE_INFINITY;
        for (ShiftSearch.Found found : proposals) {
            if (found.score() < WORTH_FITTING * top) continue;
            work.check();
            SurveyModelFit model = SurveyModelFit.first(templates, found.members(), found.shiftEv());
            double scale = Math.max(1, model.fit().misfit / templates.grid.channels);
            double cost = model.fit().misfit
                    + scale * (ELEMENT_COST * found.members().size() + carbonCost(model, found.shiftEv()));
            if (cost < least) {
                least = cost;
                best = model;
            }
        }
        if (best == null) best = SurveyModelFit.first(templates, List.of(), 0);
        return place(narrower(best).reweighted(), carbon, low, high);
    }

    /** The same with narrower lines as long as they fit better: neighbouring lines had seemed one. */
    private static SurveyModelFit narrower(SurveyModelFit start) {
        SurveyModelFit best = start;
        for (int k = 0; k < MOST_NARROWINGS; k++) {
            Templates templates = best.templates.withWidth(best.templates.gaussianEv * NARROWER);
            SurveyModelFit other = SurveyModelFit.first(templates, best.members, best.shiftEv());
            if (other.fit().misfit > WORTH_NARROWING * best.fit().misfit) break;
            best = other;
        }
        return best;
    }

    /** At a shift that is given. */
    static Settled known(ShiftSearch search, Templates templates, double shift) {
        ShiftSearch.Found found = search.at(shift);
        return new Settled(
                SurveyModelFit.first(templates, found.members(), shift).reweighted(), Optional.empty());
    }

    private static double carbonCost(SurveyModelFit model, double shift) {
        int carbon = model.owner("C");
        double place = carbon < 0 ? Double.NaN : model.quantileOffset(carbon, 0.3) + shift;
        if (Double.isNaN(place)) return NO_CARBON_COST;
        double off = Math.abs(place - TABULATED_CARBON) - CARBON_SLACK;
        return Math.max(0, Math.min(LARGEST_CARBON_COST, CARBON_COST_PER_EV * off));
    }

    /** Hydrocarbon against the tabulated energy of C 1s, 285.0 eV. */
    private static final double TABULATED_CARBON = -0.2;

    private static List<ShiftSearch.Found> carbonProposals(
            ShiftSearch search, FilteredSurvey filtered, double low, double high) {
        SurveyGrid grid = filtered.grid;
        List<ShiftSearch.Found> found = new ArrayList<>();
        double[] r = filtered.response;
        for (int i = 1; i + 1 < grid.channels; i++) {
            double shift = CarbonShift.HYDROCARBON_EV - grid.energy[i];
            if (shift < low || shift > high) continue;
            if (r[i] < LEAST_CARBON * filtered.deviation[i] || r[i] < r[i - 1] || r[i] <= r[i + 1]) continue;
            found.add(search.at(shift));
        }
        found.sort((a, b) -> Double.compare(b.score(), a.score()));
        return found;
    }

    /** The shift by hydrocarbon, where it stands out within what the other elements allow. */
    static Settled place(SurveyModelFit start, Atom carbonAtom, double low, double high) {
        SurveyModelFit model = start;
        Optional<CarbonShift.Placed> placed = Optional.empty();
        for (int round = 0; round < 2; round++) {
            EnergyRange allowed = allowed(model, carbonAtom);
            Optional<CarbonShift.Placed> now = CarbonShift.of(
                    model,
                    carbonAtom,
                    Math.max(low, Math.min(high, allowed.lowEv() - 0.5)),
                    Math.max(low, Math.min(high, allowed.highEv() + 0.5)));
            if (now.isEmpty()) break;
            placed = now;
            if (Math.abs(now.get().shiftEv() - model.shiftEv()) < 0.02) break;
            model = model.at(now.get().shiftEv());
        }
        return new Settled(model, placed);
    }

    /** Shifts at which every element but carbon lies within its states; about the present one where none does. */
    static EnergyRange allowed(SurveyModelFit model, Atom carbonAtom) {
        double low = Double.NEGATIVE_INFINITY;
        double high = Double.POSITIVE_INFINITY;
        for (int e = 0; e < model.members.size(); e++) {
            Atom atom = model.members.get(e).atom();
            if (!model.active(e) || atom == carbonAtom || !(model.amount(e) > 0)) continue;
            if (model.evidence(e) < PLACING_EVIDENCE) continue;
            double offset = model.meanOffset(e);
            low = Math.max(low, atom.lowestEv() - offset);
            high = Math.min(high, atom.highestEv() - offset);
        }
        double shift = model.shiftEv();
        if (!(low < high)) return new EnergyRange(shift - UNKNOWN_RANGE / 2, shift + UNKNOWN_RANGE / 2);
        return new EnergyRange(Math.max(low, shift - UNKNOWN_RANGE), Math.min(high, shift + UNKNOWN_RANGE));
    }
}
