package spotline.formats.iso14976;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import spotline.core.Finding;

/** The expected fields stand beside the values in the resources: ISO 14976:1998, field order from memory. */
class GoldenFilesTest {
    private static Real real(double value) {
        return Real.of(value);
    }

    @Test
    void depthProfileHeader() throws Exception {
        ExperimentHeader header =
                Golden.parse(Golden.file("depth-profile.txt")).experiment().header();
        assertThat(header)
                .isEqualTo(new ExperimentHeader(
                        ExperimentHeader.FORMAT_IDENTIFIER,
                        "an institution",
                        "a model",
                        "an operator",
                        "a depth profile",
                        List.of("invented for a test", "  indented, kept word for word "),
                        ExperimentMode.SDP,
                        ScanMode.REGULAR,
                        Optional.of(real(2)),
                        Optional.empty(),
                        List.of(new Variable("etch time", "s")),
                        new InclusionList(true, List.of(8, 12, 37)),
                        List.of(3, 15),
                        List.of("entry of a later edition"),
                        2));
    }

    @Test
    void depthProfileBlocks() throws Exception {
        Iso14976Parser.Parsed parsed = Golden.parse(Golden.file("depth-profile.txt"));
        List<ExperimentBlock> blocks = parsed.experiment().blocks();
        AnalysisSource source = new AnalysisSource(
                "Al Ka mono",
                Optional.of(new ProbeParticle(real(18), real(1), real(1))),
                real(1486.6),
                real(150),
                real(500),
                real(400),
                Optional.empty(),
                Optional.empty(),
                real(54.7),
                real(90));
        AnalyserSettings analyser = new AnalyserSettings(
                "FAT",
                real(20),
                Optional.empty(),
                real(1),
                real(4.4),
                real(0),
                real(300),
                real(700),
                real(30),
                real(90));
        SputteringSource sputtering =
                new SputteringSource(real(1000), real(250), real(2000), real(2001), real(45), real(180), "cyclic");
        assertThat(blocks.get(0))
                .isEqualTo(new ExperimentBlock(
                        "level 0",
                        "a sample",
                        new BlockTime(real(2024), real(2), real(29), real(23), real(5), real(7.5), real(-3.5)),
                        List.of("a comment of the block"),
                        Technique.XPS,
                        Optional.empty(),
                        List.of(real(0)),
                        source,
                        analyser,
                        "Si",
                        "2p",
                        real(-1),
                        Optional.of(new Abscissa("Binding Energy", "eV", real(105), real(-0.5))),
                        List.of(new Variable("counts", "d"), new Variable("transmission function", "d")),
                        new Signal("pulse counting", real(0.1), real(5), real(7e-8)),
                        Optional.of(sputtering),
                        new SampleOrientation(real(10), real(90), Real.UNKNOWN),
                        List.of(new AdditionalParameter("pressure", "mbar", real(2e-9))),
                        List.of("first later entry", "second later entry"),
                        Ordinates.ofVariables(List.of(new double[] {10, 30, 20}, new double[] {0.5, 0.6, 0.7}))));

        // Left out by the list: kept from the block before.
        assertThat(blocks.get(1).comments()).isEqualTo(blocks.get(0).comments());
        assertThat(blocks.get(1).source()).isEqualTo(source);
        assertThat(blocks.get(1).sputtering()).contains(sputtering);
        assertThat(blocks.get(1).analyser().mode()).isEqualTo("FRR");
        assertThat(blocks.get(1).ordinates()).isEqualTo(Ordinates.ofVariables(List.of(new double[] {12.5, 8})));

        // SIMS carries no item 37, and its particle is the probe.
        assertThat(blocks.get(2).technique()).isEqualTo(Technique.SIMS);
        assertThat(blocks.get(2).sputtering()).isEmpty();
        assertThat(blocks.get(2).source().particle()).contains(new ProbeParticle(real(18), real(2), real(-1)));
        assertThat(blocks.get(2).source().label()).isEqualTo("Al Ka mono");
        assertThat(blocks.get(2).futureEntries()).containsExactly("fifth later entry", "sixth later entry");
        assertThat(parsed.blockLines()).containsExactly(26, 101, 155);
        assertThat(parsed.warnings()).isEmpty();
    }

