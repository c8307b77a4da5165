package spotline.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import spotline.analysis.intensity.LineTarget;
import spotline.reference.Doublet;
import spotline.reference.Element;
import spotline.reference.Elements;
import spotline.reference.EnergyRange;
import spotline.reference.LevelEnergy;
import spotline.reference.Line;
import spotline.reference.LineData;
import spotline.reference.NaturalWidth;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/** Which line a narrow scan was taken of, and where on its measured scale that line may lie. */
final class LineAssignment {
    private static final Pattern LABEL = Pattern.compile("([A-Z][a-z]?) ?([1-7][spdf](?:[1357]/2)?)");
    /** A line's first peak must lie at least this far inside the scan, eV. */
    private static final double INSIDE = 1.5;
    /** A doublet partner counts as measured when the scan goes on this far above it, eV. */
    private static final double ABOVE_PARTNER = 2.5;

    /** A foreign line of a smaller cross section, relative to the own line's, is no boundary. Common practice, no source. */
    private static final double SMALLEST_FOREIGN = 0.05;

    private final ReferenceData reference;
    private final SortedSet<String> elements;
    private final SortedSet<String> unseen;
    private final QuantifySettings.Doublets doublets;
    private final double toleranceEv;

    /**
     * @param elements declared or seen at the spot
     * @param unseen those of them that the survey does not show: their lines bound no other line's window
     */
    LineAssignment(
            ReferenceData reference,
            SortedSet<String> elements,
            SortedSet<String> unseen,
            QuantifySettings.Doublets doublets,
            double toleranceEv) {
        this.reference = reference;
        this.elements = elements;
        this.unseen = unseen;
        this.doublets = doublets;
        this.toleranceEv = toleranceEv;
    }

    /** The line that a region's label names, whole. */
    Optional<Line> named(String region) {
        Matcher matcher = LABEL.matcher(region);
        while (matcher.find()) {
            Optional<Line> line = Line.find(matcher.group(1) + " " + matcher.group(2));
            if (line.isPresent()) return Optional.of(line.get().whole());
        }
        return Optional.empty();
    }

    /** The line of a scan: by its label, else the main line of a known element that lies inside it. */
    Optional<Line> lineOf(LinkedSpectrum spectrum, double shiftEv) {
        Optional<Line> named = named(spectrum.region());
        if (named.isPresent()) return named;
        List<Line> inside = new ArrayList<>();
        for (String symbol : elements) {
            Optional<Line> main = main(symbol, spectrum.scan().photonEnergyEv());
            if (main.isPresent() && target(main.get(), spectrum.scan(), shiftEv).isPresent()) inside.add(main.get());
        }
        return inside.size() == 1 ? Optional.of(inside.get(0)) : Optional.empty();
    }

    Optional<Line> main(String symbol, double photonEnergyEv) {
        Optional<Element> element = Elements.bySymbol(symbol);
        return element.flatMap(e -> reference.mainLine(e, photonEnergyEv));
    }

    /** Empty when the scan does not hold the line, or nothing is known of it. */
    Optional<LineTarget> target(Line whole, BindingScan scan, double shiftEv) {
        Optional<LevelEnergy> level = reference.bindingEnergy(whole.high());
        if (level.isEmpty()) return Optional.empty();
        EnergyRange states = states(whole.high(), level.get().valueEv(), scan.photonEnergyEv());
        Window range = scan.range();
        double expected = level.get().valueEv() - shiftEv;
        double low = Math.max(range.lowEv() + INSIDE, Math.min(expected, states.lowEv() - shiftEv - toleranceEv));
        double high = Math.min(range.highEv() - INSIDE, Math.max(expected, states.highEv() - shiftEv + toleranceEv));
        if (!(low < high)) return Optional.empty();
        double place = Math.max(low, Math.min(high, expected));
        Optional<Doublet> doublet = reference.doublet(whole, scan.photonEnergyEv());
        double splitting = doublet.map(Doublet::splittingEv).orElse(0.0);
        List<Double> foreign = foreign(whole, scan, shiftEv);
        if (splitting == 0) {
            return Optional.of(new LineTarget(whole, low, high, place, 0, foreign, widths(whole, 0)));
        }
        boolean both = doublets.takesWhole(whole, splitting) && range.highEv() >= place + splitting + ABOVE_PARTNER;
        if (!both) high = Math.min(high, Math.max(place, expected + splitting - INSIDE));
        double ratio = both ? doublet.map(Doublet::areaRatioLowToHigh).orElse(0.0) : 0;
        return Optional.of(new LineTarget(
                both ? whole : whole.high(), low, high, place, both ? splitting : 0, foreign, widths(whole, ratio)));
    }

    private Optional<LineTarget.Widths> widths(Line whole, double partnerRatio) {
        Optional<NaturalWidth> first = reference.naturalWidth(whole.high());
        if (first.isEmpty()) return Optional.empty();
        double partner = reference.naturalWidth(whole.low()).orElse(first.get()).fwhmEv();
        return Optional.of(new LineTarget.Widths(first.get().fwhmEv(), partner, partnerRatio));
    }

    /**
     * Where the other elements' lines fall inside a scan, on its measured scale. Those with a small cross section beside the
     * own line's, inner-valence levels for the most part, bound no window: they lie under it and are computed.
     */
    private List<Double> foreign(Line own, BindingScan scan, double shiftEv) {
        List<Double> energies = new ArrayList<>();
        double least = SMALLEST_FOREIGN
                * reference.crossSection(own.whole(), scan.photonEnergyEv()).orElse(0);
        for (String symbol : elements) {
            if (symbol.equals(own.element()) || unseen.contains(symbol)) continue;
            Element element = Elements.bySymbol(symbol).orElseThrow();
            for (LineData data : reference.lines(element, scan.photonEnergyEv())) {
                if (data.relativeCrossSection() < least) continue;
                for (Line member : data.members()) {
                    double at = reference
                                    .bindingEnergy(member)
                                    .map(LevelEnergy::valueEv)
                                    .orElse(Double.NaN)
                            - shiftEv;
                    if (scan.range().contains(at)) energies.add(at);
                }
            }
        }
        return energies;
    }

    /**
     * Binding energies that a line may have. Chemical shifts of an element's core levels are much alike, so a line without
     * listed states takes those of the main line.
     */
    private EnergyRange states(Line line, double levelEv, double photonEnergyEv) {
        EnergyRange own = reference.stateRange(line).orElse(new EnergyRange(levelEv, levelEv));
        Optional<Line> main = main(line.element(), photonEnergyEv).map(Line::high);
        if (own.highEv() > own.lowEv() || main.isEmpty()) return own;
        Optional<EnergyRange> mainStates = main.flatMap(reference::stateRange);
        Optional<LevelEnergy> mainLevel = main.flatMap(reference::bindingEnergy);
        if (mainStates.isEmpty() || mainLevel.isEmpty()) return own;
        double offset = levelEv - mainLevel.get().valueEv();
        return new EnergyRange(
                Math.min(levelEv, mainStates.get().lowEv() + offset),
                Math.max(levelEv, mainStates.get().highEv() + offset));
    }
}
