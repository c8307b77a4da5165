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

/** Runs of channels over which the subtracted background lies clearly above the counts. */
final class BackgroundAbove {
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
            Subtraction s = i.subtraction();
            int longest = 0;
            int length = 0;
            for (int k = s.from(); k < s.to(); k++) {
                double background = s.background(k);
                length = -s.net(k) > SIGMAS * Math.sqrt(Math.max(1, background)) ? length + 1 : 0;
                longest = Math.max(longest, length);
            }
            if (longest <= RUN) continue;
            findings.add(Finding.stop(
                            "fit-background-above-data",
                            Rule.words(
                                    "The background of %s runs above the data over %d channels (limit %d): areas there"
                                            + " are negative.",
                                    i.line(), longest, RUN))
                    .in(i.spectrum()));
        }
        return looked ? RuleState.of(findings) : RuleState.notChecked("no line of a narrow scan was measured");
    }
}
