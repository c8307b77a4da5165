package spotline.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import spotline.analysis.quantify.Basis;
import spotline.core.Work;
import spotline.reference.Line;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;

/** Two spots of one sample; under the O 1s line of one of them the counts fall, so that no Shirley background exists. */
class ReplicateBackgroundsTest {
    private static final ReplicateBackgrounds.LineOn OXYGEN =
            new ReplicateBackgrounds.LineOn(Basis.NARROW, Line.parse("O 1s"));

    private final SpotTreatment treatment = new SpotTreatment(ReferenceData.shipped());
    private final SpotInput usual = SimulatedHolder.draw(
                    ReferenceData.shipped(), 1, new SimulatedHolder.Spread(0, false))
            .input();
    private final List<SpotInput> inputs = List.of(usual, falling(usual));

    private static SpotInput falling(SpotInput input) {
        List<LinkedSpectrum> spectra = new ArrayList<>();
        for (LinkedSpectrum s : input.spectra()) {
            if (!s.label().equals("O 1s")) {
                spectra.add(s);
                continue;
            }
            BindingScan scan = s.scan();
            double[] counts = new double[scan.channels()];
            double[] energy = new double[scan.channels()];
            for (int i = 0; i < counts.length; i++) {
                energy[i] = scan.energy(i);
                counts[i] = scan.counts(i) + 5 * (counts.length - i);
            }
            spectra.add(new LinkedSpectrum(
                    s.label(),
                    s.source(),
                    s.region(),
                    s.survey(),
                    s.role(),
                    new BindingScan(
                            scan.label(),
                            scan.photonEnergyEv(),
                            energy,
                            counts,
                            true,
                            scan.secondsPerChannel(),
                            scan.passEnergyEv()),
                    s.transmission(),
                    s.time()));
        }
        return input.withSpectra(spectra);
    }

    private List<SpotResult> treat(List<SpotInput> all) {
        return all.stream().map(i -> treatment.treat(i, Work.UNWATCHED)).toList();
    }

    private static String background(SpotResult result, String line) {
        return result.intensities().stream()
                .filter(m -> m.intensity().line().toString().equals(line))
                .findFirst()
                .orElseThrow()
                .intensity()
                .background();
    }

    @Test
    void whereOneSpotFallsBackAllDo() {
        List<SpotResult> first = treat(inputs);
        assertThat(background(first.get(0), "O 1s")).contains("Shirley");
        assertThat(background(first.get(1), "O 1s")).contains("linear");
        List<SpotInput> alike = ReplicateBackgrounds.alike(inputs, first);
        assertThat(alike).allSatisfy(i -> assertThat(i.fallbackLines()).containsExactly(OXYGEN));
        List<SpotResult> again = treat(alike);
        assertThat(again).allSatisfy(r -> assertThat(background(r, "O 1s")).contains("linear"));
        assertThat(again).allSatisfy(r -> assertThat(background(r, "C 1s")).contains("Shirley"));
        assertThat(again.get(0).findings())
                .anyMatch(f ->
                        f.rule().equals("background-fallback") && f.message().contains("every spot of this sample"));
        assertThat(ReplicateBackgrounds.different(alike, again)).isEmpty();
    }

    @Test
    void spotsThatAgreeStayAsTheyAre() {
        List<SpotInput> same = List.of(usual, usual);
        assertThat(ReplicateBackgrounds.alike(same, treat(same))).isEqualTo(same);
    }

    @Test
    void whatStaysDifferentIsSaid() {
        assertThat(ReplicateBackgrounds.different(inputs, treat(inputs)))
                .singleElement()
                .satisfies(f -> assertThat(f.rule()).isEqualTo("backgrounds-differ"));
    }
}
