package spotline.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spotline.analysis.quantify.FactorKind;
import spotline.analysis.quantify.FactorSet;
import spotline.analysis.quantify.ListedFactors;
import spotline.core.ReadException;
import spotline.reference.Line;
import spotline.reference.ReferenceData;

class FactorFileTest {
    private static final List<String> GOOD = List.of(
            "# name: our own",
            "# source: invented for a test",
            "# kind: elemental",
            "# photon_energy_ev: 1486.6",
            "# source_analyser_angle_deg: 54.7",
            "# transmission: in-the-factors",
            "# backgrounds: shirley straight",
            "# shake_up: outside",
            "# a remark without a stop",
            "",
            "line,factor,standard_uncertainty",
            "C 1s,1,0.03",
            "Ti 2p3/2,5.22,");

    private static ListedFactors parse(List<String> lines) throws ReadException {
        return FactorFile.parse("own.csv", lines, ReferenceData.shipped());
    }

    @Test
    void readsWhatASetIs() throws Exception {
        ListedFactors factors = parse(GOOD);
        FactorSet set = factors.set();
        assertThat(set.name()).isEqualTo("our own");
        assertThat(set.kind()).isEqualTo(FactorKind.ELEMENTAL);
        assertThat(set.photonEnergyEv()).hasValue(1486.6);
        assertThat(set.transmission()).isEqualTo(FactorSet.Transmission.IN_THE_FACTORS);
        assertThat(set.backgrounds())
                .containsExactly(FactorSet.BackgroundFamily.SHIRLEY, FactorSet.BackgroundFamily.STRAIGHT);
        assertThat(set.shakeUpInside()).isFalse();
        assertThat(factors.factors().get(Line.parse("C 1s")).standardUncertainty())
                .hasValue(0.03);
        assertThat(factors.factors().get(Line.parse("Ti 2p3/2")).standardUncertainty())
                .isEmpty();
    }

    @Test
    void whatIsWrittenReadsBackTheSame() throws Exception {
        ListedFactors factors = parse(GOOD);
        String text = FactorFile.text(factors);
        ListedFactors back = parse(Arrays.asList(text.split("\n")));
        assertThat(back.set()).isEqualTo(factors.set());
        assertThat(back.factors()).isEqualTo(factors.factors());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0|# nom: x|1|nom",
                "1|# name: twice|2|second time",
                "10|line;factor|11|column names",
                "11|C 1s,one,0|12|a number",
                "11|C 1s,-1,0|12|above 0",
                "11|C 1s,1,-2|12|0 or more",
                "11|C1q,1,0|12|a line like",
                "11|C 1s,1|12|three cells",
                "12|C 1s,2,|13|each line once"
            })
    void aFaultHasItsLine(int replaced, String by, int line, String words) {
        List<String> lines = new ArrayList<>(GOOD);
        lines.set(replaced, by);
        ReadException fault = catchThrowableOfType(ReadException.class, () -> parse(lines));
        assertThat(fault).hasMessageContaining(words);
        assertThat(fault.place().line()).isEqualTo(line);
    }

    @Test
    void aSetNeedsNameSourceAndARow() {
        assertThat(catchThrowableOfType(ReadException.class, () -> parse(GOOD.subList(1, 13))))
                .hasMessageContaining("name");
        assertThat(catchThrowableOfType(ReadException.class, () -> parse(GOOD.subList(0, 11))))
                .hasMessageContaining("no factor");
        assertThat(catchThrowableOfType(
                        ReadException.class,
                        () -> FactorFile.read(InputFiles.in(Path.of(".")), "not-there.csv", ReferenceData.shipped())))
                .hasMessageContaining("not-there.csv");
    }
}
