package spotline.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.charge.ChargeEvidence;
import spotline.analysis.charge.ChargeEvidence.AugerParameterSeen;
import spotline.analysis.charge.ChargeEvidence.Candidate;
import spotline.analysis.charge.ChargeEvidence.Position;
import spotline.analysis.charge.ChargeMethod;
import spotline.analysis.charge.ChargeReference;
import spotline.core.Estimate;
import spotline.reference.AugerParameter;
import spotline.report.facts.ChargeStatements;
import spotline.report.figure.ChemicalStateFigure;
import spotline.report.text.DisplayNumber;

/** What an energy reference is held against: energies of the lines, plain statements, other references, Auger parameters. */
final class ChargeEvidenceBlock {
    private ChargeEvidenceBlock() {}

    /** @param name begins every identifier in the figures */
    static void write(Markup page, ChargeReference charge, String name, Form form) {
        if (form == Form.SHORT) {
            statements(page, charge);
            return;
        }
        ChargeEvidence evidence = charge.evidence();
        if (!evidence.positions().isEmpty()) energies(page, charge);
        statements(page, charge);
        if (!evidence.candidates().isEmpty()) candidates(page, charge);
        for (int i = 0; i < evidence.augerParameters().size(); i++) {
            auger(page, evidence.augerParameters().get(i), charge, name + i + "-");
        }
    }

    private static void energies(Markup page, ChargeReference charge) {
        page.element("h5", "Energies of the lines");
        boolean referenced = charge.shiftEv().isPresent() && charge.method() != ChargeMethod.NONE;
        boolean differences = charge.evidence().positions().stream()
                .anyMatch(p -> p.fromReferenceLine().isPresent());
        List<String> headings = new ArrayList<>(List.of("Line", "#as measured, eV"));
        if (referenced) headings.add("#referenced, eV (" + charge.scale() + ")");
        if (differences) headings.add("#from " + charge.referenceLine() + ", eV");
        headings.add("Spectrum");
        Tables.begin(page, "peaks", headings);
        for (Position position : charge.evidence().positions()) {
            page.open("tr").element("th", position.line(), "scope", "row");
            Tables.number(page, text(position.measured()));
            if (referenced)
                Tables.number(
                        page,
                        position.referenced().map(ChargeEvidenceBlock::tenth).orElse(""));
            if (differences) Tables.number(page, difference(position));
            Tables.cell(page, position.spectrum()).end();
        }
        Tables.end(page);
        if (charge.method() == ChargeMethod.NONE) {
            page.element("p", "Energies are " + charge.scale() + ": no shift is applied.", "class", "note")
                    .raw("\n");
        }
        if (!differences) return;
        page.element(
                        "p",
                        "A difference between lines of one spot does not depend on the reference and does not carry its"
                                + " uncertainty: compare chemical states by it.",
                        "class",
                        "note")
                .raw("\n");
    }

    /** A referenced energy means nothing beyond a tenth of an electronvolt. */
    private static String tenth(Estimate referenced) {
        String value = DisplayNumber.fixed(referenced.value(), 1);
        return referenced.standardUncertainty().isPresent()
                ? value + " \u00b1 "
                        + DisplayNumber.fixed(
                                Math.max(0.1, referenced.standardUncertainty().getAsDouble()), 1)
                : value;
    }

    private static void statements(Markup page, ChargeReference charge) {
        List<ChargeStatements.Statement> statements = ChargeStatements.of(charge);
        if (statements.isEmpty()) return;
        page.element("h5", "What speaks for and against it");
        page.open("table", "class", "evidence").open("tbody").raw("\n");
        for (ChargeStatements.Statement statement : statements) {
            page.open("tr").element("th", statement.about(), "scope", "row");
            Tables.cell(page, statement.found()).end();
        }
        Tables.end(page);
    }

    private static void candidates(Markup page, ChargeReference charge) {
        page.element("h5", "Other references this spot could have");
        Tables.begin(
                page,
                "peaks",
                List.of(
                        "Line",
                        "#measured at, eV",
                        "#would be set to, eV",
                        "#shift, eV",
                        "#from the one in use, eV",
                        "Condition"));
        for (Candidate candidate : charge.evidence().candidates()) {
            page.open("tr").element("th", ChargeStatements.name(candidate), "scope", "row");
            Tables.number(page, text(candidate.measured()));
            Tables.number(
                    page,
                    DisplayNumber.of(candidate.referenceEv(), OptionalDouble.of(candidate.referenceU()), 1)
                            .text());
            Tables.number(
                    page,
                    DisplayNumber.of(candidate.shiftEv(), candidate.standardUncertainty(), 1)
                            .text());
            Tables.number(
                    page,
                    charge.shiftEv().isPresent()
                            ? DisplayNumber.signed(
                                    candidate.shiftEv() - charge.shiftEv().getAsDouble(), 1)
                            : "");
            Tables.cell(page, candidate.alone() ? "no other listed state is near" : "if it is that state")
                    .end();
        }
        Tables.end(page);
        page.element(
                        "p",
                        "Listed energies go with hydrocarbon at 285.0 \u00b1 0.2 eV; none of these is applied unless the"
                                + " treatment says so.",
                        "class",
                        "note")
                .raw("\n");
    }

    private static void auger(Markup page, AugerParameterSeen seen, ChargeReference charge, String name) {
        String auger = seen.line().element() + " " + seen.transition();
        page.element("h5", "Auger parameter of " + seen.line() + " and " + auger);
        page.open("p").text("Binding plus kinetic energy: " + text(seen.parameter()) + " eV, the same under any shift");
        seen.nearest()
                .ifPresent(n -> page.text("; listed nearest: " + n.state() + ", "
                        + DisplayNumber.fixed(n.modifiedAugerParameterEv(), 1) + " eV"));
        page.text(".").end();
        page.open("div", "class", "beside");
        Figures.write(
                page,
                ChemicalStateFigure.of(seen, charge.scale(), name),
                "Chemical-state plot: numbered circles are listed states, the filled one is this spot. Another energy"
                        + " reference moves it along its line, never off it.");
        page.open("div");
        Tables.begin(
                page, "peaks", List.of("#No.", "State", "#binding, eV", "#kinetic, eV", "#sum, eV", "#differs by, eV"));
        for (int i = 0; i < seen.listed().size(); i++) {
            AugerParameter listed = seen.listed().get(i);
            page.open("tr");
            Tables.number(page, String.valueOf(i + 1));
            page.element("th", listed.state(), "scope", "row");
            Tables.number(page, DisplayNumber.fixed(listed.bindingEv(), 1));
            Tables.number(page, DisplayNumber.fixed(listed.augerKineticEv(), 1));
            Tables.number(page, DisplayNumber.fixed(listed.modifiedAugerParameterEv(), 1));
            Tables.number(
                            page,
                            DisplayNumber.signed(
                                    listed.modifiedAugerParameterEv()
                                            - seen.parameter().value(),
                                    1))
                    .end();
        }
        Tables.end(page);
        page.end();
        page.end();
    }

    private static String difference(Position position) {
        boolean itself =
                position.fromReferenceLine().filter(e -> e.value() == 0).isPresent();
        return itself ? "0" : optional(position.fromReferenceLine());
    }

    private static String optional(Optional<Estimate> estimate) {
        return estimate.map(ChargeEvidenceBlock::text).orElse("");
    }

    private static String text(Estimate estimate) {
        return DisplayNumber.of(estimate.value(), estimate.standardUncertainty(), 2)
                .text();
    }
}
