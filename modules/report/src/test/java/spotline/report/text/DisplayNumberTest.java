package spotline.report.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DisplayNumberTest {
    // derived by hand: two digits where the uncertainty, rounded to two, begins with a 1 or a 2 (0.2965 begins with a
    // 3)
    @ParameterizedTest
    @CsvSource({
        "12.494, 0.338, 12.5, 0.3",
        "42.7733, 1.797, 42.8, 1.8",
        "5.0108, 0.2965, 5.0, 0.3",
        "5.0108, 0.294, 5.01, 0.29",
        "0.0449, 0.0096, 0.045, 0.010",
        "0.0449, 0.0094, 0.045, 0.009",
        "99.96, 0.94, 100.0, 0.9",
        "99.96, 0.96, 100.0, 1.0",
        "57484.25, 678.1, 57500, 700",
        "57484.25, 128.1, 57480, 130",
        "57484.25, 997, 57500, 1000",
        "3, 1, 3.0, 1.0",
        "0.5, 30, 0, 30"
    })
    void digitsEndWhereTheUncertaintyBegins(double value, double u, String shown, String shownU) {
        DisplayNumber number = DisplayNumber.of(value, OptionalDouble.of(u), 1);
        assertThat(number).isEqualTo(new DisplayNumber(shown, shownU));
    }

    @Test
    void anUnknownUncertaintyIsNotZero() {
        assertThat(DisplayNumber.of(12.34, OptionalDouble.empty(), 1).text()).isEqualTo("12.3");
        assertThat(DisplayNumber.of(12.34, OptionalDouble.of(Double.NaN), 1).text())
                .isEqualTo("12.3");
        assertThat(DisplayNumber.of(12.34, OptionalDouble.of(0), 1).text()).isEqualTo("12.3 \u00b1 0");
        assertThat(DisplayNumber.of(Double.NaN, OptionalDouble.of(1), 1).text()).isEmpty();
    }

    @Test
    void signsAreTrueMinusesAndNeverBeforeZero() {
        assertThat(DisplayNumber.of(-2.553, OptionalDouble.of(0.04), 1).text()).isEqualTo("\u22122.55 \u00b1 0.04");
        assertThat(DisplayNumber.of(-0.003, OptionalDouble.of(0.4), 1).value()).isEqualTo("0.0");
        assertThat(DisplayNumber.signed(2.5, 2)).isEqualTo("+2.50");
        assertThat(DisplayNumber.signed(-2.5, 2)).isEqualTo("\u22122.50");
        assertThat(DisplayNumber.signed(0.001, 2)).isEqualTo("0.00");
    }

    @Test
    void limitsKeepTwoDigits() {
        assertThat(DisplayNumber.limit(0.2008)).isEqualTo("0.20");
        assertThat(DisplayNumber.limit(0.0764)).isEqualTo("0.076");
        assertThat(DisplayNumber.limit(1.23)).isEqualTo("1.2");
        assertThat(DisplayNumber.limit(12.3)).isEqualTo("12");
        assertThat(DisplayNumber.limit(123)).isEqualTo("120");
    }
}
