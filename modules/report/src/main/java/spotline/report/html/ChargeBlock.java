package spotline.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.charge.ChargeReference;
import spotline.analysis.charge.ReferenceLineFit;
import spotline.core.Decimal;
import spotline.report.facts.Spectra;
import spotline.report.figure.Figure;
import spotline.report.figure.ReferenceFitFigure;
import spotline.report.text.DisplayNumber;
import spotline.report.text.Shown;
import spotline.run.LinkedSpectrum;
import spotline.run.SpotResult;

/** The energy reference of a spot: the decision, its numbers, the fit it rests on, and the evidence. */
final class ChargeBlock {
    private ChargeBlock() {}

    static void write(Markup page, SpotResult spot, String name, Form form) {
        ChargeReference charge = spot.charge();
        page.element("h4", "Energy reference");
        page.open("p", "class", "decision");
        page.element(
                "span",
                charge.verdict().word(),
                "class",
                "verdict " + charge.verdict().word());
        page.text(" " + Shown.prose(charge.sentence())).end();
        Tables.facts(page, facts(charge));
        Optional<ReferenceLineFit> fit = charge.fit();
        Optional<LinkedSpectrum> spectrum = fit.flatMap(f -> Spectra.find(spot, f.spectrum()));
        if (form == Form.FULL && fit.isPresent() && spectrum.isPresent())
            fit(page, fit.get(), spectrum.get(), charge, name);
        ChargeEvidenceBlock.write(page, charge, name + "e", form);
    }

    private static void fit(
            Markup page, ReferenceLineFit fit, LinkedSpectrum spectrum, ChargeReference charge, String name) {
        page.open("div", "class", "beside");
        Figure figure = ReferenceFitFigure.of(fit, spectrum.scan(), name);
        Figures.write(
                page,
                figure,
                fit.line() + ", " + fit.spectrum()
                        + ": fit that placed the reference; beneath, measured minus"
                        + " fitted sum in standard deviations of the counts");
        page.open("div");
        components(page, fit, charge);
        page.end();
        page.end();
    }

    private static List<Tables.Fact> facts(ChargeReference charge) {
        List<Tables.Fact> facts = new ArrayList<>();
        facts.add(new Tables.Fact("Method", charge.method().word()));
        if (charge.referenceEv().isPresent()) {
            facts.add(new Tables.Fact(
                    "Reference", charge.referenceLine() + " at " + energy(charge.referenceEv(), charge.referenceU())));
        }
        if (charge.measuredEv().isPresent()) {
            facts.add(new Tables.Fact("Measured at", energy(charge.measuredEv(), charge.measurementU())));
        }
        if (charge.shiftEv().isPresent()) {
            String u = charge.standardUncertainty().isPresent()
                    ? " \u00b1 " + Decimal.fixed(charge.standardUncertainty().getAsDouble(), 2)
                    : "";
            facts.add(new Tables.Fact(
                    "Added to measured energies",
                    DisplayNumber.signed(charge.shiftEv().getAsDouble(), 2) + u + " eV"));
        }
        return facts;
    }

    private static String energy(OptionalDouble value, OptionalDouble u) {
        return DisplayNumber.of(value.orElse(Double.NaN), u, 2).text() + " eV";
    }

    private static void components(Markup page, ReferenceLineFit fit, ChargeReference charge) {
        Tables.begin(page, "peaks", List.of("Component", "#position, eV", "#referenced, eV", "#FWHM, eV", "Shape"));
        for (ReferenceLineFit.Component component : fit.components()) {
            page.open("tr").element("th", component.name(), "scope", "row");
            double position = component.position().value();
            Tables.number(
                    page,
                    DisplayNumber.of(position, component.position().standardUncertainty(), 2)
                            .text());
            Tables.number(page, referenced(charge.referenced(position)));
            Tables.number(
                    page,
                    DisplayNumber.of(component.fwhm().value(), component.fwhm().standardUncertainty(), 2)
                            .text());
            Tables.cell(page, component.shape()).end();
        }
        Tables.end(page);
        page.element(
                "p",
                "Positions as measured; referenced ones (" + charge.scale() + ") to 0.1 eV. Reduced chi-square "
                        + Decimal.significant(fit.reducedChiSquare(), 3) + ".",
                "class",
                "note");
    }

    static String referenced(OptionalDouble energyEv) {
        return energyEv.isPresent() ? DisplayNumber.fixed(energyEv.getAsDouble(), 1) : "";
    }

    /** What turns a figure's measured axis into a referenced one. */
    static String axisNote(ChargeReference charge) {
        OptionalDouble shift = charge.shiftEv();
        if (shift.isEmpty()) return "There is no energy reference for this spot: energies are as measured only.";
        if (shift.getAsDouble() == 0) return "Measured energies are taken as they are: no shift is needed.";
        return "Referenced binding energy = measured " + (shift.getAsDouble() < 0 ? "\u2212 " : "+ ")
                + Decimal.fixed(Math.abs(shift.getAsDouble()), 2) + " eV.";
    }
}
