package spotline.demo.corpus;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.reference.Element;
import spotline.reference.Elements;
import spotline.reference.Line;
import spotline.reference.LineData;
import spotline.reference.ReferenceData;

/** Zero-loss peaks of one ingredient of a surface. */
final class Emission {
    private static final double SLOWEST_EV = 60;
    private static final double SHALLOWEST_EV = 3;
    private static final double UNLISTED_WIDTH_EV = 0.8;
    /** Lifetimes in solids against the tables: narrow levels come out wider, wide ones narrower. */
    private static final double WIDTH_POWER = 0.85;

    private static final double OVERLAYER_EXPONENT = 0.84;

    private final ReferenceData data;
    private final Setup setup;
    private final Recipe recipe;
    private final double mediumExponent;
    private final Draw draw;
    private final double widthFactor;

    Emission(ReferenceData data, Setup setup, Recipe recipe, double mediumExponent, Draw draw) {
        this.data = data;
        this.setup = setup;
        this.recipe = recipe;
        this.mediumExponent = mediumExponent;
        this.draw = draw;
        this.widthFactor = draw.between(0.8, 1.25);
    }

    /** Share of the electrons of an energy that come out: mean free path and overlayer. */
    private double escape(Ingredient of, double kinetic) {
        double energy = kinetic / 1000;
        double a = recipe.thickness() * Math.pow(energy, -OVERLAYER_EXPONENT);
        return of.overlayer()
                ? Math.pow(energy, OVERLAYER_EXPONENT) * -Math.expm1(-a)
                : Math.pow(energy, mediumExponent) * Math.exp(-a);
    }

    List<Emitted> of(Ingredient ingredient, double atoms) {
        Element element = Elements.bySymbol(ingredient.symbol()).orElseThrow();
        Optional<Line> main = data.mainLine(element, setup.photonEv());
        List<Emitted> all = new ArrayList<>();
        for (LineData shell : data.lines(element, setup.photonEv())) {
            boolean isMain = main.isPresent() && main.get().equals(shell.line());
            double strength = isMain ? 1 : draw.factor(odd(shell) ? 0.4 : 0.08);
            boolean first = true;
            for (Line member : shell.members()) {
                member(ingredient, atoms, shell, member, first, strength, all);
                first = false;
            }
        }
        augers(ingredient, atoms, element, all);
        return all;
    }

    /** Shells that many-electron effects break up. */
    private static boolean odd(LineData shell) {
        return shell.naturalWidthEv().orElse(0) > 3.5 || shell.energy().valueEv() < 25;
    }

    private void member(
            Ingredient of,
            double atoms,
            LineData shell,
            Line member,
            boolean first,
            double strength,
            List<Emitted> to) {
        double binding = data.bindingEnergy(member).map(e -> e.valueEv()).orElse(-1.0);
        double sigma = data.crossSection(member, setup.photonEv()).orElse(0);
        double kinetic = setup.photonEv() - binding;
        if (binding < SHALLOWEST_EV || kinetic < SLOWEST_EV || sigma <= 0) return;
        double listed = shell.naturalWidthEv().orElse(UNLISTED_WIDTH_EV);
        double lorentz = widthFactor * Math.pow(listed, WIDTH_POWER) * draw.factor(0.2);
        double valence = binding < 27 && member.orbital().l() < 2 ? draw.between(2, 4) : 0;
        double area = atoms * sigma * strength * escape(of, kinetic);
        String name = shell.line().orbital().toString();
        for (Ingredient.State state : of.states()) {
            double at = binding + state.shiftEv() + recipe.chargingEv() + draw.normal(0.08);
            double gauss = Math.hypot(state.broadeningEv(), valence);
            double lean = of.metallic() ? 0.12 : 0;
            to.add(new Emitted(name, first, at, area * state.share(), gauss, lorentz, lean));
        }
        double at = binding + of.meanShift() + recipe.chargingEv();
        for (Ingredient.Feature shake : of.shakeUp()) {
            if (!name.startsWith(of.shakenLevels())) continue;
            to.add(new Emitted("", first, at + shake.offsetEv(), area * shake.share(), shake.widthEv(), lorentz, 0));
        }
        if (of.overlayer()) return;
        for (Ingredient.Feature plasmon : recipe.plasmons()) {
            to.add(new Emitted(
                    "", first, at + plasmon.offsetEv(), area * plasmon.share(), plasmon.widthEv(), lorentz, 0));
        }
    }

    private void augers(Ingredient of, double atoms, Element element, List<Emitted> to) {
        for (AugerEmission.Part part : new AugerEmission(data, setup.photonEv(), draw).of(element)) {
            if (part.kineticEv() < SLOWEST_EV) continue;
            double at = setup.photonEv() - part.kineticEv() + recipe.chargingEv() + of.meanShift() + of.augerMove();
            to.add(new Emitted(
                    "auger", true, at, atoms * part.holes() * escape(of, part.kineticEv()), part.widthEv(), 0, 0));
        }
    }
}
