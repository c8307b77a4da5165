package spotline.analysis.background;

import java.util.ArrayList;
import java.util.List;
import spotline.core.Problem;

/** Checks and words that all backgrounds share. */
final class Endpoints {
    private Endpoints() {}

    static List<Problem> check(int endpointChannels) {
        List<Problem> problems = new ArrayList<>();
        if (endpointChannels < 1) {
            problems.add(new Problem("endpointChannels", endpointChannels + " channels", "1 channel or more"));
        }
        return problems;
    }

    static double mean(double[] values, int start, int channels) {
        double sum = 0;
        for (int i = start; i < start + channels; i++) sum += values[i];
        return sum / channels;
    }

    static String describe(String name, int endpointChannels, EndpointPlacement placement) {
        String channels = endpointChannels == 1 ? "1 endpoint channel" : endpointChannels + " endpoint channels";
        return name + ", " + channels + (placement == EndpointPlacement.INSIDE ? "" : " " + placement.words());
    }
}
