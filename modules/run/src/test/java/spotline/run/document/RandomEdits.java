package spotline.run.document;

import com.fasterxml.jackson.databind.node.BooleanNode;
import com.fasterxml.jackson.databind.node.DoubleNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import spotline.holder.SpectrumRole;
import spotline.reference.Line;
import spotline.spectra.Window;

/** Edits of every kind, drawn at random for whatever document comes. */
final class RandomEdits {
    private static final List<String> NUMBERS = List.of(
            "/identify/toleranceEv", "/narrow/minimumSignificance", "/survey/searchFwhmEv", "/survey/smallestMarginEv");
    private static final List<String> KINDS = List.of("shirley", "linear", "constant");
    private static final List<String> LINES = List.of("C 1s", "O 1s", "Ti 2p", "Ag 3d");

    private RandomEdits() {}

    static Edit next(RunDocument document, Random random) {
        List<String> spots = document.file().spots().stream().map(s -> s.id()).toList();
        String spot = spots.get(random.nextInt(spots.size()));
        Scope scope = switch (random.nextInt(3)) {
            case 0 -> Scope.holder();
            case 1 -> Scope.family(List.of("oxide", "paint/wet", "metal~1").get(random.nextInt(3)));
            default -> Scope.spot(spot);
        };
        Line line = Line.parse(LINES.get(random.nextInt(LINES.size())));
        switch (random.nextInt(11)) {
            case 0:
                double low = 100 + random.nextInt(500) + 0.1 * random.nextInt(10);
                return Edits.window(document, spot, line, new Window(low, low + 1 + random.nextInt(20)));
            case 1:
                String kind = KINDS.get(random.nextInt(KINDS.size()));
                return Edits.background(
                        document,
                        scope,
                        line,
                        JsonNodeFactory.instance.objectNode().put("kind", kind));
            case 2:
                return Edits.charge(
                        document,
                        scope,
                        JsonNodeFactory.instance
                                .objectNode()
                                .put("method", "fixed")
                                .put("shiftEv", random.nextInt(100) / 16.0)
                                .put("reason", "invented"));
            case 3:
                if (document.file().silence().size() > 5) {
                    return Edits.fact(document, "Show everything again", "/silence", Optional.empty());
                }
                return Edits.silence(
                        document, "one-spot-only", Optional.of(spot).filter(s -> random.nextBoolean()), "invented");
            case 4:
                return Edits.photonEnergy(document, spot, 0, 1200 + random.nextInt(300), "invented");
            case 5:
                SpectrumRole[] roles = {SpectrumRole.MAIN, SpectrumRole.REPEAT, SpectrumRole.LAST};
                return Edits.role(document, spot, 0, roles[random.nextInt(roles.length)]);
            case 6:
                return Edits.setting(
                        document, scope, "/prepare/removeSpikes", BooleanNode.valueOf(random.nextBoolean()));
            case 7:
                return removal(document, scope).orElseGet(() -> number(document, scope, random));
            case 8:
                return Edits.fact(
                        document,
                        "Title",
                        "/title",
                        Optional.of(JsonNodeFactory.instance.textNode("title " + random.nextInt(50))));
            default:
                return number(document, scope, random);
        }
    }

    private static Edit number(RunDocument document, Scope scope, Random random) {
        String setting = NUMBERS.get(random.nextInt(NUMBERS.size()));
        return Edits.setting(document, scope, setting, DoubleNode.valueOf(4 + random.nextInt(64) / 64.0));
    }

    private static Optional<Edit> removal(RunDocument document, Scope scope) {
        return document.at(scope.pointer(document)).isPresent()
                ? Optional.of(Edits.withoutSettings(document, scope))
                : Optional.empty();
    }
}
