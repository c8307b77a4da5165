package spotline.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.TreeSet;
import spotline.analysis.quantify.Anisotropy;
import spotline.analysis.quantify.FactorKind;
import spotline.analysis.quantify.FactorSet;
import spotline.analysis.quantify.FactorSet.BackgroundFamily;
import spotline.core.Finding;
import spotline.core.Severity;

/**
 * Whether a set of sensitivity factors fits what it is used on.
 *
 * <p>Source: ISO 18118 (a set goes with its background, angle and excitation); the angles' limit of 5 degrees is common
 * practice, no source.
 */
final class FactorChecks {
    private static final double ANGLE_LIMIT_DEG = 5;
    private static final double MAGIC_DEG = 54.7;

    private FactorChecks() {}

    static List<Finding> of(
            FactorSet set, Treatment treatment, OptionalDouble gammaDeg, List<SpotComposition.Taken> quantified) {
        List<Finding> findings = new ArrayList<>();
        Severity mismatch = treatment.quantify().claimsConformity() ? Severity.STOP : Severity.CAUTION;
        TreeSet<String> foreign = new TreeSet<>();
        for (SpotComposition.Taken t : quantified) {
            BackgroundFamily family = family(t.intensity().background());
            if (!set.backgrounds().isEmpty() && !set.backgrounds().contains(family)) foreign.add(family.word());
        }
        if (!foreign.isEmpty()) {
            findings.add(Finding.of(
                    mismatch,
                    "factors-for-another-background",
                    "The factors \"" + set.name() + "\" are not for areas above " + String.join(" and ", foreign)
                            + " backgrounds."));
        }
        boolean fixedAngle = set.sourceAnalyserAngleDeg().isPresent() && gammaDeg.isPresent();
        if (fixedAngle
                && Math.abs(set.sourceAnalyserAngleDeg().getAsDouble() - gammaDeg.getAsDouble()) > ANGLE_LIMIT_DEG) {
            findings.add(Finding.of(
                    mismatch,
                    "factors-for-another-angle",
                    String.format(
                            Locale.ROOT,
                            "The factors \"%s\" are for an angle of %.1f degrees between source and analyser; here it is"
                                    + " %.1f (limit %.0f).",
                            set.name(),
                            set.sourceAnalyserAngleDeg().getAsDouble(),
                            gammaDeg.getAsDouble(),
                            ANGLE_LIMIT_DEG)));
        }
        double gamma = gammaDeg.orElse(treatment.factors().sourceAnalyserAngleDeg());
        boolean computed = set.kind() == FactorKind.THEORETICAL || set.kind() == FactorKind.AVERAGE_MATRIX;
        if (computed
                && treatment.factors().anisotropy().kind() == Anisotropy.Kind.NONE
                && Math.abs(gamma - MAGIC_DEG) > ANGLE_LIMIT_DEG) {
            findings.add(Finding.note(
                    "no-anisotropy-factor",
                    String.format(
                            Locale.ROOT,
                            "The angle between source and analyser is %.1f degrees and no anisotropy factor is applied: s"
                                    + " lines may read up to 50 %% wrong against lines without anisotropy, less in solids.",
                            gamma)));
        }
        return findings;
    }

    /** By the words that describe a background. */
    static BackgroundFamily family(String described) {
        String words = described.toLowerCase(Locale.ROOT);
        if (words.contains("tougaard")) return BackgroundFamily.TOUGAARD;
        return words.contains("shirley") ? BackgroundFamily.SHIRLEY : BackgroundFamily.STRAIGHT;
    }
}
