package spotline.run.document;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import spotline.core.Decimal;
import spotline.holder.SpectrumEntry;
import spotline.holder.SpectrumRole;
import spotline.reference.Line;
import spotline.run.MergePatch;
import spotline.spectra.Window;

/**
 * Edits in the words of the trade. Each looks at a document and says what to change; nothing is changed until the edit is
 * applied, and only then is it checked.
 *
 * <p>Errors of all: {@link IllegalArgumentException} for a spot or a spectrum that the document does not have.
 */
public final class Edits {
    private Edits() {}

    /**
     * A setting of the treatment.
     *
     * @param setting JSON pointer inside a treatment: {@code "/narrow/minimumSignificance"}
     */
    public static Edit setting(RunDocument document, Scope scope, String setting, JsonNode value) {
        Change change = Places.set(document.shared(), scope.pointer(document) + setting, value);
        String title = words(setting) + " of " + scope.words() + ": " + shown(value);
        return Edit.of(title, List.of(change), scope instanceof Scope.Spot);
    }

    /** A treatment laid under the holder's own: what that says itself stays. */
    public static Edit treatmentUnder(RunDocument document, ObjectNode treatment) {
        ObjectNode under = treatment.deepCopy().without(List.of("format"));
        JsonNode own = document.at("/treatment").orElse(JsonNodeFactory.instance.objectNode());
        Change change = Places.set(document.shared(), "/treatment", MergePatch.over(under, own));
        return Edit.of("A treatment file laid under the holder's own settings", List.of(change), false);
    }

    /** A setting goes back to what the wider scopes say. */
    public static Edit withoutSetting(RunDocument document, Scope scope, String setting) {
        String patch = scope.pointer(document);
        Change change = Places.cleared(document.shared(), patch + setting, patch);
        String title = words(setting) + " of " + scope.words() + ": as everywhere else";
        return Edit.of(title, List.of(change), false);
    }

    /** All settings of a scope go back to what the wider scopes say. */
    public static Edit withoutSettings(RunDocument document, Scope scope) {
        String patch = scope.pointer(document);
        Change change = Places.cleared(document.shared(), patch, patch);
        return Edit.of("Settings of " + scope.words() + ": as everywhere else", List.of(change), false);
    }

    /** The energy interval that a line's intensity is taken from at a spot, measured binding energies in eV. */
    public static Edit window(RunDocument document, String spot, Line line, Window window) {
        ObjectNode value = JsonNodeFactory.instance.objectNode();
        value.put("lowEv", window.lowEv()).put("highEv", window.highEv());
        String title = line + " window of spot " + spot + ": " + Decimal.significant(window.lowEv(), 6) + " to "
                + Decimal.significant(window.highEv(), 6) + " eV";
        return ofLine(document, Scope.spot(spot), line, "window", value, title);
    }

    /** @param background as a treatment writes it: {@code {"kind": "linear", "endpointChannels": 5}} */
    public static Edit background(RunDocument document, Scope scope, Line line, ObjectNode background) {
        String title = line + " background of " + scope.words() + ": "
                + background.path("kind").asText();
        return ofLine(document, scope, line, "background", background, title);
    }

    /** @param model as a fit-model file writes it */
    public static Edit fitModel(RunDocument document, String spot, Line line, ObjectNode model) {
        Change change =
                Places.set(document.shared(), Scope.spot(spot).pointer(document) + FitModels.pointer(line), model);
        return Edit.of("Fit model of " + line + " of spot " + spot, List.of(change), true);
    }

    /**
     * How the energy reference is found; it stands for the scope's whole charge setting.
     *
     * @param charge as a treatment writes it: {@code {"method": "fixed", "shiftEv": -1.2, "reason": "..."}}
     */
    public static Edit charge(RunDocument document, Scope scope, ObjectNode charge) {
        Change change = Places.set(document.shared(), scope.pointer(document) + "/charge", charge);
        String method = charge.path("method").asText("as before");
        boolean byHand = scope instanceof Scope.Spot || method.equals("fixed");
        return Edit.of("Energy reference of " + scope.words() + ": " + method, List.of(change), byHand);
    }

    /** Findings of a rule are no longer shown as more than a note. @param spot the one spot; all when empty */
    public static Edit silence(RunDocument document, String rule, Optional<String> spot, String reason) {
        ObjectNode silence = JsonNodeFactory.instance.objectNode().put("rule", rule);
        spot.ifPresent(s -> silence.put("spot", s));
        silence.put("reason", reason);
        ArrayNode all = JsonNodeFactory.instance.arrayNode();
        document.shared().path("silence").forEach(all::add);
        all.add(silence);
        Change change = Places.set(document.shared(), "/silence", all);
        String where = spot.map(s -> " of spot " + s).orElse("");
        return Edit.of("Silence " + rule + where, List.of(change), true).signed("", reason);
    }

    /**
     * The silences of a rule are taken away.
     *
     * <p>Errors: {@link IllegalArgumentException} when there is none.
     */
    public static Edit withoutSilence(RunDocument document, String rule, Optional<String> spot) {
        ArrayNode kept = JsonNodeFactory.instance.arrayNode();
        for (JsonNode silence : document.shared().path("silence")) {
            boolean meant = silence.path("rule").asText().equals(rule)
                    && silence.path("spot").asText("").equals(spot.orElse(""));
            if (!meant) kept.add(silence);
        }
        if (kept.size() == document.shared().path("silence").size()) {
            throw new IllegalArgumentException("no silence of " + rule + " is there to take away");
        }
        Change change = kept.isEmpty()
                ? Places.cleared(document.shared(), "/silence", "/silence")
                : Places.set(document.shared(), "/silence", kept);
        return Edit.of("Show " + rule + " again", List.of(change), false);
    }

