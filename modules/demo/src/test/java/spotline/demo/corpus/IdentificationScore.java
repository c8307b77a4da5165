package spotline.demo.corpus;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.Identification;
import spotline.analysis.identify.IdentifySettings;
import spotline.analysis.identify.QuickShare;
import spotline.analysis.identify.SurveyIdentification;
import spotline.analysis.identify.Verdict;
import spotline.core.Work;
import spotline.reference.ReferenceData;

/** How an identification does on cases of the corpus. Counts only; says nothing of single cases. */
final class IdentificationScore {
    private static final SurveyIdentification IDENTIFICATION =
            new SurveyIdentification(ReferenceData.shipped(), new IdentifySettings(2.4, 5, -12, 10, 1));
    private static final double ABOVE = 1.5;
    private static final double HYDROCARBON_PERCENT = 5;
    private static final double SHIFT_WITHIN_EV = 0.3;

    private int surveys;
    private int above;
    private int abovePresent;
    private int aboveFound;
    private int between;
    private int betweenFound;
    private double betweenPredicted;
    private int falseSurveys;
    private int falsePossible;
    private int hydrocarbon;
    private int hydrocarbonClose;
    private int hydrocarbonInside;
    private int otherShift;
    private int otherInside;
    private int shares;
    private int sharesRight;

    static Identification identify(SurveyCase survey) {
        return IDENTIFICATION.identify(
                survey.scan(),
                survey.transmission(),
                Set.of(),
                OptionalDouble.empty(),
                survey.monochromated(),
                Work.UNWATCHED);
    }

    void add(SurveyCase survey) {
        add(survey, identify(survey));
    }

    void add(SurveyCase survey, Identification found) {
        Identification.Detail detail = found.detail().orElseThrow();
        surveys++;
        shift(survey, found, detail);
        for (SurveyCase.ElementTruth truth : survey.elements()) element(truth, found);
        boolean wrong = false;
        for (ElementSeen e : found.elements()) {
            if (survey.element(e.element()).isPresent()) continue;
            if (e.verdict() == Verdict.PRESENT) wrong = true;
            else falsePossible++;
        }
        if (wrong) falseSurveys++;
        composition(survey, detail.composition());
    }

    private void element(SurveyCase.ElementTruth truth, Identification found) {
        Optional<ElementSeen> seen = found.element(truth.symbol());
        if (truth.counts() > ABOVE * truth.detectionLimit()) {
            above++;
            if (seen.isPresent()) aboveFound++;
            if (seen.filter(e -> e.verdict() == Verdict.PRESENT).isPresent()) abovePresent++;
        } else if (truth.counts() > truth.criticalLevel() && truth.counts() < truth.detectionLimit()) {
            between++;
            if (seen.isPresent()) betweenFound++;
            // An analyst who calls a line at its detection limit sees one of this size so often.
            double deviation = truth.criticalLevel() / 1.645;
            betweenPredicted += normal((truth.counts() - truth.detectionLimit()) / deviation);
        }
    }

    /** Normal distribution function, good to 1e-7. Source: Abramowitz, Stegun 26.2.17, from memory. */
    private static double normal(double z) {
        double t = 1 / (1 + 0.2316419 * Math.abs(z));
        double tail = Math.exp(-0.5 * z * z)
                / Math.sqrt(2 * Math.PI)
                * t
                * (0.319381530 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
        return z > 0 ? 1 - tail : tail;
    }

    private void shift(SurveyCase survey, Identification found, Identification.Detail detail) {
        double truth = -survey.chargingEv();
        boolean inside = truth >= detail.shiftLowEv() && truth <= detail.shiftHighEv();
        if (survey.hydrocarbonPercent() >= HYDROCARBON_PERCENT) {
            hydrocarbon++;
            if (Math.abs(found.shiftEv() - truth) <= SHIFT_WITHIN_EV) hydrocarbonClose++;
            if (inside) hydrocarbonInside++;
        } else {
            otherShift++;
            if (inside) otherInside++;
        }
    }

    /** Truth of the elements listed: what is not seen cannot be in the sum. */
    private void composition(SurveyCase survey, List<QuickShare> composition) {
        double listed = 0;
        for (QuickShare share : composition) {
            listed += survey.element(share.element())
                    .map(SurveyCase.ElementTruth::apparentPercent)
                    .orElse(0.0);
        }
        for (SurveyCase.ElementTruth truth : survey.elements()) {
            if (truth.counts() <= truth.detectionLimit()) continue;
            double expected = listed > 0 ? 100 * truth.apparentPercent() / listed : truth.apparentPercent();
            double told = composition.stream()
                    .filter(s -> s.element().equals(truth.symbol()))
                    .mapToDouble(s -> s.atomicPercent().value())
                    .findFirst()
                    .orElse(0);
            shares++;
            if (Math.abs(told - expected) <= Math.max(1.5, 0.15 * expected)) sharesRight++;
        }
    }

    int aboveCases() {
        return above;
    }

    int hydrocarbonCases() {
        return hydrocarbon;
    }

    int shareCases() {
        return shares;
    }

    double presentShare() {
        return share(abovePresent, above);
    }

    double foundShare() {
        return share(aboveFound, above);
    }

    double falseSurveyShare() {
        return share(falseSurveys, surveys);
    }

    double hydrocarbonCloseShare() {
        return share(hydrocarbonClose, hydrocarbon);
    }

    double insideShare() {
        return share(hydrocarbonInside + otherInside, hydrocarbon + otherShift);
    }

    double compositionShare() {
        return share(sharesRight, shares);
    }

    private static double share(int part, int all) {
        return all == 0 ? 1 : (double) part / all;
    }

    /** The table of the README. */
    List<String> table() {
        List<String> rows = new ArrayList<>();
        rows.add("| what | cases | share |");
        rows.add("| --- | --- | --- |");
        rows.add(row("elements above 1.5 detection limits: present", above, abovePresent));
        rows.add(row("elements above 1.5 detection limits: present or possible", above, aboveFound));
        rows.add(
                row("elements between critical level and detection limit: present or possible", between, betweenFound));
        rows.add(String.format(
                Locale.ROOT,
                "| the same as counting alone predicts at a threshold of one detection limit | %d | %.1f %% |",
                between,
                between == 0 ? 0 : 100 * betweenPredicted / between));
        rows.add(row("surveys with a false `present`", surveys, falseSurveys));
        rows.add(String.format(
                Locale.ROOT,
                "| false `possible` a survey | %d | %.2f |",
                surveys,
                (double) falsePossible / Math.max(1, surveys)));
        rows.add(row("charging within 0.3 eV, hydrocarbon 5 at.% or more", hydrocarbon, hydrocarbonClose));
        rows.add(
                row("charging inside the stated interval, hydrocarbon 5 at.% or more", hydrocarbon, hydrocarbonInside));
        rows.add(row("charging inside the stated interval, elsewhere", otherShift, otherInside));
        rows.add(row("quick composition within 15 % or 1.5 at.%, elements above their limit", shares, sharesRight));
        return rows;
    }

    private static String row(String what, int all, int part) {
        return String.format(Locale.ROOT, "| %s | %d | %.1f %% |", what, all, 100 * share(part, all));
    }
}
