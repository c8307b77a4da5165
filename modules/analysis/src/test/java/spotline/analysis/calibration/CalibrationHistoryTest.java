package spotline.analysis.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.StringReader;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;
import spotline.core.Finding;
import spotline.core.ReadException;
import spotline.spectra.BindingScan;

class CalibrationHistoryTest {
    private static final LocalDate MARCH = LocalDate.of(2026, 3, 2);

    private static CalibrationRecord.Line line(String name, double reference, double off, double fwhm, double rate) {
        return new CalibrationRecord.Line(
                name,
                reference,
                reference + off,
                OptionalDouble.of(0.006),
                OptionalDouble.of(fwhm),
                OptionalDouble.of(rate));
    }

    private static CalibrationRecord record(LocalDate date, double off, double silverFwhm, double copperRate) {
        return new CalibrationRecord(
                date,
                date.plusDays(90),
                "=lab spectrometer, \"east\"",
                "Al Ka",
                true,
                1486.69,
                OptionalDouble.of(20),
                0.2,
                1e-4,
                -off,
                OptionalDouble.of(0.02),
                EnergyScale.Verdict.WITHIN,
                List.of(
                        line("Au 4f7/2", 83.96, off, 0.9, 20000),
                        line("Ag 3d5/2", 368.21, off, silverFwhm, 25000),
                        line("Cu 2p3/2", 932.62, off, 1.1, copperRate)));
    }

    private static CalibrationHistory three(double silverFwhm, double copperRate) {
        return CalibrationHistory.empty()
                .plus(record(MARCH, 0.01, 0.80, 30000))
                .plus(record(MARCH.plusDays(30), 0.02, 0.81, 30300))
                .plus(record(MARCH.plusDays(60), 0.03, silverFwhm, copperRate));
    }

    @Test
    void aTableReadsBackAsItWasWritten() throws ReadException {
        CalibrationHistory history = three(0.8, 30000);
        CalibrationHistory again = CalibrationHistory.read("history.csv", history.csv());
        assertThat(again.rows()).hasSameSizeAs(history.rows());
        assertThat(again.rows().get(4).instrument())
                .isEqualTo(history.rows().get(4).instrument());
        assertThat(again.rows().get(4).measuredEv())
                .isCloseTo(history.rows().get(4).measuredEv(), within(1e-9));
        assertThat(again.csv()).isEqualTo(history.csv());
        assertThat(history.csv()).contains("'=lab spectrometer").doesNotContain("\n=lab");
        assertThat(history.rows().get(1).deviationEv()).isCloseTo(0.01, within(1e-9));
    }

    @Test
    void faultsNameTheirLine() {
        String good = three(0.8, 30000).csv();
        assertThatThrownBy(() -> CalibrationHistory.read("history.csv", "date,line\n"))
                .isInstanceOf(ReadException.class)
                .hasMessageContaining("history.csv:1");
        assertThatThrownBy(() -> CalibrationHistory.read("history.csv", good.replaceFirst("83\\.96", "gold")))
                .hasMessageContaining("history.csv:2")
                .hasMessageContaining("reference_ev");
        assertThatThrownBy(() -> CalibrationHistory.read("history.csv", good.replaceFirst("2026-03-02", "March")))
                .hasMessageContaining("history.csv:2")
                .hasMessageContaining("date");
        assertThatThrownBy(() -> CalibrationHistory.read("history.csv", good + "2026-05-02,lab\n"))
                .hasMessageContaining("2 cells");
    }

    @Test
    void constancyIsHeldAgainstTheDaysBefore() {
        assertThat(three(0.80, 30100).findings()).isEmpty();
        // Limits 0.05 eV and 2 %: common practice, no source.
        assertThat(three(0.88, 30100).findings()).extracting(Finding::rule).containsExactly("resolution-changed");
        assertThat(three(0.80, 31500).findings())
                .extracting(Finding::rule)
                .containsOnly("intensity-ratio-changed")
                .hasSize(2);
        assertThat(three(0.80, 20000).findings()).extracting(Finding::rule).contains("intensity-changed");
        assertThat(CalibrationHistory.empty().findings()).isEmpty();
    }

    @Test
    void theChartIsWellFormedAndShowsEveryLine() throws Exception {
        String svg = new ControlChart(three(0.8, 30000)).svg();
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
        Document document = factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
        assertThat(document.getElementsByTagName("polyline").getLength()).isEqualTo(3);
        assertThat(document.getElementsByTagName("circle").getLength())
                .as("three days and the legend")
                .isEqualTo(4);
        assertThat(svg).contains("Au 4f7/2", "Ag 3d5/2", "Cu 2p3/2", "tolerance", "2026-03-02", "2026-05-01");
        assertThat(new ControlChart(CalibrationHistory.empty()).svg()).contains("No calibration yet");
    }

    @Test
    void aRecordMovesTheAxisAndLeavesTheCounts() {
        CalibrationRecord record = record(MARCH, 0.05, 0.8, 30000);
        BindingScan scan = MadeMetal.scan("Ag 3d", 368.2, 6, 0.67, 0.75, 360, 380, 9);
        BindingScan corrected = record.corrected(scan);
        assertThat(corrected.counts()).isEqualTo(scan.counts());
        assertThat(corrected.energy(10)).isCloseTo(scan.energy(10) * 1.0001 - 0.05, within(1e-9));
        assertThat(record.appliesTo(scan)).isTrue();
    }

    @Test
    void theAgeOfARecordIsSaid() {
        CalibrationRecord record = record(MARCH, 0.01, 0.8, 30000);
        assertThat(rules(record, Optional.of(MARCH.plusDays(89)))).containsExactly("energy-scale-corrected");
        assertThat(rules(record, Optional.of(MARCH.plusDays(140)))).contains("energy-calibration-overdue");
        assertThat(record.findings(Optional.of(MARCH.plusDays(140))).get(1).message())
                .contains("140 days", "2026-05-31");
        assertThat(rules(record, Optional.of(MARCH.minusDays(1)))).contains("energy-calibration-later");
        assertThat(rules(record, Optional.empty())).contains("energy-calibration-age");
    }

    private static List<String> rules(CalibrationRecord record, Optional<LocalDate> run) {
        return record.findings(run).stream().map(Finding::rule).toList();
    }

    @Test
    void nonsenseIsRefused() {
        assertThatThrownBy(() -> record(MARCH, 4, 0.8, 30000)).hasMessageContaining("correction");
    }
}
