package spotline.analysis.peakfit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spotline.analysis.peakfit.ParameterRule.EqualTo;
import spotline.analysis.peakfit.ParameterRule.Fixed;
import spotline.analysis.peakfit.ParameterRule.Free;
import spotline.analysis.peakfit.ParameterRule.OffsetFrom;
import spotline.analysis.peakfit.ParameterRule.Own;
import spotline.analysis.peakfit.ParameterRule.RatioTo;
import spotline.numerics.shape.LineShape;
import spotline.numerics.shape.ShapeParameter;
import spotline.reference.Doublet;
import spotline.reference.ReferenceData;
import spotline.spectra.Window;

/**
 * A peak of the fit: a component, or the partner it brings; every parameter of its shape has a rule.
 *
 * @param partnerOf the component that brought it
 */
record Member(String name, LineShape shape, Map<String, ParameterRule> rules, Optional<String> partnerOf) {
    /** A narrower Gaussian is below the width of any spectrometer's channel, eV. */
    private static final double NARROWEST = 0.05;

    /** Components in their order, each followed by its partner. The model has passed its checks. */
    static List<Member> of(FitModel model, ReferenceData reference, double photonEnergyEv) {
        List<Member> members = new ArrayList<>();
        for (ComponentModel component : model.components()) {
            Map<String, ParameterRule> rules = new LinkedHashMap<>();
            for (ShapeParameter p : component.shape().parameters()) {
                ParameterRule given = component.parameters().getOrDefault(p.name(), Free.UNBOUNDED);
                rules.put(p.name(), given instanceof Own own ? bounded(p, own, model.window()) : given);
            }
            members.add(new Member(component.name(), component.shape(), rules, Optional.empty()));
            component.doublet().ifPresent(doublet -> {
                Optional<Doublet> tabulated = reference.doublet(doublet.line(), photonEnergyEv);
                members.add(partner(component, doublet, tabulated, model.window()));
            });
        }
        return List.copyOf(members);
    }

    /** Bounds that the model leaves open are the shape's and the window's; an area is not below 0 unless the model says so. */
    private static Own bounded(ShapeParameter p, Own own, Window window) {
        if (!(own instanceof Free free)) return own;
        double low = p.lowest();
        double high = p.highest();
        if (p.name().equals("position")) {
            low = Math.min(window.lowEv(), free.start().orElse(window.lowEv()));
            high = Math.max(window.highEv(), free.start().orElse(window.highEv()));
        } else if (p.name().equals("area")) {
            low = 0;
        } else if (p.unit().equals("eV")) {
            low = isMainWidth(p.name()) ? NARROWEST : 0;
            high = window.widthEv();
        }
        double min =
                free.min() == Double.NEGATIVE_INFINITY ? Math.min(low, free.max()) : Math.max(p.lowest(), free.min());
        double max =
                free.max() == Double.POSITIVE_INFINITY ? Math.max(high, free.min()) : Math.min(p.highest(), free.max());
        if (free.start().isPresent()) {
            min = Math.min(min, free.start().getAsDouble());
            max = Math.max(max, free.start().getAsDouble());
        }
        return new Free(free.start(), min, max);
    }

    /** A width that the whole peak cannot do without. */
    static boolean isMainWidth(String parameter) {
        return parameter.equals("gaussianFwhm") || parameter.equals("fwhm") || parameter.equals("width");
    }

    private static Member partner(
            ComponentModel component, DoubletRule doublet, Optional<Doublet> tabulated, Window window) {
        Own splitting = doublet.splittingEv()
                .orElseGet(() -> new Fixed(tabulated.orElseThrow().splittingEv()));
        Own ratio = doublet.areaRatio()
                .orElseGet(() -> new Fixed(tabulated.orElseThrow().areaRatioLowToHigh()));
        String leader = component.name();
        Map<String, ParameterRule> rules = new LinkedHashMap<>();
        for (ShapeParameter p : component.shape().parameters()) {
            ParameterRule rule;
            if (p.name().equals("position")) rule = new OffsetFrom(leader, splitting);
            else if (p.name().equals("area")) rule = new RatioTo(leader, ratio);
            else if (p.name().equals(DoubletRule.LORENTZIAN)
                    && doublet.lorentzianFwhm().isPresent()) {
                rule = bounded(p, doublet.lorentzianFwhm().get(), window);
            } else if (p.unit().equals("eV")) rule = new RatioTo(leader, doublet.widthRatio());
            else rule = new EqualTo(leader);
            rules.put(p.name(), rule);
        }
        return new Member(doublet.partnerName(leader), component.shape(), rules, Optional.of(leader));
    }
}
