package spotline.report.html;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.TreeSet;
import spotline.core.Decimal;
import spotline.core.Severity;
import spotline.holder.DeclaredTransmission;
import spotline.holder.ExcitationSource;
import spotline.holder.HolderRunFile;
import spotline.holder.Instrument;
import spotline.run.RunResult;

/** Title and what is known of the whole holder run. */
final class RunHeader {
    private RunHeader() {}

    static void write(Markup page, RunResult result, String title) {
        page.open("header");
        page.element("p", "Surface composition by X-ray photoelectron spectroscopy", "class", "kicker");
        page.element("h1", title).raw("\n");
        Tables.facts(page, facts(result));
        stops(page, result);
        page.end();
    }

    private static List<Tables.Fact> facts(RunResult result) {
        HolderRunFile file = result.plan().file();
        Instrument instrument = file.instrument();
        List<Tables.Fact> facts = new ArrayList<>();
        facts.add(new Tables.Fact("Date", file.date().map(LocalDate::toString).orElse("")));
        facts.add(new Tables.Fact("Operator", file.operator().orElse("")));
        facts.add(new Tables.Fact("Holder", file.holderTemplate().orElse("")));
        facts.add(new Tables.Fact("Instrument", instrument.name().orElse("")));
        facts.add(new Tables.Fact("X-ray source", source(result)));
        facts.add(new Tables.Fact(
                "Analysis area",
                instrument
                        .analysisArea()
                        .map(a -> a.x() + " \u00d7 " + a.y() + " mm")
                        .orElse("")));
        facts.add(new Tables.Fact("Emission angle", degrees(instrument.emissionAngleDeg())));
        facts.add(new Tables.Fact("Source to analyser", degrees(instrument.sourceAnalyserAngleDeg())));
        facts.add(new Tables.Fact(
                "Charge neutraliser", known(instrument.chargeNeutraliser().word())));
        facts.add(new Tables.Fact("Transmission", declared(instrument.transmission())));
        long spectra =
                result.spots().stream().mapToLong(s -> s.spectra().size()).sum();
        facts.add(new Tables.Fact(
                "Measured",
                result.samples().size() + " samples, " + result.spots().size() + " spots, " + spectra + " spectra"));
        return facts;
    }

    /** As declared, with the photon energies that were used. */
    static String source(RunResult result) {
        Instrument.DeclaredExcitation excitation =
                result.plan().file().instrument().excitation();
        List<String> parts = new ArrayList<>();
        if (excitation.source() != ExcitationSource.UNKNOWN)
            parts.add(excitation.source().word().replaceFirst("a$", "\u03b1"));
        excitation.monochromated().ifPresent(m -> parts.add(m ? "monochromated" : "not monochromated"));
        TreeSet<String> energies = new TreeSet<>();
        result.spots()
                .forEach(spot -> spot.spectra()
                        .forEach(s -> energies.add(Decimal.fixed(s.scan().photonEnergyEv(), 1) + " eV")));
        parts.addAll(energies);
        return String.join(", ", parts);
    }

    static String degrees(OptionalDouble angle) {
        return angle.isPresent() ? Decimal.text(angle) + "\u00b0" : "";
    }

    /** Empty for what the record does not know. */
    static String known(String word) {
        return word.equals("unknown") ? "" : word;
    }

    /** "spot 1", "spots 1, 2". */
    static String spots(Collection<String> ids) {
        return (ids.size() == 1 ? "spot " : "spots ") + String.join(", ", ids);
    }

    private static String declared(DeclaredTransmission transmission) {
        if (transmission instanceof DeclaredTransmission.AsRecorded) return "as recorded";
        if (transmission instanceof DeclaredTransmission.Flat) return "flat";
        if (transmission instanceof DeclaredTransmission.PowerLaw law) {
            return "kinetic energy to the power " + Decimal.text(law.power());
        }
        return transmission instanceof DeclaredTransmission.FromFile table ? table.file() : "";
    }

    private static void stops(Markup page, RunResult result) {
        long stops = result.findings().stream()
                .filter(f -> f.severity() == Severity.STOP)
                .count();
        if (stops == 0) return;
        page.open("p", "class", "banner").element("strong", "Numbers are withheld or must not be used. ");
        page.text(String.format(
                Locale.ROOT, "%d %s of severity \u201cstop\u201d: see ", stops, stops == 1 ? "finding" : "findings"));
        page.element("a", "Findings", "href", "#findings").text(".").end();
    }
}
