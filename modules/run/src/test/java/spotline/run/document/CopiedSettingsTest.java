package spotline.run.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import spotline.core.ReadException;
import spotline.reference.Line;
import spotline.spectra.Window;

class CopiedSettingsTest {
    private static final Line C1S = Line.parse("C 1s");

    @Test
    void startsAreEstimatedAnewAndLocksAreKept() throws ReadException {
        RunDocument document = Documents.small();
        document = Edits.fitModel(
                        document,
                        "1",
                        C1S,
                        Documents.object("{'format': 'spotline-fit-model/1', 'window': {'lowEv': 282, 'highEv': 292},"
                                + "'background': {'kind': 'shirley', 'endpointChannels': 5},"
                                + "'components': ["
                                + "{'name': 'a', 'shape': 'voigt', 'position': {'start': 285, 'min': 284, 'max': 286},"
                                + " 'gaussianFwhm': {'start': 1.1, 'min': 0.3, 'max': 2.5}, 'lorentzianFwhm': {'fixed': 0.12},"
                                + " 'area': {'start': 900, 'min': 0}},"
                                + "{'name': 'b', 'shape': 'voigt', 'position': {'offsetFrom': 'a', 'fixed': 1.6},"
                                + " 'gaussianFwhm': {'equalTo': 'a'}, 'lorentzianFwhm': {'equalTo': 'a'},"
                                + " 'area': {'ratioTo': 'a', 'fixed': 0.5}}]}"))
                .applied(document);
        document = Edits.window(document, "1", C1S, new Window(280, 291)).applied(document);
        Edit edit = Edits.copied(document, "1", new TreeMap<>(Map.of("2", 1.5, "3", -0.5)));
        assertThat(edit.title()).isEqualTo("Settings of spot 1 for spots 2, 3");
        RunDocument copied = edit.applied(document);
        String model = "/spots/1/treatment/peakFit/models/C 1s";
        assertThat(copied.at(model + "/window")).contains(Documents.json("{'lowEv': 283.5, 'highEv': 293.5}"));
        assertThat(copied.at(model + "/components/0/position"))
                .contains(Documents.json("{'min': 285.5, 'max': 287.5}"));
        assertThat(copied.at(model + "/components/0/gaussianFwhm"))
                .contains(Documents.json("{'min': 0.3, 'max': 2.5}"));
        assertThat(copied.at(model + "/components/0/lorentzianFwhm")).contains(Documents.json("{'fixed': 0.12}"));
        assertThat(copied.at(model + "/components/1/position"))
                .contains(Documents.json("{'offsetFrom': 'a', 'fixed': 1.6}"));
        assertThat(copied.at(model + "/components/1/area")).contains(Documents.json("{'ratioTo': 'a', 'fixed': 0.5}"));
        assertThat(copied.treatments().get(2).line(C1S).window()).contains(new Window(279.5, 290.5));
        assertThat(copied.at("/spots/2/treatment/charge")).isEmpty();
        assertThat(edit.inverse().applied(copied)).isEqualTo(document);
    }
}
