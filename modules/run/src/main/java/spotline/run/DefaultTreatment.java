package spotline.run;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Objects;

/** The documented default of every setting. */
public final class DefaultTreatment {
    private static final JsonNode JSON = read();

    private DefaultTreatment() {}

    /** A copy. */
    public static JsonNode json() {
        return JSON.deepCopy();
    }

    private static JsonNode read() {
        String name = "/spotline/run/treatment-defaults.json";
        try (InputStream in = DefaultTreatment.class.getResourceAsStream(name)) {
            return JsonMapper.builder().build().readTree(Objects.requireNonNull(in, name));
        } catch (IOException e) {
            throw new UncheckedIOException(name + " cannot be read", e);
        }
    }

    public static Treatment treatment() {
        return TreatmentBinding.bind(json());
    }
}
