package spotline.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import org.junit.jupiter.api.Test;
import spotline.report.json.ResultJson;

class ResultJsonTest {
    private static JsonNode record() throws IOException {
        return new ObjectMapper().readTree(ResultJson.of(ExampleRun.plain()));
    }

    @Test
    void contributionsMakeTheUncertainty() throws IOException {
        JsonNode carbon = record().at("/spots/0/composition/0/atomicPercent");
        double sum = 0;
        for (JsonNode part : carbon.path("contributions")) sum += part.asDouble() * part.asDouble();
        // JCGM 100:2008 5.1.2, root of the sum of squares
        assertThat(Math.sqrt(sum))
                .isCloseTo(carbon.path("standardUncertainty").asDouble(), org.assertj.core.data.Offset.offset(1e-9));
    }

    @Test
    void whatIsNotKnownIsNull() throws IOException {
        JsonNode record = record();
        assertThat(record.at("/spots/1/charge/shiftEv").isNull()).isTrue();
        assertThat(record.at("/spots/1/identification").isNull()).isTrue();
        assertThat(record.at("/spots/0/composition/1/atomicPercent").isNull()).isTrue();
        assertThat(record.at("/spots/0/intensities/1/area/standardUncertainty").isNull())
                .isTrue();
        assertThat(record.at("/spots/0/identification/elements/0/lines/1/ratioToExpected")
                        .isNull())
                .isTrue();
    }

    @Test
    void settingsAndSourcesAreThere() throws IOException {
        JsonNode record = record();
        assertThat(record.path("format").asText()).isEqualTo("spotline-result/1");
        assertThat(record.at("/spots/0/treatment/narrow/highMarginFwhm").toString())
                .isEqualTo("2.5");
        assertThat(record.at("/spots/0/spectra/1/sha256").asText()).isEqualTo("ab".repeat(32));
        assertThat(record.at("/spots/0/spectra/1/block").asInt()).isEqualTo(2);
        assertThat(record.at("/seed").asInt()).isEqualTo(7);
    }
}
