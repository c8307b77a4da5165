package spotline.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DecimalTest {
    @ParameterizedTest
    @CsvSource({
        "284.8, 284.8",
        "-3.1, -3.1",
        "0, 0",
        "1e-5, 0.00001",
        "1e-6, 0.000001",
        "1e-7, 1E-7",
        "123456789012, 123456789000",
        "1e15, 1E+15",
        "2e-3, 0.002",
        "0.1, 0.1",
        "33.333333333333, 33.33333333"
    })
    void tenSignificantDigits(double value, String text) {
        assertThat(Decimal.text(value)).isEqualTo(text);
    }

    @Test
    void whatIsNotANumberIsEmpty() {
        assertThat(Decimal.text(Double.NaN)).isEmpty();
        assertThat(Decimal.text(Double.NEGATIVE_INFINITY)).isEmpty();
        assertThat(Decimal.text(OptionalDouble.empty())).isEmpty();
        assertThat(Decimal.text(-0.0)).isEqualTo("0");
    }

    @Test
    void everyNumberComesBackToTenDigits() {
        SplittableRandom random = new SplittableRandom(7);
        for (int i = 0; i < 10_000; i++) {
            double value = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(-200, 200));
            assertThat(Double.parseDouble(Decimal.text(value))).isCloseTo(value, within(6e-10 * Math.abs(value)));
        }
    }

    @Test
    void fixedAndSignificant() {
        assertThat(Decimal.fixed(-0.004, 2)).isEqualTo("0.00");
        assertThat(Decimal.fixed(2.675, 2)).isEqualTo("2.67");
        assertThat(Decimal.significant(0.012345, 2)).isEqualTo("0.012");
    }
}
