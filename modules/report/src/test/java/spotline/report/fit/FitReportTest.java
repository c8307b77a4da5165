package spotline.report.fit;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import spotline.analysis.background.Shirley;
import spotline.analysis.peakfit.BackgroundModel;
import spotline.analysis.peakfit.ComponentModel;
import spotline.analysis.peakfit.DoubletRule;
import spotline.analysis.peakfit.FitModel;
import spotline.analysis.peakfit.FitMonteCarlo;
import spotline.analysis.peakfit.ParameterRule.EqualTo;
import spotline.analysis.peakfit.ParameterRule.Fixed;
import spotline.analysis.peakfit.ParameterRule.Free;
import spotline.analysis.peakfit.PeakFit;
import spotline.analysis.peakfit.PeakFitResult;
import spotline.core.Outcome;
import spotline.core.Provenance;
import spotline.core.Work;
import spotline.numerics.random.PoissonSampler;
import spotline.numerics.random.RandomStreams;
import spotline.numerics.shape.Voigt;
import spotline.reference.Line;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

class FitReportTest {
    /** A name that would break out of SVG if it were not escaped. */
    private static final String NASTY = "a<script>alert(\"1\")</script> & b";

    private static FitReport report(boolean counted, int draws) {
        int n = 241;
        double[] x = new double[n];
        double[] expected = new double[n];
        double[] peak = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = 276 + 0.1 * i;
            expected[i] = 20000;
        }
        for (double[] p : new double[][] {{285, 40000, 1, 0.1}, {288, 16000, 1, 0.1}}) {
            new Voigt().evaluate(x, p, peak);
            for (int i = 0; i < n; i++) expected[i] += peak[i];
        }
        double[] counts = PoissonSampler.sample(RandomStreams.stream(1, "report"), expected);
        BindingScan scan =
                new BindingScan("made", 1486.6, x, counts, counted, OptionalDouble.empty(), OptionalDouble.empty());
        ComponentModel first = ComponentModel.of(NASTY, new Voigt())
                .with("position", Free.within(284, 286))
                .with("lorentzianFwhm", new Fixed(0.1));
        ComponentModel second = ComponentModel.of("second", new Voigt())
                .with("position", Free.within(287, 289))
                .with("gaussianFwhm", new EqualTo(NASTY))
                .with("lorentzianFwhm", new Fixed(0.1));
        FitModel model = FitModel.of(
                new Window(276, 300),
                BackgroundModel.fittedAlong(Shirley.of(5)),
                first,
                second.with(new DoubletRule(
                        Line.parse("Cl 2p"),
                        Optional.of(new Fixed(1.6)),
                        Optional.of(new Fixed(0.01)),
                        new Fixed(1),
                        Optional.empty())));
        PeakFit fit = new PeakFit(ReferenceData.shipped());
        Outcome<PeakFitResult> outcome = fit.fit(scan, model, Work.UNWATCHED);
        PeakFitResult result = outcome.result().orElseThrow();
        Optional<FitMonteCarlo.Result> spread = draws == 0
                ? Optional.empty()
                : new FitMonteCarlo(fit)
                        .run(scan, result, draws, 1, Runnable::run, Work.UNWATCHED)
                        .result();
        Provenance source = new Provenance("folder/odd & <file>.txt", "00ff", 3, 12, PeakFit.STEP);
        return new FitReport(source, "C 1s", result, outcome.allFindings(), spread);
    }

    @Test
    void jsonHoldsTheKeysThatStayPut() {
        ObjectNode json = FitJson.of(report(true, 0));
        assertThat(json.path("components")).hasSize(3);
        for (JsonNode c : json.path("components")) {
            for (String key : List.of("positionEv", "positionU", "fwhmEv", "fwhmU", "area", "areaU")) {
                assertThat(c.path(key).isNumber()).as(key).isTrue();
            }
            assertThat(c.path("name").isTextual()).isTrue();
        }
        JsonNode statistics = json.path("statistics");
        for (String key :
                List.of("reducedChiSquare", "deviance", "vonNeumannRatio", "degreesOfFreedom", "iterations")) {
            assertThat(statistics.path(key).isNumber()).as(key).isTrue();
        }
        assertThat(statistics.path("stopReason").asText()).isEqualTo("converged");
        assertThat(json.at("/components/0/name").asText()).isEqualTo(NASTY);
        assertThat(json.at("/components/2/partnerOf").asText()).isEqualTo("second");
        assertThat(json.at("/components/0/parameters/lorentzianFwhm/held").asText())
                .isEqualTo("fixed");
        assertThat(json.at("/components/1/parameters/gaussianFwhm/held").asText())
                .isEqualTo("tied");
        assertThat(json.at("/model/format").asText()).isEqualTo("spotline-fit-model/1");
        assertThat(json.at("/areaCorrelations/0/correlation").isNumber()).isTrue();
    }

    @Test
    void whatIsNotKnownIsNull() {
        ObjectNode json = FitJson.of(report(false, 0));
        assertThat(json.at("/statistics/reducedChiSquare").isNull()).isTrue();
        assertThat(json.at("/components/0/areaU").isNumber()).isTrue();
    }

    @Test
    void monteCarloIsToldWhereItWasAskedFor() {
        FitReport report = report(true, 20);
        assertThat(FitJson.of(report).at("/monteCarlo/draws").asInt()).isEqualTo(20);
        assertThat(String.join("\n", FitText.of(report))).contains("20 Monte-Carlo draws");
        assertThat(FitJson.of(report(true, 0)).has("monteCarlo")).isFalse();
    }

    @Test
    void textGivesEachComponentARowWithItsUncertainty() {
        List<String> lines = FitText.of(report(true, 0));
        assertThat(lines.get(0)).contains("block 3", "C 1s", "Shirley");
        assertThat(lines).anyMatch(l -> l.startsWith("second ") && l.contains(" \u00b1 "));
        assertThat(lines).anyMatch(l -> l.contains("reduced chi-square") && l.contains("von Neumann"));
        assertThat(FitText.of(report(false, 0))).anyMatch(l -> l.startsWith("sum of squares"));
    }

    @Test
    void theDrawingIsWellFormedAndEscaped() throws Exception {
        FitReport report = report(true, 0);
        String svg = FitFigure.svg(report);
        Document document = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
        assertThat(document.getDocumentElement().getTagName()).isEqualTo("svg");
        assertThat(document.getElementsByTagName("script").getLength()).isZero();
        List<String> texts = texts(document);
        assertThat(texts).anyMatch(t -> t.startsWith("C 1s, odd & <file>.txt, block 3"));
        assertThat(texts).anyMatch(t -> t.startsWith(NASTY.substring(0, 20)));
        assertThat(texts).contains("measured counts", "fitted sum");
        assertThat(texts)
                .anyMatch(t -> t.startsWith("background: "))
                .anyMatch(t -> t.startsWith("Binding energy (eV)"));
        assertThat(document.getElementsByTagName("title").getLength()).isOne();
        assertThat(FitFigure.svg(report(true, 0))).as("the same every time").isEqualTo(svg);
    }

    /** Long descriptions of backgrounds and long names were cut off at the edge. */
    @Test
    void noEntryOfTheKeyRunsOverTheEdge() throws Exception {
        Document document = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(FitFigure.svg(report(true, 0)).getBytes(StandardCharsets.UTF_8)));
        NodeList nodes = document.getDocumentElement().getChildNodes();
        StringBuilder key = new StringBuilder();
        for (int i = 0; i < nodes.getLength(); i++) {
            if (!(nodes.item(i) instanceof Element e) || !e.getTagName().equals("text")) continue;
            String text = e.getTextContent();
            // at 11 px no common sans-serif face is wider than 6.4 px a character on average; common practice, no
            // source
            assertThat(Integer.parseInt(e.getAttribute("x")) + 6.4 * text.length())
                    .as(text)
                    .isLessThanOrEqualTo(640);
            key.append(text).append(' ');
        }
        assertThat(key).contains("iterative Shirley", "fitted along");
    }

    private static List<String> texts(Document document) {
        NodeList nodes = document.getElementsByTagName("text");
        List<String> texts = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++)
            texts.add(((Element) nodes.item(i)).getTextContent().strip());
        return texts;
    }
}
