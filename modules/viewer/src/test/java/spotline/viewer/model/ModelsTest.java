package spotline.viewer.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import spotline.analysis.charge.ChargeMethod;
import spotline.analysis.charge.ChargeVerdict;
import spotline.analysis.identify.Verdict;
import spotline.analysis.quantify.Basis;
import spotline.core.Severity;
import spotline.holder.HolderPlan;
import spotline.holder.HolderRunReader;
import spotline.holder.HolderTemplates;

class ModelsTest {
    @Test
    void theDemoHolderIsPicturedToScale() throws Exception {
        HolderPlan plan = HolderPlan.of(HolderRunReader.read(Bench.DEMO));
        HolderPicture picture = HolderPicture.of(plan, HolderTemplates.of(plan.file(), Bench.DEMO), Bench.WORDS);
        assertThat(picture.spots()).hasSize(6).allMatch(HolderPicture.SpotPlace::placed);
        assertThat(picture.pieces()).hasSize(5);
        assertThat(picture.widthMm()).isGreaterThan(100);
        assertThat(picture.spots().get(0).at().x()).isEqualTo(13.5);
        assertThat(picture.spots().get(0).footprint()).isPresent();
    }

    @Test
    void arrowsLeadToTheNearestSpot() throws Exception {
        HolderPlan plan = HolderPlan.of(HolderRunReader.read(Bench.DEMO));
        HolderPicture picture = HolderPicture.of(plan, Optional.empty(), Bench.WORDS);
        assertThat(picture.neighbour("1", 1, 0)).isEqualTo("2");
        assertThat(picture.neighbour("5", 1, 0)).isEqualTo("6");
        assertThat(picture.neighbour("1", -1, 0)).isEqualTo("1");
        assertThat(picture.neighbour("6", 0, 1)).isEqualTo("5");
    }

    @Test
    void spotsWithoutAPlaceStandBelowTheHolder() throws Exception {
        HolderPlan plan =
                HolderPlan.of(HolderRunReader.read("h", """
                { "format": "spotline-holder-run/1", "spots": [ { "id": "a" }, { "id": "b" } ] }
                """.getBytes(java.nio.charset.StandardCharsets.UTF_8)));
        HolderPicture picture = HolderPicture.of(plan, Optional.of(HolderTemplates.shipped("flat-bar")), Bench.WORDS);
        assertThat(picture.spots()).noneMatch(HolderPicture.SpotPlace::placed);
        assertThat(picture.spots()).allMatch(s -> s.at().y() < 0 && s.at().y() > picture.lowY());
        assertThat(picture.neighbour("a", 1, 0)).isEqualTo("b");
    }

    @Test
    void aDifferenceIsTakenWhereBothCurvesAre() {
        Curve a = new Curve("a", new double[] {1, 2, 3, 4}, new double[] {10, 20, 30, 40});
        Curve b = new Curve("b", new double[] {1.5, 2.5, 3.5}, new double[] {15, 25, 35});
        Curve rest = a.minus(b);
        assertThat(rest.energies()).containsExactly(2, 3);
        assertThat(rest.values()).containsExactly(new double[] {0, 0}, within(1e-12));
        assertThat(a.shifted(0.5).energy(0)).isEqualTo(1.5);
        assertThat(a.times(2).value(3)).isEqualTo(80);
        assertThat(a.span()).isEqualTo(30);
    }

    @Test
    void everyIdentifierHasItsWord() {
        Stream.of(
                        Stream.of(ChargeVerdict.values()).map(ChargeVerdict::word),
                        Stream.of(ChargeMethod.values()).map(ChargeMethod::word),
                        Stream.of(Verdict.values()).map(Verdict::word),
                        Stream.of(Basis.values()).map(Basis::word),
                        Stream.of(Severity.values()).map(Severity::word))
                .flatMap(words -> words)
                .forEach(word -> assertThat(Bench.WORDS.word(word)).isNotBlank().doesNotContain("-"));
    }

    @Test
    void noScanLiesOnAnother() {
        try (Bench bench = new Bench().demo()) {
            for (SpotFace face : bench.workbench.faces()) {
                bench.workbench.choose(face.id(), false);
                List<ScanLanes.Interval> all = bench.workbench.lanes().intervals();
                assertThat(all).isNotEmpty();
                for (ScanLanes.Interval i : all) {
                    assertThat(all)
                            .noneMatch(o ->
                                    o != i && o.lane() == i.lane() && o.lowEv() < i.highEv() && i.lowEv() < o.highEv());
                }
            }
            CompositionGrid grid = CompositionGrid.of(
                    bench.workbench.result().get().orElseThrow(),
                    bench.workbench.past().exceptions(),
                    Bench.WORDS);
            assertThat(grid.rows()).hasSize(7);
            assertThat(grid.elements()).startsWith("C", "O", "F");
            CompositionGrid.Row mean = grid.rows().stream()
                    .filter(r -> r.spot().isEmpty())
                    .findFirst()
                    .orElseThrow();
            assertThat(mean.sample()).isEqualTo("titanium dioxide pigment");
            assertThat(mean.cells().get(grid.elements().indexOf("Ti")).text()).contains("\u00b1");
            ChargeOverview charge =
                    ChargeOverview.of(bench.workbench.result().get().orElseThrow(), Bench.WORDS);
            assertThat(charge.rows()).hasSize(6).allMatch(r -> r.scan().isPresent());
            assertThat(charge.rows().get(3).shift()).isEqualTo("none needed");
        }
    }
}
