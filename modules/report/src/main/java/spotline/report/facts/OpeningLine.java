package spotline.report.facts;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import spotline.holder.OpeningSentence;
import spotline.holder.Sample;
import spotline.holder.Spot;
import spotline.reference.Elements;
import spotline.report.text.DisplayNumber;
import spotline.run.RunResult;
import spotline.run.SampleComposition;

/** The sentence an owner's page may begin with: what the surface is mostly made of, in plain words. */
public final class OpeningLine {
    /** Elements of less are the small part, at.%. */
    private static final double SMALL = 10;
    /** Elements of less are not worth a first sentence, at.%. */
    private static final double NOT_NAMED = 1;

    private record Part(String name, double percent, String shown) {}

    private OpeningLine() {}

    /** Empty where no element has a number. */
    public static Optional<String> of(RunResult result, SampleComposition sample) {
        List<Part> parts = new ArrayList<>();
        for (String element : ElementOrder.ofSamples(result)) {
            if (SampleValue.of(result, sample, element) instanceof SampleValue.Mean mean) {
                String shown = DisplayNumber.of(mean.atomicPercent(), mean.standardUncertainty(), 1)
                        .text();
                parts.add(new Part(name(element), mean.atomicPercent(), shown));
            }
        }
        parts.sort(Comparator.comparingDouble(Part::percent).reversed());
        List<String> large = parts.stream()
                .filter(p -> p.percent() >= SMALL)
                .map(p -> p.name() + " (" + p.shown() + ")")
                .toList();
        List<String> small = parts.stream()
                .filter(p -> p.percent() < SMALL && p.percent() >= NOT_NAMED)
                .map(Part::name)
                .toList();
        if (large.isEmpty()) return Optional.empty();
        String rest = small.isEmpty() ? "" : ", with less " + listed(small);
        return Optional.of(
                "Of a hundred atoms in the outermost few nanometres, most are " + listed(large) + rest + ".");
    }

    /** What the analyst said of it in the holder run. */
    public static Optional<OpeningSentence> judgement(RunResult result, SampleComposition sample) {
        return sample.spots().stream()
                .flatMap(id -> result.plan().spot(id).stream())
                .map(Spot::sample)
                .flatMap(Optional::stream)
                .map(Sample::openingSentence)
                .flatMap(Optional::stream)
                .findFirst();
    }

    /** "carbon"; the symbol of what is no element. */
    public static String name(String symbol) {
        return Elements.bySymbol(symbol)
                .map(e -> e.name().toLowerCase(Locale.ROOT))
                .orElse(symbol);
    }

    private static String listed(List<String> words) {
        if (words.size() < 2) return String.join("", words);
        return String.join(", ", words.subList(0, words.size() - 1)) + " and " + words.get(words.size() - 1);
    }
}
