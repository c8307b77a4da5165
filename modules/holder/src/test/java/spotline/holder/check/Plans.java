package spotline.holder.check;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.List;
import spotline.core.Finding;
import spotline.core.ReadException;
import spotline.holder.HolderPlan;
import spotline.holder.HolderRunReader;
import spotline.holder.HolderTemplate;
import spotline.holder.HolderTemplates;

/** Plans written as the files they come from. */
final class Plans {
    static final HolderTemplate BAR = HolderTemplates.shipped("flat-bar");

    private Plans() {}

    static HolderPlan plan(String body) {
        String text = "{ \"format\": \"spotline-holder-run/1\", \"holder\": { \"template\": \"flat-bar\" }, "
                + instrument(body) + body + " }";
        try {
            return HolderPlan.of(HolderRunReader.read("plan.json", text.getBytes(UTF_8)));
        } catch (ReadException e) {
            throw new AssertionError(e);
        }
    }

    /** A body that brings its own instrument keeps it. */
    private static String instrument(String body) {
        return body.contains("\"instrument\":")
                ? ""
                : "\"instrument\": { \"analysisAreaMm\": { \"x\": 0.7, \"y\": 0.3 }, \"positionUncertaintyMm\": 0.1 }, ";
    }

    static List<Finding> check(String body) {
        return PlanCheck.check(plan(body), BAR, PlanCheckSettings.DEFAULT);
    }

    /** A specimen B of 12 x 8 mm with one spot at its centre, everything declared. */
    static String rectangle(double x, double y, double rotationDeg) {
        return piece("B", x, y, rotationDeg, "\"width\": 12, \"height\": 8", "") + ", \"spots\": [ "
                + spot("1", "B", x, y, "") + " ]";
    }

    static String piece(String id, double x, double y, double rotationDeg, String outline, String more) {
        return "\"specimens\": [ " + specimen(id, x, y, rotationDeg, outline, more) + " ]";
    }

    static String specimen(String id, double x, double y, double rotationDeg, String outline, String more) {
        return """
                { "id": "%s", "centreMm": { "x": %s, "y": %s }, "outlineMm": { %s }, "rotationDeg": %s,
                  "sample": { "name": "sample %s", "conductivity": "conductor" },
                  "mount": { "method": "metal-clip", "electricalState": "grounded" }%s }""".formatted(id, x, y, outline, rotationDeg, id, more.isEmpty() ? "" : ", " + more);
    }

    static String spot(String id, String specimen, double x, double y, String more) {
        return "{ \"id\": \"%s\", \"specimen\": \"%s\", \"xMm\": %s, \"yMm\": %s%s }"
                .formatted(id, specimen, x, y, more.isEmpty() ? "" : ", " + more);
    }

    /** A shorthand spot in the middle of the bar with these fields of sample and mount. */
    static String shorthand(String sample, String mount, String more) {
        return """
                "spots": [ { "id": "7", "xMm": 50, "yMm": 10, "sample": { "name": "s"%s },
                  "mount": { "outlineMm": { "width": 6, "height": 5 }%s }%s } ]""".formatted(
                        sample.isEmpty() ? "" : ", " + sample,
                        mount.isEmpty() ? "" : ", " + mount,
                        more.isEmpty() ? "" : ", " + more);
    }
}