    @Test
    void imageOverDepth() throws Exception {
        Iso14976Parser.Parsed parsed = Golden.parse(Golden.file("image.txt"));
        assertThat(parsed.experiment().header().inclusion()).isEqualTo(new InclusionList(false, List.of(1, 2, 9, 13)));
        assertThat(parsed.experiment().header().spectralRegions()).isEmpty();
        List<ExperimentBlock> blocks = parsed.experiment().blocks();
        assertThat(blocks.get(0).source().fieldOfView()).contains(new FieldOfView(real(100), real(80)));
        assertThat(blocks.get(0).source().linescan())
                .contains(new Linescan(real(-50), real(40), real(50), real(41), real(50), real(-40)));
        assertThat(blocks.get(0).abscissa()).isEmpty();
        assertThat(blocks.get(0).time()).isEqualTo(BlockTime.UNKNOWN);
        assertThat(blocks.get(0).sputtering().orElseThrow().mode()).isEqualTo("continuous");

        assertThat(blocks.get(1).time().year()).isEqualTo(real(2024));
        assertThat(blocks.get(1).time().day()).isEqualTo(Real.UNKNOWN);
        assertThat(blocks.get(1).analyser().differentialWidth()).contains(Real.UNKNOWN);
        assertThat(blocks.get(1).source().particle()).contains(new ProbeParticle(real(10), real(1), real(1)));
        assertThat(blocks.get(1).source().linescan())
                .isEqualTo(blocks.get(0).source().linescan());
        assertThat(blocks.get(1).species()).isEqualTo("Cu");
        assertThat(blocks.get(1).ordinates()).isEqualTo(Ordinates.ofVariables(List.of(new double[] {5, -2, 0, 1})));

        assertThat(blocks.get(2).analyser().differentialWidth()).isEmpty();
        assertThat(blocks.get(2).sputtering()).isEmpty();
        assertThat(blocks.get(2).ordinates().size()).isZero();
        assertThat(parsed.warnings())
                .singleElement()
                .extracting(Finding::rule, Finding::message)
                .containsExactly(
                        "iso14976-item-never-given",
                        "test.vms:92: the inclusion or exclusion list leaves out differential width, which the block"
                                + " before does not have; it is taken as not known");
    }

    @Test
    void irregularMap() throws Exception {
        Iso14976Parser.Parsed parsed = Golden.parse(Golden.file("irregular-map.txt"));
        assertThat(parsed.experiment().header().mapExtent()).contains(new MapExtent(real(4), real(2), real(3)));
        ExperimentBlock block = parsed.experiment().blocks().get(0);
        assertThat(block.mapPosition()).contains(new MapPosition(real(2), real(3)));
        assertThat(block.analyser().differentialWidth()).contains(real(2.5));
        assertThat(block.source().fieldOfView()).contains(new FieldOfView(real(100), real(80)));
        assertThat(block.source().linescan()).isEmpty();
        assertThat(block.abscissa()).isEmpty();
        assertThat(block.ordinates().variable(0)).containsExactly(900, 905, 921);
        assertThat(block.ordinates().variable(1)).containsExactly(8, -7, 0);
        assertThat(block.ordinates().variable(2)).containsExactly(1, 2, 3);
        assertThat(parsed.warnings()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"depth-profile.txt", "image.txt", "irregular-map.txt"})
    void writtenAsTheyWere(String name) throws Exception {
        Experiment experiment = Golden.parse(Golden.file(name)).experiment();
        String expected = Golden.file(name).replace("7e-8", "7E-8").replace("2e-9", "2E-9");
        assertThat(Iso14976Writer.text(experiment)).isEqualTo(expected);
    }

    @ParameterizedTest
    @ValueSource(strings = {"depth-profile.txt", "image.txt", "irregular-map.txt"})
    void lineEndsMakeNoDifference(String name) throws Exception {
        String text = Golden.file(name);
        Iso14976Parser.Parsed parsed = Golden.parse(text);
        Iso14976Parser.Parsed crLf = Golden.parse(text.replace("\n", "\r\n"));
        assertThat(crLf).isEqualTo(parsed);
        Iso14976Parser.Parsed open = Golden.parse(text.stripTrailing());
        assertThat(open).isEqualTo(parsed);
    }
}
