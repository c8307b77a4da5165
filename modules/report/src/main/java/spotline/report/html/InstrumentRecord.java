package spotline.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;
import spotline.core.Decimal;
import spotline.holder.Instrument;
import spotline.holder.MeasuringConditions;
import spotline.holder.Spot;
import spotline.report.facts.HeaderFacts;
import spotline.run.LinkedSpectrum;
import spotline.run.RunResult;

/** How the instrument was set: as the holder run declares it, with what the headers of the files say. */
final class InstrumentRecord {
    private final RunResult result;
    private final Instrument instrument;
    private final MeasuringConditions conditions;

    private InstrumentRecord(RunResult result) {
        this.result = result;
        this.instrument = result.plan().file().instrument();
        this.conditions = instrument.conditions();
    }

    static List<Tables.Fact> of(RunResult result) {
        return new InstrumentRecord(result).facts();
    }

    /** Empty where nobody wrote it down. */
    static String pressure(RunResult result) {
        InstrumentRecord record = new InstrumentRecord(result);
        return record.declared(record.conditions.pressureMbar(), "mbar", HeaderFacts::pressure);
    }

    static String power(RunResult result) {
        InstrumentRecord record = new InstrumentRecord(result);
        return record.declared(record.conditions.xRayPowerW(), "W", HeaderFacts::xRayPower);
    }

    private List<Tables.Fact> facts() {
        List<Tables.Fact> facts = new ArrayList<>();
        facts.add(new Tables.Fact("Model", instrument.name().orElse("")));
        facts.add(new Tables.Fact("X-ray source and photon energy", RunHeader.source(result)));
        facts.add(new Tables.Fact("X-ray power", power(result)));
        facts.add(new Tables.Fact("X-ray spot on the sample", headers(HeaderFacts::beamWidth)));
        facts.add(new Tables.Fact("Analysis area", area()));
        facts.add(new Tables.Fact("Source to analyser", RunHeader.degrees(instrument.sourceAnalyserAngleDeg())));
        facts.add(new Tables.Fact("Emission angle", RunHeader.degrees(instrument.emissionAngleDeg())));
        facts.add(new Tables.Fact("Analyser mode", declared(conditions.analyserMode(), HeaderFacts::analyserMode)));
        facts.add(new Tables.Fact("Pass energy", passEnergies()));
        facts.add(new Tables.Fact("Lens", declared(conditions.lens(), HeaderFacts::lens)));
        facts.add(new Tables.Fact("Counting", headers(HeaderFacts::counting)));
        facts.add(new Tables.Fact("Pressure", pressure(result)));
        facts.add(new Tables.Fact(
                "Sample temperature", declared(conditions.sampleTemperatureC(), "\u00b0C", HeaderFacts::temperature)));
        facts.add(new Tables.Fact("Sample bias", bias()));
        facts.add(new Tables.Fact("Ion gun", ionGun()));
        facts.add(new Tables.Fact("Charge neutraliser", neutraliser()));
        return facts;
    }

    private String area() {
        String declared = instrument
                .analysisArea()
                .map(a -> Decimal.text(a.x()) + " \u00d7 " + Decimal.text(a.y()) + " mm")
                .orElse("");
        return either(declared, headers(HeaderFacts::analysisWidth));
    }

    private String bias() {
        OptionalDouble planned = result.plan().file().stage().biasV();
        return declared(planned, "V", HeaderFacts::bias);
    }

    private String neutraliser() {
        String state = RunHeader.known(instrument.chargeNeutraliser().word());
        String settings = declared(conditions.neutraliser(), HeaderFacts::neutraliser);
        return Stream.of(state, settings)
                .filter(s -> !s.isEmpty())
                .reduce((a, b) -> a + "; " + b)
                .orElse("");
    }

    private String ionGun() {
        List<String> spots = result.plan().spots().stream()
                .filter(Spot::sputtered)
                .map(Spot::id)
                .toList();
        String settings = declared(conditions.ionGun(), HeaderFacts::ionGun);
        if (!spots.isEmpty()) {
            return "used at " + RunHeader.spots(spots) + "; "
                    + (settings.isEmpty() ? "its settings are not recorded" : settings);
        }
        return settings.isEmpty() ? "not used by the record" : settings;
    }

    private String passEnergies() {
        return headers(s -> s.scan().passEnergyEv().isPresent()
                ? Decimal.significant(s.scan().passEnergyEv().getAsDouble(), 4)
                        + (s.survey() ? " eV (survey)" : " eV (narrow)")
                : "");
    }

    private String declared(OptionalDouble value, String unit, Function<LinkedSpectrum, String> header) {
        String declared = value.isPresent() ? HeaderFacts.scientific(value.getAsDouble()) + " " + unit : "";
        return either(declared, headers(header));
    }

    private String declared(Optional<String> value, Function<LinkedSpectrum, String> header) {
        return either(value.orElse(""), headers(header));
    }

    /** Both where they are not the same: which of them holds is not for a report to choose. */
    private static String either(String declared, String headers) {
        if (declared.isEmpty() || declared.equals(headers)) return headers;
        return headers.isEmpty() ? declared : declared + " as declared; in the files: " + headers;
    }

    private String headers(Function<LinkedSpectrum, String> what) {
        return String.join(
                ", ",
                HeaderFacts.distinct(result.spots().stream()
                        .flatMap(spot -> spot.spectra().stream())
                        .map(what)));
    }
}
