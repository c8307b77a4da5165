package spotline.demo.corpus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.HeaderDoubt;
import spotline.analysis.identify.Identification;
import spotline.analysis.identify.IdentifySettings;
import spotline.analysis.identify.SurveyIdentification;
import spotline.analysis.identify.Verdict;
import spotline.core.ReadException;
import spotline.core.Work;
import spotline.formats.SpectrumFiles;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;
import spotline.spectra.Ordinate;
import spotline.spectra.Spectrum;
import spotline.spectra.Transmission;

/** Measured surveys, where they lie beside the project. */
class RealSurveysTest {
    private static final Path FOLDER = Path.of("../../../shared/real-spectra");

    @BeforeEach
    void theFolderIsThere() {
        assumeThat(Files.isDirectory(FOLDER)).isTrue();
    }

    private static Identification identify(String file) throws ReadException {
        Spectrum spectrum = SpectrumFiles.open(FOLDER.resolve(file), file, Optional.empty())
                .block(1)
                .orElseThrow()
                .set()
                .spectrum(0);
        double photon = spectrum.acquisition().excitation().photonEnergyEv().orElseThrow();
        return new SurveyIdentification(ReferenceData.shipped(), new IdentifySettings(2.4, 5, -12, 10, 1))
                .identify(
                        BindingScan.of(spectrum, photon, file),
                        transmission(spectrum),
                        Set.of(),
                        OptionalDouble.empty(),
                        true,
                        Work.UNWATCHED);
    }

    /** These files have rising kinetic energies. */
    private static Transmission transmission(Spectrum spectrum) {
        Optional<double[]> recorded = spectrum.values(Ordinate.Kind.TRANSMISSION);
        if (recorded.isEmpty()) return new Transmission.Flat();
        double[] energy = new double[spectrum.axis().channels()];
        for (int i = 0; i < energy.length; i++) energy[i] = spectrum.axis().value(i);
        return new Transmission.Tabulated("recorded", energy, recorded.get());
    }

    private static List<String> present(Identification found) {
        return found.elements().stream()
                .filter(e -> e.verdict() == Verdict.PRESENT)
                .map(ElementSeen::element)
                .toList();
    }

    @Test
    void aluminiumFoilGivesAluminiumOxygenAndCarbon() throws ReadException {
        Identification found = identify("foil-grounded-survey.vms");
        assertThat(present(found)).containsExactly("C", "O", "Al");
        assertThat(found.detail().orElseThrow().doubts()).isEmpty();
    }

    @Test
    void tantalumGivesTantalumAndOxygen() throws ReadException {
        Identification found = identify("tantalum-survey-and-narrow.vms");
        assertThat(present(found)).containsExactly("O", "Ta");
        assertThat(found.detail().orElseThrow().doubts()).isEmpty();
    }

    @Test
    void aHeaderThatRunsTheScaleBackwardsIsFound() throws ReadException {
        Identification found = identify("kinetic-axis-four-regions.vms");
        assertThat(present(found)).isEmpty();
        List<HeaderDoubt> doubts = found.detail().orElseThrow().doubts();
        assertThat(doubts).hasSize(1);
        assertThat(doubts.get(0).kind()).isEqualTo(HeaderDoubt.Kind.AXIS_REVERSED);
        assertThat(doubts.get(0).asSuggested())
                .isGreaterThan(1.5 * doubts.get(0).asGiven());
    }
}
