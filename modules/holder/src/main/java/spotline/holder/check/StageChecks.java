package spotline.holder.check;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import spotline.core.Decimal;
import spotline.core.Finding;
import spotline.holder.HolderPlan;
import spotline.holder.HolderTemplate;
import spotline.holder.HolderTemplate.TemperatureRange;
import spotline.holder.Mount;
import spotline.holder.MountMethod;
import spotline.holder.Sample;
import spotline.holder.Specimen;
import spotline.holder.StabilityLimits;
import spotline.holder.StagePlan;

/** Set-points of the stage against what holder, samples and mounts stand, degrees Celsius. */
final class StageChecks {
    private static final Set<MountMethod> TAPES =
            EnumSet.of(MountMethod.CARBON_TAPE, MountMethod.ADHESIVE_TAPE, MountMethod.POWDER_ON_TAPE);

    /** So near to room temperature nobody heats or cools. */
    private static final double ROOM_SPREAD_C = 10;

    private final HolderPlan plan;
    private final Optional<HolderTemplate> holder;
    private final PlanCheckSettings.Handling settings;
    private final List<Finding> findings = new ArrayList<>();

    private StageChecks(HolderPlan plan, Optional<HolderTemplate> holder, PlanCheckSettings.Handling settings) {
        this.plan = plan;
        this.holder = holder;
        this.settings = settings;
    }

    static List<Finding> findings(HolderPlan plan, Optional<HolderTemplate> holder, PlanCheckSettings settings) {
        StageChecks checks = new StageChecks(plan, holder, settings.handling());
        StagePlan stage = plan.file().stage();
        if (!stage.setPoints().isEmpty()) {
            double hottest = Double.NEGATIVE_INFINITY;
            double coldest = Double.POSITIVE_INFINITY;
            for (StagePlan.SetPoint point : stage.setPoints()) {
                hottest = Math.max(hottest, point.temperatureC());
                coldest = Math.min(coldest, point.temperatureC());
            }
            checks.range(coldest, hottest);
            for (Specimen specimen : plan.specimens()) {
                checks.heat(specimen, hottest);
                checks.cold(specimen, coldest);
            }
        }
        checks.bias(stage.biasV());
        return checks.findings;
    }

    private void range(double coldest, double hottest) {
        if (holder.isEmpty()) return;
        Optional<TemperatureRange> range = holder.get().temperature();
        for (double planned : coldest == hottest ? new double[] {hottest} : new double[] {coldest, hottest}) {
            if (range.isPresent()) {
                double min = range.get().min();
                double max = range.get().max();
                if (planned >= min && planned <= max) continue;
                findings.add(PlanRule.STAGE_OUT_OF_RANGE.finding("Planned " + celsius(planned)
                        + "; the holder's record " + "allows " + celsius(min) + " to " + celsius(max) + "."));
            } else if (Math.abs(planned - settings.roomTemperatureC()) > ROOM_SPREAD_C) {
                findings.add(PlanRule.STAGE_OUT_OF_RANGE.finding(
                        "Planned " + celsius(planned) + "; no temperature range is on record for the holder."));
            }
        }
    }

    private void heat(Specimen specimen, double hottest) {
        if (hottest <= settings.roomTemperatureC()) return;
        OptionalDouble sample = stability(specimen).maxC();
        OptionalDouble mount = mountLimit(specimen.mount());
        if (sample.isEmpty() && hottest - settings.roomTemperatureC() > settings.temperatureMarginC()) {
            add(
                    specimen,
                    PlanRule.STAGE_LIMIT_UNKNOWN,
                    "Planned " + celsius(hottest) + ", but " + specimen.label()
                            + " declares no temperature up to which it is stable.");
        }
        told(specimen, hottest, sample, mount, "to", 1);
    }

    private void cold(Specimen specimen, double coldest) {
        if (coldest >= settings.roomTemperatureC()) return;
        told(specimen, coldest, stability(specimen).minC(), OptionalDouble.empty(), "down to", -1);
    }

    /** @param sign 1 for a limit above, -1 for one below */
    private void told(
            Specimen specimen, double planned, OptionalDouble sample, OptionalDouble mount, String to, int sign) {
        List<String> said = new ArrayList<>();
        double least = Double.POSITIVE_INFINITY;
        if (sample.isPresent()) {
            double margin = sign * (sample.getAsDouble() - planned);
            least = Math.min(least, margin);
            said.add("is declared stable " + to + " " + celsius(sample.getAsDouble()) + margin(margin));
        }
        if (mount.isPresent()) {
            double margin = sign * (mount.getAsDouble() - planned);
            least = Math.min(least, margin);
            String whose = said.isEmpty() ? "has a mount that stands " : "its mount stands ";
            said.add(whose + celsius(mount.getAsDouble()) + margin(margin));
        }
        if (least >= settings.temperatureMarginC()) return;
        boolean beyond = least < 0;
        String wanted = beyond ? "" : " " + celsius(settings.temperatureMarginC()) + " are asked for.";
        add(
                specimen,
                beyond ? PlanRule.STAGE_BEYOND_LIMIT : PlanRule.STAGE_MARGIN,
                "Planned " + celsius(planned) + "; " + specimen.label() + " " + String.join(", and ", said) + "."
                        + wanted);
    }

    private static String margin(double margin) {
        return margin < 0 ? " only" : " (margin " + celsius(margin) + ")";
    }

    private static StabilityLimits stability(Specimen specimen) {
        Optional<Sample> sample = specimen.sample();
        return sample.isPresent() ? sample.get().stability() : StabilityLimits.UNKNOWN;
    }

    private OptionalDouble mountLimit(Mount mount) {
        if (mount.maxTemperatureC().isPresent()) return mount.maxTemperatureC();
        return TAPES.contains(mount.method()) ? OptionalDouble.of(settings.tapeLimitC()) : OptionalDouble.empty();
    }

    private void bias(OptionalDouble bias) {
        if (bias.isEmpty() || bias.getAsDouble() == 0 || holder.isEmpty()) return;
        if (holder.get().biasPossible().orElse(true)) return;
        findings.add(PlanRule.STAGE_BIAS.finding("Planned bias " + Decimal.significant(bias.getAsDouble(), 3)
                + " V; the holder's record says that its samples cannot be biased."));
    }

    private void add(Specimen specimen, PlanRule rule, String message) {
        findings.add(Named.finding(plan, specimen, rule, message));
    }

    private static String celsius(double value) {
        return Decimal.significant(value, 4) + " C";
    }
}