    /**
     * A photon energy, eV, that overrules a file's header.
     *
     * @param spectrum which of the spot's spectra, from 0 in the order of the holder run
     */
    public static Edit photonEnergy(
            RunDocument document, String spot, int spectrum, double photonEnergyEv, String reason) {
        SpectrumEntry entry = entry(document, spot, spectrum);
        ObjectNode value = JsonNodeFactory.instance.objectNode();
        value.put("photonEnergyEv", photonEnergyEv).put("reason", reason);
        Change change = Places.set(document.shared(), pointer(document, spot, spectrum) + "/override", value);
        String title = "Photon energy of " + entry.file() + " at spot " + spot + ": "
                + Decimal.significant(photonEnergyEv, 6) + " eV";
        return Edit.of(title, List.of(change), true).signed("", reason);
    }

    /** A file's header is believed again. @param spectrum from 0 in the order of the holder run */
    public static Edit withoutPhotonEnergy(RunDocument document, String spot, int spectrum) {
        SpectrumEntry entry = entry(document, spot, spectrum);
        String place = pointer(document, spot, spectrum) + "/override";
        Change change = Places.cleared(document.shared(), place, place);
        return Edit.of(
                "Photon energy of " + entry.file() + " at spot " + spot + ": as recorded", List.of(change), false);
    }

    /** What a spectrum is for. @param spectrum from 0 in the order of the holder run */
    public static Edit role(RunDocument document, String spot, int spectrum, SpectrumRole role) {
        SpectrumEntry entry = entry(document, spot, spectrum);
        String place = pointer(document, spot, spectrum) + "/role";
        Change change = role == SpectrumRole.UNKNOWN
                ? Places.cleared(document.shared(), place, place)
                : Places.set(document.shared(), place, JsonNodeFactory.instance.textNode(role.word()));
        String word = role == SpectrumRole.UNKNOWN ? "not stated" : role.word();
        return Edit.of("Role of " + entry.file() + " at spot " + spot + ": " + word, List.of(change), true);
    }

    /**
     * Any other fact of the holder run.
     *
     * @param pointer JSON pointer into the holder-run file
     * @param value empty to take it away
     */
    public static Edit fact(RunDocument document, String title, String pointer, Optional<JsonNode> value) {
        Change change = value.isPresent()
                ? Places.set(document.shared(), pointer, value.get())
                : Places.cleared(document.shared(), pointer, pointer);
        return Edit.of(title, List.of(change), false);
    }

    /**
     * The settings of one spot for others too, in place of theirs. Starts of fit models are estimated anew on each spot,
     * their locks are kept; windows and models are moved by how much higher the spot's energies are measured.
     *
     * @param movedEv by spot: its measured binding energies less those of {@code from}, eV; every spot to change is in it
     */
    public static Edit copied(RunDocument document, String from, SortedMap<String, Double> movedEv) {
        JsonNode patch = document.shared().at(Scope.spot(from).pointer(document));
        if (!(patch instanceof ObjectNode settings)) {
            throw new IllegalArgumentException("spot " + from + " has no settings of its own to apply to others");
        }
        List<Change> changes = new ArrayList<>();
        movedEv.forEach((spot, moved) -> changes.add(
                Places.set(document.shared(), Scope.spot(spot).pointer(document), CopiedSettings.of(settings, moved))));
        String title = "Settings of spot " + from + " for " + (movedEv.size() == 1 ? "spot " : "spots ")
                + String.join(", ", movedEv.keySet());
        return Edit.of(title, changes, true);
    }

    private static Edit ofLine(
            RunDocument document, Scope scope, Line line, String setting, JsonNode value, String title) {
        String pointer = scope.pointer(document) + "/lines/" + Places.segment(line.toString()) + "/" + setting;
        return Edit.of(title, List.of(Places.set(document.shared(), pointer, value)), scope instanceof Scope.Spot);
    }

    private static SpectrumEntry entry(RunDocument document, String spot, int spectrum) {
        List<SpectrumEntry> spectra =
                document.file().spots().get(document.indexOf(spot)).spectra();
        if (spectrum < 0 || spectrum >= spectra.size()) {
            throw new IllegalArgumentException("spot " + spot + " has no spectrum " + spectrum);
        }
        return spectra.get(spectrum);
    }

    private static String pointer(RunDocument document, String spot, int spectrum) {
        return "/spots/" + document.indexOf(spot) + "/spectra/" + spectrum;
    }

    private static String words(String setting) {
        String text =
                setting.replace("/", " ").replace("~1", "/").replace("~0", "~").strip();
        return text.isEmpty() ? "Settings" : Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    private static String shown(JsonNode value) {
        if (value.isNumber()) return Decimal.text(value.doubleValue());
        String text = value.isTextual() ? value.textValue() : value.toString();
        return text.length() <= 60 ? text : text.substring(0, 57) + "...";
    }
}
