package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.analysis.charge.ChargeEvidence.Candidate;
import spotline.analysis.charge.ChargeEvidence.TwoPotentials;
import spotline.analysis.charge.ChargeEvidence.UnmovedLine;
import spotline.core.Finding;

/** What a spot's own evidence speaks against a shift. */
final class EvidenceDoubts {
    private final List<Finding> findings;

    EvidenceDoubts(List<Finding> findings) {
        this.findings = findings;
    }

    List<String> of(ChargeReference decided, ChargeEvidence evidence) {
        List<String> doubts = new ArrayList<>();
        for (UnmovedLine u : evidence.unmoved()) {
            doubts.add(u.line() + " stands at its metal energy without the shift");
            findings.add(Finding.caution(
                            "metal-line-unmoved",
                            Decision.ev(
                                    "%s at %.2f eV as measured in a spot shifted by %+.2f eV: %s is grounded hardware, not"
                                            + " sample.",
                                    u.line(),
                                    u.measuredEv(),
                                    decided.shiftEv().orElse(0),
                                    u.line().element()))
                    .in(u.spectrum()));
        }
        evidence.check().flatMap(c -> disagrees(decided, c)).ifPresent(doubts::add);
        evidence.shape()
                .filter(TwoPotentials::asked)
                .filter(t -> decided.fit().isPresent())
                .ifPresent(t -> doubts.add(twoPotentials(t, decided)));
        evidence.rigidity().filter(r -> !r.together()).ifPresent(r -> {
            doubts.add(Decision.ev("lines measured twice moved apart by %.2f eV", r.largestEv()));
            findings.add(Finding.caution(
                    "differential-charging",
                    Decision.ev(
                            "Lines measured twice moved by %+.2f eV on average, yet one departs from that by %.2f eV:"
                                    + " differential charging likely.",
                            r.meanEv(), r.largestEv())));
        });
        return doubts;
    }

    private String twoPotentials(TwoPotentials t, ChargeReference decided) {
        String spectrum = decided.fit().map(ReferenceLineFit::spectrum).orElse("");
        if (t.byWidth()) {
            double fwhm = decided.fit().orElseThrow().reference().fwhm().value();
            findings.add(Finding.caution(
                            "differential-charging",
                            Decision.ev(
                                    "%s is %.2f eV wide, wider than one potential usually leaves it, and no width of it on an"
                                            + " uncharged surface is stated: differential charging likely.",
                                    decided.referenceLine(), fwhm))
                    .in(spectrum));
            return Decision.ev("%s, %.2f eV wide, is likely at two potentials", decided.referenceLine(), fwhm);
        }
        findings.add(Finding.caution(
                        "differential-charging",
                        Decision.ev(
                                "%s is better described at two potentials %.2f eV apart (deviance lower by %.0f):"
                                        + " differential charging likely.",
                                decided.referenceLine(), t.separationEv(), t.devianceGain()))
                .in(spectrum));
        return Decision.ev("%s asks for two potentials %.2f eV apart", decided.referenceLine(), t.separationEv());
    }

    private Optional<String> disagrees(ChargeReference decided, Candidate c) {
        double difference = c.shiftEv() - decided.shiftEv().orElse(0);
        double u = Math.hypot(
                decided.standardUncertainty().orElse(0), c.standardUncertainty().orElse(0));
        if (Math.abs(difference) <= 2 * u) return Optional.empty();
        findings.add(Finding.caution(
                        "references-disagree",
                        Decision.ev(
                                "%s says %+.2f eV, %s set to %.2f eV says %+.2f eV: two references, differing by %.2f +/-"
                                        + " %.2f eV.",
                                decided.referenceLine(),
                                decided.shiftEv().orElse(0),
                                c.line(),
                                c.referenceEv(),
                                c.shiftEv(),
                                Math.abs(difference),
                                u))
                .in(c.spectrum()));
        return Optional.of(Decision.ev(
                "%s gives %+.2f eV, %.2f +/- %.2f eV from it", c.line(), c.shiftEv(), Math.abs(difference), u));
    }
}
