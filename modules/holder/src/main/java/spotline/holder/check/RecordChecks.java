package spotline.holder.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import spotline.core.Finding;
import spotline.holder.ElectricalState;
import spotline.holder.HolderPlan;
import spotline.holder.MountMethod;
import spotline.holder.Specimen;
import spotline.holder.Spot;
import spotline.holder.SpotPurpose;

/** Checks that need the record alone: what is missing, and what will be mistaken. */
final class RecordChecks {
    private RecordChecks() {}

    static List<Finding> findings(HolderPlan plan) {
        List<Finding> findings = new ArrayList<>();
        for (Spot spot : plan.spots()) {
            List<String> missing = new ArrayList<>();
            List<String> effects = new ArrayList<>();
            if (spot.sample().isEmpty() && spot.purpose() != SpotPurpose.BLANK) missing.add("sample");
            if (spot.position().isEmpty()) missing.add("position");
            if (spot.mount().method() == MountMethod.UNKNOWN) {
                missing.add("mount");
                effects.add("signals of the mount cannot be told from the sample's");
            }
            if (spot.mount().electricalState() == ElectricalState.UNKNOWN) {
                missing.add("electrical state");
                effects.add("the charge method cannot be defended");
            }
            if (missing.isEmpty()) continue;
            String effect = effects.isEmpty() ? "." : ": " + String.join(", and ", effects) + ".";
            findings.add(Named.finding(
                    spot,
                    PlanRule.SPOT_RECORD,
                    "Spot " + spot.id() + " has no declared " + Named.either(missing) + effect));
        }
        Map<String, String> spots = new HashMap<>();
        for (Spot spot : plan.spots()) alike(spots, "Spots", spot.id(), findings);
        Map<String, String> specimens = new HashMap<>();
        for (Specimen specimen : plan.specimens()) {
            if (specimen.ownSpot().isEmpty()) alike(specimens, "Specimens", specimen.id(), findings);
        }
        return findings;
    }

    private static void alike(Map<String, String> labels, String what, String label, List<Finding> findings) {
        String before = labels.putIfAbsent(plain(label), label);
        if (before == null || before.equals(label)) return;
        findings.add(PlanRule.LABELS_ALIKE.finding(
                what + " " + before + " and " + label + " have labels that are easily mistaken for each other."));
    }

    /** What is left of a label when it is read in a hurry: no capitals, no spaces, no leading zeros. */
    private static String plain(String label) {
        String lower = label.toLowerCase(Locale.ROOT);
        StringBuilder plain = new StringBuilder();
        for (int i = 0; i < lower.length(); i++) {
            char letter = lower.charAt(i);
            boolean startsNumber = i == 0 || !Character.isDigit(lower.charAt(i - 1));
            boolean goesOn = i + 1 < lower.length() && Character.isDigit(lower.charAt(i + 1));
            boolean leadingZero = letter == '0' && startsNumber && goesOn;
            if (!leadingZero && !Character.isWhitespace(letter)) plain.append(letter);
        }
        return plain.toString();
    }
}
