package spotline.formats.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import spotline.core.Finding;
import spotline.core.Problem;
import spotline.core.ReadException;
import spotline.core.Severity;
import spotline.formats.source.Probe;
import spotline.formats.source.ReadLimits;
import spotline.formats.text.TextColumns.OrdinateKind;
import spotline.spectra.Counting;
import spotline.spectra.EnergyScale;
import spotline.spectra.ListedAxis;
import spotline.spectra.Ordinate;
import spotline.spectra.RegularAxis;
import spotline.spectra.SpectrumSet;

class TextColumnsReaderTest {
    private static TextColumns columns(int energy, int ordinate, OrdinateKind kind, double dwell, double scans) {
        return new TextColumns(
                energy,
                ordinate,
                EnergyScale.BINDING,
                kind,
                dwell > 0 ? OptionalDouble.of(dwell) : OptionalDouble.empty(),
                scans > 0 ? OptionalDouble.of(scans) : OptionalDouble.empty(),
                OptionalDouble.of(20),
                1486.6);
    }

    private static final TextColumns COUNTS = columns(1, 2, OrdinateKind.COUNTS, 0.1, 4);

    private static TextSpectrum read(String text, TextColumns columns) throws ReadException {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        return TextColumnsReader.read(
                "f.txt", new ByteArrayInputStream(bytes), bytes.length, ReadLimits.DEFAULT, columns);
    }

    private static TextLook look(String text) throws ReadException {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        return UndeclaredColumns.look("f.txt", new ByteArrayInputStream(bytes), bytes.length, ReadLimits.DEFAULT);
    }

    private static List<String> rules(TextSpectrum spectrum) {
        return spectrum.warnings().stream().map(Finding::rule).toList();
    }

    private static double[] values(TextSpectrum spectrum) {
        Ordinate ordinate = spectrum.set().ordinates().get(0);
        return ordinate.copy(0, ordinate.size());
    }

