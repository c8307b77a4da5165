package spotline.report.facts;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Stream;
import spotline.analysis.charge.ChargeReferencing;
import spotline.analysis.intensity.IntensityMeasurement;
import spotline.analysis.quantify.Basis;
import spotline.analysis.quantify.TheoreticalFactors;
import spotline.run.MeasuredIntensity;
import spotline.run.RunResult;

/** How the run was treated, gathered over its spots. Lists are sorted and hold each thing once. */
public final class MethodFacts {
    /** What the sensitivity factors are. */
    public static final String FACTORS = TheoreticalFactors.NAME;

    private MethodFacts() {}

    /** Steps with the version of each: those that left their name on a spectrum, and those every spot goes through. */
    public static List<String> steps(RunResult result) {
        Stream<String> readers = result.spots().stream()
                .flatMap(spot -> spot.spectra().stream())
                .map(spectrum -> spectrum.source().step());
        return distinct(Stream.concat(readers, Stream.of(IntensityMeasurement.STEP, ChargeReferencing.STEP)));
    }

    /** Backgrounds subtracted under lines of narrow scans, or of surveys. */
    public static List<String> backgrounds(RunResult result, boolean survey) {
        return intensities(
                result,
                m -> (m.basis() == Basis.NARROW) != survey ? m.intensity().background() : "");
    }

    /** Responses that intensities were divided by. */
    public static List<String> transmissions(RunResult result) {
        return intensities(result, MeasuredIntensity::transmissionApplied);
    }

    private static List<String> intensities(RunResult result, Function<MeasuredIntensity, String> what) {
        return distinct(result.spots().stream()
                .flatMap(spot -> spot.intensities().stream())
                .map(what));
    }

    private static List<String> distinct(Stream<String> words) {
        Set<String> sorted = new TreeSet<>();
        words.filter(word -> !word.isEmpty()).forEach(sorted::add);
        return List.copyOf(sorted);
    }
}
