package spotline.report.sheet;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.core.ReadException;
import spotline.holder.HolderPlan;
import spotline.holder.HolderRunReader;
import spotline.holder.HolderTemplate;
import spotline.holder.HolderTemplates;
import spotline.report.print.SheetPages;

/** Plans and sheets of them, written as the files they come from. */
final class Sheets {
    private Sheets() {}

    static HolderPlan plan(String body) {
        try {
            return HolderPlan.of(HolderRunReader.read(
                    "plan.json", ("{ \"format\": \"spotline-holder-run/1\", " + body + " }").getBytes(UTF_8)));
        } catch (ReadException e) {
            throw new AssertionError(e);
        }
    }

    static LoadingSheet sheet(String template, String body) {
        return LoadingSheet.of(plan(body), Optional.of(HolderTemplates.shipped(template)));
    }

    static SheetPages pages(HolderPlan plan, Optional<HolderTemplate> holder) {
        return new SheetWriter(plan, holder, spotline.holder.check.PlanCheck.check(plan, holder)).write();
    }

    /** Two specimens, one turned, one with a clip and tape, a blank, everything within 24 x 14 mm from 13, 9. */
    static String body(double x, double y) {
        return """
                "title": "Load 7, <b>&amp; α½", "date": "2026-05-12", "operator": "surface lab",
                "instrument": { "analysisAreaMm": { "x": 0.7, "y": 0.3 } },
                "specimens": [
                  { "id": "A", "centreMm": { "x": %1$s, "y": %2$s }, "outlineMm": { "width": 6, "height": 4 }, "rotationDeg": 20,
                    "sample": { "id": "L-113", "name": "liner chip", "owner": "bearing team", "hazards": "none" },
                    "mount": { "method": "metal-clip", "electricalState": "grounded",
                      "clips": [ { "material": "copper", "centreMm": { "x": %3$s, "y": %2$s }, "outlineMm": { "width": 1, "height": 3 } } ] } },
                  { "id": "B", "centreMm": { "x": %4$s, "y": %2$s }, "outlineMm": { "shape": "polygon",
                      "cornersMm": [ { "x": -2, "y": -2 }, { "x": 2, "y": -2 }, { "x": 0, "y": 3 } ] },
                    "sample": { "name": "flake", "hazards": "none" },
                    "mount": { "method": "carbon-tape", "electricalState": "grounded", "tapePatchMm": { "width": 5, "height": 6 } } } ],
                "spots": [ { "id": "1", "specimen": "A", "xMm": %1$s, "yMm": %2$s },
                           { "id": "2", "specimen": "B", "xMm": %4$s, "yMm": %2$s, "tiltDeg": 60 },
                           { "id": "blank", "xMm": %4$s, "yMm": %5$s, "purpose": "blank",
                             "mount": { "method": "carbon-tape", "electricalState": "grounded" } } ]
                """.formatted(x, y, x + 3, x + 9, y - 4);
    }

    /** Names for as many spots, each on a piece of its own. */
    static String spots(int count, double width, double height) {
        List<String> spots = new ArrayList<>();
        int across = Math.max(1, (int) Math.ceil(Math.sqrt(count * width / height)));
        int down = (count + across - 1) / across;
        for (int i = 0; i < count; i++) {
            double x = (i % across + 0.5) * width / across;
            double y = (i / across + 0.5) * height / down;
            spots.add("{ \"id\": \"spot " + i + "\", \"xMm\": " + x + ", \"yMm\": " + y + " }");
        }
        return "\"spots\": [" + String.join(",", spots) + "]";
    }
}