    private static double[] energies(TextSpectrum spectrum) {
        double[] energies = new double[spectrum.set().axis().channels()];
        for (int i = 0; i < energies.length; i++)
            energies[i] = spectrum.set().axis().value(i);
        return energies;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "290.1 10\n290.0 12\n289.9 7\n",
                "290.1\t10\n290.0\t12\n289.9\t7\n",
                "290.1,10\n290.0,12\n289.9,7\n",
                "290.1, 10\n290.0, 12\n289.9, 7\n",
                "290.1;10\n290.0;12\n289.9;7\n",
                " 290.1   10 \n 290.0   12 \n 289.9   7 \n",
                "290.1 10\r\n290.0 12\r\n289.9 7",
                "2.901e2 1e1\n2.9e2 1.2E+1\n289.9 7\n\n\n",
            })
    void separators(String text) throws Exception {
        TextSpectrum spectrum = read(text, COUNTS);
        assertThat(spectrum.set().axis()).isInstanceOf(RegularAxis.class);
        assertThat(((RegularAxis) spectrum.set().axis()).step()).isEqualTo(-0.1);
        assertThat(spectrum.set().axis().first()).isEqualTo(290.1);
        assertThat(values(spectrum)).containsExactly(10, 12, 7);
        assertThat(spectrum.firstRowLine()).isEqualTo(1);
        assertThat(rules(spectrum)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "290 10\n289,5 12\n289 7\n",
                "290,0;10,0\n289,5;12,0\n289,0;7,0\n",
                "290,0\t10\n289,5\t12\n289,0\t7\n",
            })
    void decimalComma(String text) throws Exception {
        TextSpectrum spectrum = read(text, COUNTS);
        assertThat(energies(spectrum)).containsExactly(290, 289.5, 289);
        assertThat(values(spectrum)).containsExactly(10, 12, 7);
        assertThat(rules(spectrum)).containsExactly("text-decimal-comma");
    }

    @Test
    void aCommaIsOneThingInOneFile() {
        assertThatThrownBy(() -> read("290,0;10\n289,5;12\n289.0;7\n288,5;7\n", COUNTS))
                .isInstanceOf(ReadException.class)
                .hasMessageStartingWith("f.txt:3: found \"289.0;7\" among the rows of numbers");
        assertThatThrownBy(() -> read("290.0;10\n289,5;12\n289.0;7\n", COUNTS))
                .isInstanceOf(ReadException.class)
                .hasMessageStartingWith("f.txt:2: found \"289,5;12\" among the rows of numbers");
    }

    @Test
    void headerLinesAreKeptAndTold() throws Exception {
        String text = "invented 2026\n1024\n# a comment\nenergy counts\n290 10\n% in between\n289 12\n288 7\n# end\n";
        TextSpectrum spectrum = read(text, COUNTS);
        assertThat(values(spectrum)).containsExactly(10, 12, 7);
        assertThat(spectrum.firstRowLine()).isEqualTo(5);
        assertThat(spectrum.set().acquisition().comments())
                .containsExactly("invented 2026", "1024", "# a comment", "energy counts", "% in between", "# end");
        assertThat(spectrum.warnings())
                .singleElement()
                .satisfies(f -> assertThat(f.message())
                        .isEqualTo(
                                "f.txt:1: 6 lines are kept as comments and not read as numbers: lines 1 to 4, line 6,"
                                        + " line 9"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "290 10;289 x;288 7      | f.txt:2: found \"289 x\" among the rows of numbers, expected a row of 2"
                        + " columns like that of line 1",
                "290 10;289;288 7        | f.txt:2: found \"289\" among the rows of numbers, expected a row of 2"
                        + " columns like that of line 1",
                "290 10;289 12 3;288 7   | f.txt:2: found \"289 12 3\" among the rows of numbers, expected a row of 2"
                        + " columns like that of line 1",
                "290 10;289 NaN;288 7    | f.txt:2: found \"289 NaN\" among the rows of numbers, expected a row of 2"
                        + " columns like that of line 1",
                "290 10;289 12;289.5 7   | f.txt:3: found the energy 289.5 eV after 289 eV, expected energies that run"
                        + " one way",
                "290 10;290 12           | f.txt:2: found the energy 290 eV after 290 eV, expected energies that run one"
                        + " way",
                "290 10                  | f.txt:1: found 1 rows with numbers in columns 1 and 2, expected 2 or more",
                "no numbers;at all       | f.txt:2: found 0 rows with numbers in columns 1 and 2, expected 2 or more",
            })
    void faults(String rows, String message) {
        assertThatThrownBy(() -> read(rows.replace(';', '\n') + "\n", COUNTS))
                .isInstanceOf(ReadException.class)
                .hasMessage(message);
    }

    @Test
    void whatFollowsTheRowsIsTold() throws Exception {
        TextSpectrum spectrum = read("290 10\n289 12\n288\n", COUNTS);
        assertThat(values(spectrum)).containsExactly(10, 12);
        assertThat(spectrum.warnings()).singleElement().satisfies(f -> {
            assertThat(f.rule()).isEqualTo("text-after-rows");
            assertThat(f.severity()).isEqualTo(Severity.CAUTION);
            assertThat(f.message()).startsWith("f.txt:3: ");
        });
    }

    @Test
    void anEmptyFieldIsNotSkipped() {
        assertThatThrownBy(() -> read("290,5,10\n289,,12\n288,5,7\n", columns(1, 2, OrdinateKind.COUNTS, 0, 0)))
                .isInstanceOf(ReadException.class)
                .hasMessageStartingWith("f.txt:2: found \"289,,12\"");
    }

    @Test
    void otherColumnsMayHoldAnything() throws Exception {
        TextSpectrum spectrum = read("a,10,290\nb,12,289\n", columns(3, 2, OrdinateKind.COUNTS, 0, 0));
        assertThat(energies(spectrum)).containsExactly(290, 289);
        assertThat(values(spectrum)).containsExactly(10, 12);
    }

    @Test
    void irregularSteps() throws Exception {
        TextSpectrum spectrum = read("290 10\n289.9 12\n289.7 7\n", COUNTS);
        assertThat(spectrum.set().axis()).isInstanceOf(ListedAxis.class);
        assertThat(energies(spectrum)).containsExactly(290, 289.9, 289.7);
        assertThat(spectrum.warnings())
                .singleElement()
                .satisfies(f -> assertThat(f.message())
                        .isEqualTo("f.txt:1: the energies are not equally spaced, steps 0.1 to 0.2 eV"));
    }

    @Test
    void aLongRegularScanIsRegular() throws Exception {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 20_000; i++) {
            text.append(java.math.BigDecimal.valueOf(120_000 - 5L * i, 2))
                    .append(' ')
                    .append(i)
                    .append('\n');
        }
        TextSpectrum spectrum = read(text.toString(), COUNTS);
        RegularAxis axis = (RegularAxis) spectrum.set().axis();
        assertThat(axis.step()).isEqualTo(-0.05);
        assertThat(axis.channels()).isEqualTo(20_000);
    }

    @Test
    void statistics() throws Exception {
        String counts = "290 10\n289 12\n";
        String rates = "290 10.5\n289 12.5\n";
        assertThat(counting(counts, COUNTS)).isEqualTo(Counting.COUNTS);
        assertThat(counting(rates, columns(1, 2, OrdinateKind.COUNTS_PER_SECOND, 0.5, 4))
                        .countsPerUnit())
                .hasValue(2);
        // What is not known is not guessed.
        assertThat(counting(counts, TextColumns.of(1, 2, EnergyScale.KINETIC, 1486.6)))
                .isEqualTo(Counting.UNKNOWN);
        assertThat(counting(rates, columns(1, 2, OrdinateKind.COUNTS_PER_SECOND, 0.5, 0)))
                .isEqualTo(Counting.UNKNOWN);
        assertThat(counting(rates, COUNTS)).isEqualTo(Counting.UNKNOWN);
        assertThat(counting("290 -1\n289 12\n", COUNTS)).isEqualTo(Counting.UNKNOWN);
        assertThat(rules(read(rates, COUNTS))).containsExactly("text-not-counts");
        assertThat(rules(read(rates, columns(1, 2, OrdinateKind.COUNTS_PER_SECOND, 0.5, 0))))
                .containsExactly("text-rate-without-time");
        assertThat(rules(read(counts, TextColumns.of(1, 2, EnergyScale.KINETIC, 1486.6))))
                .containsExactly("text-ordinate-unknown");
    }

    private static Counting counting(String text, TextColumns columns) throws ReadException {
        return read(text, columns).set().ordinates().get(0).counting();
    }

    @Test
    void whatIsDeclaredReachesTheSpectrum() throws Exception {
        SpectrumSet set = read("290 10\n289 12\n", COUNTS).set();
        assertThat(set.acquisition().excitation().photonEnergyEv()).hasValue(1486.6);
        assertThat(set.acquisition().analyser().passEnergyEv()).hasValue(20);
        assertThat(set.acquisition().timing().secondsPerChannel().orElseThrow()).isEqualTo(0.4);
        assertThat(set.axis().quantity().scale()).isEqualTo(EnergyScale.BINDING);
        assertThat(read("1 10\n2 12\n", TextColumns.of(1, 2, EnergyScale.KINETIC, 1486.6))
                        .set()
                        .axis()
                        .quantity()
                        .scale())
                .isEqualTo(EnergyScale.KINETIC);
    }

    @Test
    void everyProblemOfTheSettings() {
        List<Problem> problems = TextColumns.check(
                0, 0, EnergyScale.OTHER, OptionalDouble.of(-1), OptionalDouble.of(0), OptionalDouble.of(Double.NaN), 0);
        assertThat(problems)
                .extracting(Problem::field)
                .containsExactly(
                        "energy",
                        "ordinate",
                        "ordinate",
                        "scale",
                        "dwellSeconds",
                        "scans",
                        "passEnergyEv",
                        "photonEnergyEv");
        assertThat(problems.get(4).sentence()).isEqualTo("dwellSeconds: -1 s, expected a finite number above 0 s");
        assertThatThrownBy(() -> TextColumns.of(2, 2, EnergyScale.KINETIC, 1486.6))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("ordinate: column 2, expected another column than the energy's");
        assertThat(OrdinateKind.COUNTS_PER_SECOND.word()).isEqualTo("counts-per-second");
    }

    @Test
    void lookSaysWhatIsThereAndWhatIsNot() throws Exception {
        TextLook look = look("energy a b\n290 10 1.5\n289 12 -2\n288 7 0\n");
        assertThat(look.columns()).isEqualTo(3);
        assertThat(look.rows()).isEqualTo(3);
        assertThat(look.firstRowLine()).isEqualTo(2);
        assertThat(look.ranges())
                .containsExactly(new TextLook.Range(288, 290), new TextLook.Range(7, 12), new TextLook.Range(-2, 1.5));
        assertThat(look.undeclared()).contains("photon energy", "scale (binding or kinetic)");
        assertThat(look.comments()).containsExactly("energy a b");
        assertThatThrownBy(() -> look("words\n"))
                .isInstanceOf(ReadException.class)
                .hasMessage("f.txt:1: found no row of numbers, expected rows of two or more numbers");
    }

    @Test
    void lookSaysWhatPartsTheColumns() throws Exception {
        assertThat(look("290 10\n289 12\n").separator()).isEqualTo("blanks");
        assertThat(look("290\t10\n289\t12\n").separator()).isEqualTo("tabs");
        assertThat(look("290, 10\n289, 12\n").separator()).isEqualTo("commas and blanks");
        TextLook german = look("290,5;10,25\n289,5;12\n");
        assertThat(german.separator()).isEqualTo("semicolons");
        assertThat(german.decimalComma()).isTrue();
        assertThat(german.ranges().get(1)).isEqualTo(new TextLook.Range(10.25, 12));
    }

    @Test
    void lookSuggestsAndSaysWhy() throws Exception {
        TextLook look = look("K.E. / eV, cps\n1 900.0 10.5\n2 900.1 12\n3 900.2 7\n");
        assertThat(look.suggestions())
                .containsExactly(
                        new TextLook.Suggestion("energy", "1", "it runs one way in equal steps, from 1 to 3"),
                        new TextLook.Suggestion(
                                "ordinate", "2", "the first other column that changes and is never negative"),
                        new TextLook.Suggestion("scale", "\"kinetic\"", "the lines above speak of kinetic energy"),
                        new TextLook.Suggestion(
                                "ordinateKind", "\"counts-per-second\"", "the lines above speak of counts per second"));
        assertThat(look("binding or kinetic\n1 -5\n1 -5\n").suggestions()).isEmpty();
    }

    @Test
    void theNumbersAloneMakeTheDigest() throws Exception {
        String digest = look("# a\n1 2\n2 3\n").dataSha256();
        assertThat(look("1;2.0\n2;3.0\n").dataSha256()).isEqualTo(digest);
        assertThat(look("1 2\n2 4\n").dataSha256()).isNotEqualTo(digest);
    }

    @Test
    void linesThatEndWithACarriageReturnAreRead() throws Exception {
        TextLook look = look("a b\r1 2\r2 3\r");
        assertThat(look.rows()).isEqualTo(2);
        assertThat(look.firstRowLine()).isEqualTo(2);
        assertThat(look.warnings()).anySatisfy(f -> {
            assertThat(f.rule()).isEqualTo("text-cr-line-ends");
            assertThat(f.message()).startsWith("f.txt:2: ");
        });
        assertThat(probe("a\r1 2\r3 4\r")).isEqualTo(Probe.Verdict.MAYBE);
    }

    @Test
    void probe() {
        assertThat(probe("a b\n1 2\n3 4\n")).isEqualTo(Probe.Verdict.MAYBE);
        assertThat(probe("1,5;2\n3,5;4\n")).isEqualTo(Probe.Verdict.MAYBE);
        assertThat(probe("1 2")).isEqualTo(Probe.Verdict.NO);
        assertThat(probe("")).isEqualTo(Probe.Verdict.NO);
        assertThat(probe("1\n2\n3\n")).isEqualTo(Probe.Verdict.NO);
        assertThat(probe("1 2\n3 4\n\u0000")).isEqualTo(Probe.Verdict.NO);
    }

    private static Probe.Verdict probe(String head) {
        return TextColumnsReader.probe(head.getBytes(StandardCharsets.UTF_8)).verdict();
    }

    @Test
    void damagedFilesAreReadRefusedOrTold() {
        SplittableRandom random = new SplittableRandom(7);
        StringBuilder text = new StringBuilder("# invented\nenergy counts\n");
        for (int i = 0; i < 40; i++)
            text.append(290 - i).append(".5 ").append(100 + i % 7).append('\n');
        byte[] whole = text.toString().getBytes(StandardCharsets.UTF_8);
        for (int i = 0; i < 3000; i++) {
            byte[] changed = i < whole.length ? java.util.Arrays.copyOf(whole, i) : whole.clone();
            if (i >= whole.length) changed[random.nextInt(whole.length)] ^= (byte) (1 << random.nextInt(8));
            try {
                TextSpectrum spectrum = TextColumnsReader.read(
                        "f.txt", new ByteArrayInputStream(changed), changed.length, ReadLimits.DEFAULT, COUNTS);
                assertThat(spectrum.set().axis().channels()).isBetween(2, 40);
            } catch (ReadException refused) {
                assertThat(refused.place().file()).isEqualTo("f.txt");
            }
        }
    }
}
