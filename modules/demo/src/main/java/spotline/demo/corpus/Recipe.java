package spotline.demo.corpus;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import spotline.reference.Element;
import spotline.reference.Elements;

/**
 * What a surface is made of: up to six elements in a medium, and in four cases of five a layer of oxidised hydrocarbon
 * on it.
 *
 * @param thickness of the layer in attenuation lengths of 1000 eV electrons
 * @param chargingEv surface charging
 * @param plasmons offset, share and width that every line of the medium brings
 */
record Recipe(List<Ingredient> ingredients, double thickness, double chargingEv, List<Ingredient.Feature> plasmons) {
    private static final List<String> COMMON = List.of(
            "C", "N", "O", "F", "Na", "Mg", "Al", "Si", "P", "S", "Cl", "K", "Ca", "Ti", "Cr", "Mn", "Fe", "Co", "Ni",
            "Cu", "Zn", "Mo", "Ag", "Sn", "Au");
    /** Hydrocarbon counts as 284.8 eV here; the table has carbon at 285.0 eV. */
    static final double HYDROCARBON = -0.2;

    private static final Set<String> NEVER =
            Set.of("H", "He", "Ne", "Kr", "Xe", "Tc", "Pm", "Po", "At", "Rn", "Fr", "Ra", "Ac", "Pa");
    private static final Set<String> STEADY =
            Set.of("Li", "F", "Na", "Cl", "Ar", "K", "Ca", "Br", "Rb", "Sr", "I", "Cs", "Ba", "O", "Mg");

    Recipe {
        ingredients = List.copyOf(ingredients);
        plasmons = List.copyOf(plasmons);
    }

    static Recipe draw(Draw draw) {
        return draw(draw, Map.of());
    }

    /** @param given amounts of the medium's elements; empty to draw them too */
    static Recipe draw(Draw draw, Map<String, Double> given) {
        Set<String> chosen = new TreeSet<>(given.keySet());
        int wanted = draw.whole(1, 6);
        List<String> all = Elements.all().stream()
                .filter(e -> e.z() >= 3 && e.z() <= 92)
                .map(Element::symbol)
                .filter(s -> !NEVER.contains(s))
                .toList();
        while (given.isEmpty() && chosen.size() < wanted)
            chosen.add(draw.chance(0.7) ? draw.one(COMMON) : draw.one(all));
        if (draw.chance(0.5) && given.isEmpty()) chosen.add("O");
        boolean metal = !chosen.contains("O") && draw.chance(0.7);
        List<Ingredient> ingredients = new ArrayList<>();
        for (String symbol : chosen) {
            double amount = draw.logBetween(0.003, 1);
            ingredients.add(ingredient(symbol, given.getOrDefault(symbol, amount), metal, draw));
        }
        double thickness = draw.chance(0.8) ? draw.between(0.05, 0.9) : 0;
        if (thickness > 0) ingredients.addAll(hydrocarbon(draw));
        double charging = draw.chance(0.6) ? draw.between(-10, 12) : draw.normal(0.1);
        List<Ingredient.Feature> plasmons = new ArrayList<>();
        if (draw.chance(metal ? 0.7 : 0.25)) {
            double energy = draw.between(8, 25);
            double share = draw.between(0.05, 0.2);
            double width = draw.between(2.5, 7);
            plasmons.add(new Ingredient.Feature(energy, share, width));
            plasmons.add(new Ingredient.Feature(2 * energy, 0.4 * share, 1.4 * width));
        }
        return new Recipe(ingredients, thickness, charging, plasmons);
    }

    private static Ingredient ingredient(String symbol, double amount, boolean metal, Draw draw) {
        List<Ingredient.State> states = new ArrayList<>();
        if (symbol.equals("C")) {
            states.addAll(sampleCarbon(draw));
        } else {
            double low = STEADY.contains(symbol) ? -1 : -0.6;
            double high = STEADY.contains(symbol) ? 1 : metal ? 0.5 : 4;
            int count = metal ? 1 : draw.whole(1, 2);
            double first = count == 1 ? 1 : draw.between(0.3, 0.9);
            states.add(new Ingredient.State(draw.between(low, high), first, draw.between(0.3, 1.4)));
            if (count > 1) {
                states.add(new Ingredient.State(draw.between(low, high), 1 - first, draw.between(0.5, 1.6)));
            }
        }
        int z = Elements.bySymbol(symbol).orElseThrow().z();
        List<Ingredient.Feature> shakes = new ArrayList<>();
        String levels = "";
        if (z >= 22 && z <= 29 && !metal && draw.chance(0.6)) {
            levels = "2p";
            shakes.add(new Ingredient.Feature(draw.between(4.5, 9), draw.between(0.08, 0.4), draw.between(2.5, 4)));
        } else if (z >= 57 && z <= 66) {
            levels = "3d";
            shakes.add(new Ingredient.Feature(draw.between(3, 9), draw.between(0.1, 0.5), draw.between(2.5, 4)));
        } else if (draw.chance(0.3)) {
            shakes.add(new Ingredient.Feature(draw.between(5, 12), draw.between(0.02, 0.07), draw.between(2.5, 4)));
        }
        return new Ingredient(symbol, amount, states, false, metal && z > 10, shakes, levels, draw.between(-1, 3));
    }

    /** Carbon of the sample itself: a polymer, graphite, a carbide or a carbonate. */
    private static List<Ingredient.State> sampleCarbon(Draw draw) {
        double kind = draw.between(0, 1);
        if (kind < 0.15) return List.of(new Ingredient.State(draw.between(-3, -2), 1, draw.between(0.5, 1)));
        if (kind < 0.3) return List.of(new Ingredient.State(draw.between(4.3, 5), 1, draw.between(0.9, 1.3)));
        if (kind < 0.4) return List.of(new Ingredient.State(draw.between(-0.6, -0.4), 1, draw.between(0.4, 0.8)));
        double second = draw.between(0, 0.35);
        return List.of(
                new Ingredient.State(HYDROCARBON + draw.normal(0.05), 1 - second, draw.between(0.9, 1.2)),
                new Ingredient.State(HYDROCARBON + draw.between(1.2, 4.2), second, draw.between(0.9, 1.4)));
    }

    /** Carbon with its usual oxygen; shares of the groups vary. */
    private static List<Ingredient> hydrocarbon(Draw draw) {
        double ether = draw.between(0.05, 0.22);
        double carbonyl = draw.between(0.01, 0.08);
        double ester = draw.between(0.01, 0.09);
        double plain = 1 - ether - carbonyl - ester;
        double width = draw.between(0.9, 1.2);
        double zero = HYDROCARBON + draw.normal(0.05);
        Ingredient carbon = new Ingredient(
                "C",
                1,
                List.of(
                        new Ingredient.State(zero, plain, width),
                        new Ingredient.State(zero + 1.5, ether, width),
                        new Ingredient.State(zero + 2.9, carbonyl, width),
                        new Ingredient.State(zero + 4.1, ester, width)),
                true,
                false,
                draw.chance(0.3) ? List.of(new Ingredient.Feature(6.6, 0.04, 3)) : List.of(),
                "",
                draw.between(-2, 3));
        Ingredient oxygen = new Ingredient(
                "O",
                ether + carbonyl + 2 * ester,
                List.of(new Ingredient.State(draw.between(-0.2, 1.2), 1, draw.between(1.2, 1.8))),
                true,
                false,
                List.of(),
                "",
                draw.between(0, 4));
        return List.of(carbon, oxygen);
    }
}
