package spotline.holder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AnalysisFootprintTest {
    /** Derived: a / cos(theta). */
    @ParameterizedTest
    @CsvSource({"0.4, 60, 0.80", "0.2, 45, 0.2828427", "0.9, 45, 1.2727922", "0.7, 0, 0.7"})
    void isLengthenedAcrossTheBar(double width, double inclination, double lengthened) {
        AnalysisFootprint area = AnalysisFootprint.of(new PointMm(5, 5), new AreaMm(width, width), inclination, 90);
        assertThat(area.widthMm()).isCloseTo(width, within(1e-9));
        assertThat(area.heightMm()).isCloseTo(lengthened, within(1e-6));
    }

    /** Derived: along 0 degrees x takes the lengthening; along 45 degrees both take half of it, squared. */
    @Test
    void followsItsAzimuth() {
        AnalysisFootprint along = AnalysisFootprint.of(new PointMm(0, 0), new AreaMm(1, 1), 60, 0);
        assertThat(along.widthMm()).isCloseTo(2, within(1e-9));
        assertThat(along.heightMm()).isCloseTo(1, within(1e-9));
        AnalysisFootprint slanted = AnalysisFootprint.of(new PointMm(0, 0), new AreaMm(1, 1), 60, 45);
        assertThat(slanted.widthMm()).isCloseTo(Math.sqrt((4 + 1) / 2.0), within(0.003));
        assertThat(slanted.heightMm()).isCloseTo(slanted.widthMm(), within(1e-9));
        // Area of the polygon of 64 corners: a share 32/pi sin(2 pi/64) of the ellipse's, which is pi/4 x 1 x 2.
        assertThat(Shapes.polygon(slanted.corners()).getArea())
                .isCloseTo(Math.PI / 2 * (32 / Math.PI * Math.sin(Math.PI / 32)), within(1e-9));
    }

    @Test
    void takesTheSpotsOwnAngleBeforeTheLargerOfTheOthers() throws Exception {
        assertThat(inclination("\"emissionAngleDeg\": 20, \"tiltDeg\": 50", "\"emissionAngleDeg\": 10"))
                .hasValue(20);
        assertThat(inclination("\"tiltDeg\": -50", "\"emissionAngleDeg\": 10")).hasValue(50);
        assertThat(inclination("\"tiltDeg\": 5", "\"emissionAngleDeg\": 10")).hasValue(10);
        assertThat(inclination("\"zMm\": 0", "\"name\": \"i\"")).hasValue(0);
    }

    private static OptionalDouble inclination(String spot, String instrument) throws Exception {
        String text = """
                { "format": "spotline-holder-run/1", "instrument": { "analysisAreaMm": { "x": 1, "y": 1 }, %s },
                  "spots": [ { "id": "1", "xMm": 1, "yMm": 1, %s } ] }""".formatted(instrument, spot);
        HolderPlan plan =
                HolderPlan.of(HolderRunReader.read("h.json", text.getBytes(java.nio.charset.StandardCharsets.UTF_8)));
        return OptionalDouble.of(
                AnalysisFootprint.of(plan, plan.spots().get(0)).orElseThrow().inclinationDeg());
    }
}
