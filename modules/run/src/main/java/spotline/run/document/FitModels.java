package spotline.run.document;

import spotline.reference.Line;

/** Where a treatment keeps the fit models of lines. */
final class FitModels {
    private FitModels() {}

    static String pointer(Line line) {
        return "/peakFit/models/" + Places.segment(line.toString());
    }
}
