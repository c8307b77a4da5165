package spotline.run;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import spotline.analysis.intensity.IntensitySettings;
import spotline.analysis.quantify.Basis;
import spotline.core.Finding;
import spotline.holder.Sample;
import spotline.reference.Line;

/**
 * Replicate spots of one sample have the same background under the same line.
 *
 * <p>Whether the chosen background serves is decided on each spectrum, and near the limit noise decides. Where spots of one
 * sample that are treated alike came to different backgrounds, the fallback goes to all of them: it is the one that exists
 * at each. A scatter between places is then none of the treatment.
 *
 * <p>Faint lines in their own window, lines fitted together with others, and those whose background is stated by hand stay
 * as they are. Errors: none.
 * Source: common practice, no source.
 */
final class ReplicateBackgrounds {
    /** A line by the kind of spectrum it was measured in. */
    record LineOn(Basis basis, Line line) {}

    private ReplicateBackgrounds() {}

    /** The inputs, those that are to be treated again with more lines in {@link SpotInput#fallbackLines}. */
    static List<SpotInput> alike(List<SpotInput> inputs, List<SpotResult> results) {
        List<SpotInput> changed = new ArrayList<>(inputs);
        split(inputs, results).forEach((line, spots) -> {
            for (int i : spots) changed.set(i, changed.get(i).withFallback(line));
        });
        return changed;
    }

    /** What stays different because neither background serves everywhere. */
    static List<Finding> different(List<SpotInput> inputs, List<SpotResult> results) {
        List<Finding> findings = new ArrayList<>();
        split(inputs, results).forEach((line, spots) -> {
            if (line.basis() != Basis.NARROW) return;
            TreeSet<String> ids = new TreeSet<>();
            spots.forEach(i -> ids.add(results.get(i).spot()));
            findings.add(Finding.caution(
                            "backgrounds-differ",
                            line.line() + " has different backgrounds at spots " + String.join(", ", ids)
                                    + " of one sample, because neither serves at all of them: part of the scatter between"
                                    + " places is the treatment's.")
                    .at("", results.get(spots.iterator().next()).sample()));
        });
        return findings;
    }

    /** What spots must have in common to be held against each other. */
    private record Group(String sample, IntensitySettings narrow, IntensitySettings survey) {
        static Group of(SpotInput input) {
            return new Group(
                    input.spot()
                            .sample()
                            .map(Sample::key)
                            .orElse("spot " + input.spot().id()),
                    input.treatment().narrow(),
                    input.treatment().survey());
        }

        IntensitySettings settings(Basis basis) {
            return basis == Basis.NARROW ? narrow : survey;
        }
    }

    /** Lines of which spots of a group have both backgrounds, with the indices of those spots. */
    private static Map<LineOn, Set<Integer>> split(List<SpotInput> inputs, List<SpotResult> results) {
        Map<Group, List<Integer>> groups = new LinkedHashMap<>();
        for (int i = 0; i < inputs.size(); i++) {
            groups.computeIfAbsent(Group.of(inputs.get(i)), g -> new ArrayList<>())
                    .add(i);
        }
        Map<LineOn, Set<Integer>> split = new LinkedHashMap<>();
        groups.forEach((group, spots) -> {
            Map<LineOn, Set<Integer>> chosen = new LinkedHashMap<>();
            Map<LineOn, Set<Integer>> fallen = new LinkedHashMap<>();
            for (int i : spots) {
                for (MeasuredIntensity m : results.get(i).intensities()) {
                    boolean stated = inputs.get(i)
                            .treatment()
                            .line(m.intensity().line())
                            .background()
                            .isPresent();
                    if (stated || !m.intensity().separatedFrom().isEmpty()) continue;
                    IntensitySettings settings = group.settings(m.basis());
                    LineOn line = new LineOn(m.basis(), m.intensity().line().whole());
                    String background = m.intensity().background();
                    if (background.equals(settings.background().describe())) add(chosen, line, i);
                    else if (background.equals(settings.fallback().describe())) add(fallen, line, i);
                }
            }
            chosen.forEach((line, there) -> {
                Set<Integer> others = fallen.getOrDefault(line, Set.of());
                if (others.isEmpty()) return;
                Set<Integer> all = new TreeSet<>(there);
                all.addAll(others);
                split.merge(line, all, (a, b) -> {
                    Set<Integer> both = new LinkedHashSet<>(a);
                    both.addAll(b);
                    return both;
                });
            });
        });
        return split;
    }

    private static void add(Map<LineOn, Set<Integer>> to, LineOn line, int spot) {
        to.computeIfAbsent(line, l -> new TreeSet<>()).add(spot);
    }
}
