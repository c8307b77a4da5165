package spotline.report.table;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spotline.analysis.charge.ChargeEvidence;
import spotline.analysis.charge.ChargeReference;
import spotline.analysis.charge.Drift;
import spotline.core.Decimal;
import spotline.core.Estimate;
import spotline.report.facts.ChargeStatements;
import spotline.run.RunResult;
import spotline.run.SpotResult;

/** A row a spot: the energy reference, what it is worth, and what speaks for and against it. */
public final class ChargeCsv {
    public static final String FILE = "charge.csv";

    private static final List<String> COLUMNS = List.of(
            "spot",
            "sample",
            "electrical_state",
            "method",
            "reference_line",
            "reference_energy_ev",
            "measured_energy_ev",
            "shift_ev",
            "measurement_u_ev",
            "reference_u_ev",
            "standard_uncertainty_ev",
            "verdict",
            "fwhm_ev",
            "fwhm_u_ev",
            "narrowest_fwhm_ev",
            "narrowest_fwhm_spot",
            "last_less_first_ev",
            "last_less_first_u_ev",
            "drift_ev_per_hour",
            "drift_u_ev_per_hour",
            "other_reference",
            "other_reference_energy_ev",
            "other_reference_shift_ev",
            "other_reference_u_ev",
            "sibling_line",
            "sibling_spot",
            "sibling_difference_ev",
            "sibling_difference_u_ev",
            "auger_parameters",
            "unmoved_metal_lines",
            "declared",
            "statement");

    private ChargeCsv() {}

    public static byte[] of(RunResult result) {
        return table(result).bytes();
    }

    public static CsvTable table(RunResult result) {
        CsvTable table = new CsvTable(COLUMNS);
        for (SpotResult spot : result.spots()) {
            ChargeReference charge = spot.charge();
            CsvTable.Row row = new CsvTable.Row();
            decision(row, spot, charge);
            evidence(row, charge);
            table.add(row);
        }
        return table;
    }

    private static void decision(CsvTable.Row row, SpotResult spot, ChargeReference charge) {
        row.text(spot.spot())
                .text(spot.sample())
                .text(spot.electricalState())
                .text(charge.method().word())
                .text(charge.referenceLine())
                .number(charge.referenceEv())
                .number(charge.measuredEv())
                .number(charge.shiftEv())
                .number(charge.measurementU())
                .number(charge.referenceU())
                .number(charge.standardUncertainty())
                .text(charge.verdict().word());
    }

    private static void evidence(CsvTable.Row row, ChargeReference charge) {
        ChargeEvidence evidence = charge.evidence();
        Optional<ChargeEvidence.Width> width = ChargeStatements.width(charge);
        estimate(row, width.map(ChargeEvidence.Width::fwhm));
        Optional<Estimate> narrowest = width.flatMap(ChargeEvidence.Width::narrowest);
        row.number(narrowest.map(Estimate::value).orElse(Double.NaN))
                .text(width.map(ChargeEvidence.Width::narrowestSpot).orElse(""));
        estimate(row, evidence.drift().map(Drift::changeEv));
        estimate(row, evidence.drift().flatMap(Drift::slopeEvPerHour));
        Optional<ChargeEvidence.Candidate> other =
                evidence.check().or(() -> evidence.candidates().stream().findFirst());
        row.text(other.map(ChargeStatements::name).orElse(""))
                .number(other.map(ChargeEvidence.Candidate::referenceEv).orElse(Double.NaN))
                .number(other.map(ChargeEvidence.Candidate::shiftEv).orElse(Double.NaN))
                .number(other.map(ChargeEvidence.Candidate::standardUncertainty).orElse(OptionalDouble.empty()));
        Optional<ChargeEvidence.SiblingLine> sibling = ChargeStatements.furthestSibling(evidence);
        row.text(sibling.map(ChargeEvidence.SiblingLine::line).orElse(""))
                .text(sibling.map(ChargeEvidence.SiblingLine::otherSpot).orElse(""));
        estimate(row, sibling.map(ChargeEvidence.SiblingLine::differenceEv));
        row.text(joined(evidence.augerParameters().stream()
                        .map(a -> a.line() + " + "
                                + a.line().element() + " " + a.transition() + " "
                                + Decimal.text(a.parameter().value()))))
                .text(joined(evidence.unmoved().stream().map(u -> u.line() + " " + Decimal.text(u.measuredEv()))))
                .text(joined(evidence.declared().stream()))
                .text(charge.sentence());
    }

    private static void estimate(CsvTable.Row row, Optional<Estimate> estimate) {
        row.number(estimate.map(Estimate::value).orElse(Double.NaN))
                .number(estimate.map(Estimate::standardUncertainty).orElse(OptionalDouble.empty()));
    }

    private static String joined(Stream<String> texts) {
        return texts.collect(Collectors.joining("; "));
    }
}
