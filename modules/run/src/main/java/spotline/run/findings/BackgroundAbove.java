package spotline.run.findings;

import java.util.ArrayList;
import java.util.List;
import spotline.analysis.background.Subtraction;
import spotline.analysis.intensity.Intensity;
import spotline.analysis.quantify.Basis;
import spotline.core.Finding;
import spotline.run.MeasuredIntensity;
import spotline.run.RunView;
import spotline.run.SpotView;

/**
 * Runs of channels over which the subtracted background lies clearly above the counts, and which hold enough negative area to
 * matter.
 */
final class BackgroundAbove {
    static final Limit SHARE = Limit.own("negativeAreaShare", 0.02, "of the line", Limit.PRACTICE);

    private static final int RUN = 3;
    private static final double SIGMAS = 3;

    private BackgroundAbove() {}

    static RuleState check(RunView run, SpotView spot, Limits limits) {
        List<Finding> findings = new ArrayList<>();
        boolean looked = false;
        for (MeasuredIntensity m : spot.result().intensities()) {
            Intensity i = m.intensity();
            if (m.basis() != Basis.NARROW || !i.detected()) continue;
            looked = true;
            double area = i.area().value();
            Run worst = worst(i.subtraction());
            if (worst.channels() <= RUN || worst.area() <= limits.of(SHARE) * area) continue;
            findings.add(Finding.stop(
                            "fit-background-above-data",
                            Rule.words(
                                    "The background of %s runs above the data over %d channels (limit %d) and %.0f %% of"
                                            + " the line's area (limit %.0f %%): areas there are negative.",
                                    i.line(), worst.channels(), RUN, 100 * worst.area() / area, 100 * limits.of(SHARE)))
                    .in(i.spectrum()));
        }
        return looked ? RuleState.of(findings) : RuleState.notChecked("no line of a narrow scan was measured");
    }

    /** @param area counts eV by which the background lies above */
    private record Run(int channels, double area) {}

    private static Run worst(Subtraction s) {
        Run worst = new Run(0, 0);
        Run run = worst;
        for (int k = s.from(); k < s.to(); k++) {
            boolean above = -s.net(k) > SIGMAS * Math.sqrt(Math.max(1, s.background(k)));
            run = above ? new Run(run.channels() + 1, run.area() - s.net(k) * s.widthEv(k)) : new Run(0, 0);
            if (run.area() > worst.area()) worst = run;
        }
        return worst;
    }
}
