package spotline.viewer.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.charge.ChargeReference;
import spotline.analysis.charge.ChargeVerdict;
import spotline.analysis.charge.Drift;
import spotline.report.text.DisplayNumber;
import spotline.report.text.Shown;
import spotline.run.LinkedSpectrum;
import spotline.run.RunResult;
import spotline.run.SpotResult;

/** Every charge decision of the holder in one list, with the reference line of each spot before and after. */
public record ChargeOverview(List<Row> rows) {
    /**
     * @param line used as reference; empty when none was
     * @param shift "−2.55 ± 0.03 eV", or why there is none
     * @param drift last less first scan; empty where only one was measured
     * @param scan the reference line's scan, measured energies; empty when there is none
     */
    public record Row(
            String spot,
            String sample,
            ChargeVerdict verdict,
            String line,
            OptionalDouble measuredEv,
            OptionalDouble shiftEv,
            String shift,
            String drift,
            Optional<Curve> scan) {}

    public ChargeOverview {
        rows = List.copyOf(rows);
    }

    public static ChargeOverview of(RunResult result, Words words) {
        List<Row> rows = new ArrayList<>();
        for (SpotResult spot : result.spots()) rows.add(row(spot, words));
        return new ChargeOverview(rows);
    }

    private static Row row(SpotResult spot, Words words) {
        ChargeReference charge = spot.charge();
        return new Row(
                spot.spot(),
                Shown.label(spot.sample()),
                charge.verdict(),
                charge.referenceLine(),
                charge.measuredEv(),
                charge.shiftEv(),
                shift(charge, words),
                charge.evidence().drift().map(ChargeOverview::drift).orElse(""),
                scan(spot));
    }

    private static String shift(ChargeReference charge, Words words) {
        if (charge.verdict() == ChargeVerdict.NOT_NEEDED) return words.of("charge.none-needed");
        if (charge.shiftEv().isEmpty()) return words.of("charge.no-reference");
        return DisplayNumber.of(charge.shiftEv().getAsDouble(), charge.standardUncertainty(), 2)
                        .text() + " eV";
    }

    private static String drift(Drift drift) {
        return DisplayNumber.of(drift.changeEv().value(), drift.changeEv().standardUncertainty(), 2)
                        .text() + " eV";
    }

    private static Optional<Curve> scan(SpotResult spot) {
        String wanted = spot.charge().fit().map(f -> f.spectrum()).orElse("");
        Optional<LinkedSpectrum> named =
                spot.spectra().stream().filter(s -> s.label().equals(wanted)).findFirst();
        Optional<LinkedSpectrum> shown = named.isPresent()
                ? named
                : spot.spectra().stream()
                        .filter(s -> !s.survey() && s.region().equals("C 1s"))
                        .findFirst();
        return shown.map(
                s -> new Curve(s.region(), s.scan().energies(), s.scan().counts()));
    }
}
