package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import spotline.core.Work;
import spotline.reference.Element;
import spotline.reference.Elements;
import spotline.reference.ReferenceData;
import spotline.reference.XraySatellite;
import spotline.reference.XraySource;
import spotline.spectra.BindingScan;
import spotline.spectra.Transmission;

/**
 * Finds the elements of a survey by all their lines together.
 *
 * <p>Every element whose main line falls on a peak is a candidate. Its other lines are expected with areas in proportion
 * to cross section, mean free path and transmission: a candidate whose expected lines are missing is dropped. Candidates
 * then claim peaks in the order of their evidence, and one that rests on a peak already claimed is dropped too.
 *
 * <p>Shape: a survey in, elements and unassigned peaks out. Units: eV. Errors: none; a survey without peaks has no
 * elements.
 *
 * <p>Source: common practice, no source; second-line rule ISO 10810 idea.
 */
public final class SurveyIdentification {
    private static final int LIGHTEST = 3;
    private static final int HEAVIEST = 92;
    private static final double SHIFT_STEP = 0.25;
    private static final double SOURCE_AGREEMENT = 0.5;

    private final ReferenceData reference;
    private final IdentifySettings settings;

    public SurveyIdentification(ReferenceData reference, IdentifySettings settings) {
        this.reference = reference;
        this.settings = settings;
    }

    /**
     * @param declared symbols the record expects: a prior for the shift and for doubtful cases, never a proof
     * @param knownShiftEv shift to be used, eV; empty to search for it
     */
    public Identification identify(
            BindingScan survey,
            Transmission transmission,
            Set<String> declared,
            OptionalDouble knownShiftEv,
            boolean monochromated,
            Work work) {
        List<SurveyPeak> peaks = new PeakSearch(settings.peakFwhmEv(), settings.minimumSignificance()).find(survey);
        CandidateMaker maker = new CandidateMaker(reference, settings, survey, transmission, peaks);
        double shift = knownShiftEv.isPresent() ? knownShiftEv.getAsDouble() : searchShift(maker, peaks, declared);
        work.check();
        List<Candidate> candidates = new ArrayList<>();
        for (Element element : Elements.all()) {
            if (element.z() < LIGHTEST || element.z() > HEAVIEST) continue;
            maker.candidate(element, shift).filter(Candidate::credible).ifPresent(candidates::add);
        }
        work.check();
        return claim(candidates, peaks, survey, shift, declared, monochromated);
    }

    private double searchShift(CandidateMaker maker, List<SurveyPeak> peaks, Set<String> declared) {
        Set<String> anchors = new TreeSet<>(declared);
        anchors.add("C");
        anchors.add("O");
        double best = 0;
        double bestScore = 0;
        int first = (int) Math.ceil(settings.lowestShiftEv() / SHIFT_STEP);
        int last = (int) Math.floor(settings.highestShiftEv() / SHIFT_STEP);
        for (int i = first; i <= last; i++) {
            double shift = i * SHIFT_STEP;
            double score = 0;
            for (String symbol : anchors) score += maker.anchorScore(symbol, shift, peaks);
            // Of equal scores the smaller shift is the likelier one.
            score *= 1 - 0.002 * Math.abs(shift);
            if (score > bestScore) {
                bestScore = score;
                best = shift;
            }
        }
        return best;
    }

    private Identification claim(
            List<Candidate> candidates,
            List<SurveyPeak> peaks,
            BindingScan survey,
            double shift,
            Set<String> declared,
            boolean monochromated) {
        ClaimedPeaks claimed = new ClaimedPeaks(peaks, monochromated ? List.of() : satellites(survey.photonEnergyEv()));
        List<Candidate> waiting = new ArrayList<>(candidates);
        waiting.sort(Comparator.comparingDouble((Candidate c) -> -c.weight(declared.contains(c.element()))));
        List<ElementSeen> elements = new ArrayList<>();
        for (Candidate candidate : waiting) {
            boolean isDeclared = declared.contains(candidate.element());
            Optional<ElementSeen> seen = candidate.judge(claimed, isDeclared);
            if (seen.isPresent()) {
                elements.add(seen.get());
                claimed.claim(candidate);
            }
        }
        elements.sort(Comparator.comparingInt(
                e -> Elements.bySymbol(e.element()).orElseThrow().z()));
        return new Identification(elements, shift, claimed.unclaimed());
    }

    /** Satellites of the source with this photon energy; none of a source that has no table of them. */
    private List<XraySatellite> satellites(double photonEnergyEv) {
        for (String name : List.of("Al Ka", "Mg Ka")) {
            Optional<XraySource> source = reference.source(name, false);
            if (source.isPresent() && Math.abs(source.get().photonEnergyEv() - photonEnergyEv) < SOURCE_AGREEMENT) {
                return reference.satellites(source.get());
            }
        }
        return List.of();
    }
}
