package spotline.demo;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import spotline.core.Decimal;

/** What a perfect analysis would find, as the {@code spotline-demo-truth/1} file. */
final class Truth {
    private static final String NOTE =
            "Invented. atomic_percent is the apparent composition: noiseless zero-loss areas of the lines named, whole"
                    + " doublets, divided by (relative cross section x KE^0.75 x transmission) and normalised to 100 %;"
                    + " the electrons themselves were attenuated by TPP-2M mean free paths and an organic overlayer, which"
                    + " this division does not undo. shift_ev is to be added to measured binding energies: minus the"
                    + " surface potential at the start of the spot; shift_drift_ev is its change until the end."
                    + " fraction_of_element is apparent likewise.";

    private Truth() {}

    static ObjectNode json(DemoModel model, List<SpotPlan> spots) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("format", "spotline-demo-truth/1");
        root.put("invented", true);
        root.put("note", NOTE);
        ArrayNode list = root.putArray("spots");
        for (SpotPlan plan : spots) {
            Surface surface = plan.surface();
            ObjectNode spot = list.addObject();
            spot.put("spot", plan.id());
            spot.put("sample", plan.sampleName());
            spot.put("shift_ev", decimal(-surface.potentialEv(), 2));
            spot.put("shift_drift_ev", decimal(-surface.driftEv(), 2));
            spot.put("overlayer_nm", decimal(surface.overlayer().thicknessNm(), 2));
            ObjectNode lines = spot.putObject("lines");
            plan.quantified().forEach((element, shell) -> lines.put(element, element + " " + shell));
            ObjectNode percent = spot.putObject("atomic_percent");
            model.apparentPercent(surface, plan.quantified())
                    .forEach((element, value) -> percent.put(element, decimal(value, 4)));
            ArrayNode states = spot.putArray("states");
            plan.quantified().forEach((element, shell) -> states(model, surface, element, shell, states));
        }
        return root;
    }

    private static void states(DemoModel model, Surface surface, String element, String shell, ArrayNode to) {
        Map<String, Double> amounts = model.apparentStates(surface, element, shell);
        double sum = amounts.values().stream().mapToDouble(Double::doubleValue).sum();
        Map<String, ElementState> known = new LinkedHashMap<>();
        for (ElementState state : surface.states()) known.putIfAbsent(state.element() + state.state(), state);
        for (ElementState state : surface.overlayer().states()) {
            known.putIfAbsent(state.element() + state.state(), state);
        }
        amounts.forEach((name, amount) -> {
            ElementState state = known.get(element + name);
            if (state == null) return;
            ObjectNode entry = to.addObject();
            entry.put("element", element);
            entry.put("state", name);
            entry.put("level", state.level());
            entry.put("binding_energy_ev", decimal(state.bindingEv(), 2));
            entry.put("fraction_of_element", decimal(amount / sum, 5));
        });
    }

    private static BigDecimal decimal(double value, int decimals) {
        return new BigDecimal(Decimal.fixed(value, decimals));
    }
}
