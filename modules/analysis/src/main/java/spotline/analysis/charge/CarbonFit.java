package spotline.analysis.charge;

import java.util.Optional;
import spotline.core.Work;
import spotline.reference.Line;
import spotline.spectra.BindingScan;

final class CarbonFit {
    static Optional<ReferenceLineFit> hydrocarbon(BindingScan scan, double expectedEv, Work work) {
        return Optional.empty();
    }

    static Optional<ReferenceLineFit> strongest(Line line, BindingScan scan, Work work) {
        return Optional.empty();
    }
}
