package spotline.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.analysis.peakfit.ComponentModel;
import spotline.analysis.peakfit.FittedComponent;
import spotline.analysis.peakfit.FittedParameter;
import spotline.analysis.peakfit.ParameterRule;
import spotline.analysis.peakfit.PeakFitResult;
import spotline.core.Decimal;
import spotline.report.text.DisplayNumber;

/** What a fit made of each parameter and what held it, as the model says. */
final class ModelWords {
    private ModelWords() {}

    static List<String> of(PeakFitResult result, FittedComponent component) {
        Optional<ComponentModel> model = result.model().components().stream()
                .filter(c -> c.name().equals(component.name()))
                .findFirst();
        List<String> words = new ArrayList<>();
        component.parameters().forEach((name, parameter) -> {
            Optional<ParameterRule> rule =
                    model.flatMap(m -> Optional.ofNullable(m.parameters().get(name)));
            words.add(words(name) + " " + value(parameter) + held(parameter, rule, component));
        });
        return words;
    }

    private static String value(FittedParameter parameter) {
        double value = parameter.value().value();
        if (parameter.hold() == FittedParameter.Hold.FIXED) return Decimal.significant(value, 4);
        return DisplayNumber.of(value, parameter.value().standardUncertainty(), 2)
                .text();
    }

    private static String held(FittedParameter parameter, Optional<ParameterRule> rule, FittedComponent component) {
        String reached = switch (parameter.hold()) {
            case AT_LOWER_BOUND -> "at lower bound";
            case AT_UPPER_BOUND -> "at upper bound";
            case FIXED -> "fixed";
            case FREE -> "";
            case TIED -> component.partnerOf().isPresent() ? "tied" : "";
        };
        String ruled = rule.map(ModelWords::rule).orElse("");
        if (parameter.hold() == FittedParameter.Hold.FIXED) ruled = "";
        String both = reached.isEmpty() || ruled.isEmpty() ? reached + ruled : reached + ": " + ruled;
        return both.isEmpty() ? "" : " (" + both + ")";
    }

    private static String rule(ParameterRule rule) {
        if (rule instanceof ParameterRule.EqualTo equal) return "as " + equal.component();
        if (rule instanceof ParameterRule.RatioTo ratio) {
            return own(ratio.ratio(), "\u00d7 ") + " that of " + ratio.component();
        }
        if (rule instanceof ParameterRule.OffsetFrom offset) {
            return own(offset.offset(), "") + " from " + offset.component();
        }
        return rule instanceof ParameterRule.Own own ? own(own, "") : "";
    }

    private static String own(ParameterRule.Own own, String sign) {
        if (own instanceof ParameterRule.Fixed fixed) return sign + number(fixed.value());
        if (!(own instanceof ParameterRule.Free free)) return "";
        boolean low = Double.isFinite(free.min());
        boolean high = Double.isFinite(free.max());
        if (low && high) return sign + number(free.min()) + " to " + number(free.max());
        if (low) return sign + number(free.min()) + " or more";
        return high ? sign + number(free.max()) + " or less" : "";
    }

    private static String number(double value) {
        String text = Decimal.significant(value, 6);
        return text.startsWith("-") ? "\u2212" + text.substring(1) : text;
    }

    /** {@code gaussianFwhm} as "gaussian fwhm". */
    private static String words(String name) {
        return name.replaceAll("([A-Z])", " $1").toLowerCase(java.util.Locale.ROOT);
    }
}
