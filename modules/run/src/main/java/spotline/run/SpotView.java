package spotline.run;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedSet;
import java.util.TreeSet;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.LineSeen;
import spotline.analysis.identify.Verdict;
import spotline.analysis.quantify.Quantified;
import spotline.core.Estimate;
import spotline.holder.Sample;
import spotline.holder.Spot;
import spotline.reference.Elements;
import spotline.reference.Line;
import spotline.reference.MountMaterial;
import spotline.reference.ReferenceData;

/**
 * A spot as a rule sees it: what was declared, what was measured, what came of it.
 *
 * @param treatment the settings in force there
 * @param mountMaterials what its mount may put into a spectrum, of the published table
 */
public record SpotView(Spot spot, SpotResult result, Treatment treatment, List<MountMaterial> mountMaterials) {
    /** Counting must tell an amount from nothing by so many standard uncertainties. */
    private static final double CLEAR = 3;

    public SpotView {
        mountMaterials = List.copyOf(mountMaterials);
    }

    static SpotView of(Spot spot, SpotResult result, Treatment treatment, ReferenceData reference) {
        List<String> ids = spot.mount().markerMaterials();
        return new SpotView(
                spot,
                result,
                treatment,
                reference.mountMaterials().stream()
                        .filter(m -> ids.contains(m.id()))
                        .toList());
    }

    public String id() {
        return spot.id();
    }

    /** Elements that the sample's record expects, H and He left out as no spectrum shows them. */
    public SortedSet<String> declared() {
        SortedSet<String> symbols = new TreeSet<>();
        for (String symbol : spot.sample().map(Sample::expectedElements).orElse(List.of())) {
            if (Elements.bySymbol(symbol).filter(e -> e.z() > 2).isPresent()) symbols.add(symbol);
        }
        return symbols;
    }

    /** Elements whose marker lines the mount's materials bring. */
    public SortedSet<String> mountElements() {
        SortedSet<String> symbols = new TreeSet<>();
        for (MountMaterial material : mountMaterials) {
            material.markers().forEach(m -> symbols.add(m.line().element()));
        }
        return symbols;
    }

    public boolean mountedWith(String material) {
        return mountMaterials.stream().anyMatch(m -> m.id().equals(material));
    }

    /** Surely in the survey, or measured above three standard uncertainties of counting in a narrow scan. */
    public boolean shows(String element) {
        boolean surely =
                seen(element).filter(e -> e.verdict() == Verdict.PRESENT).isPresent();
        return surely
                || row(element)
                        .filter(r -> r.atomicPercent().isPresent()
                                && r.statisticalU().isPresent())
                        .filter(r -> r.atomicPercent().get().value()
                                > CLEAR * r.statisticalU().getAsDouble())
                        .isPresent();
    }

    public SortedSet<String> elements() {
        SortedSet<String> symbols = new TreeSet<>();
        result.identification().ifPresent(i -> i.elements().forEach(e -> symbols.add(e.element())));
        result.composition().forEach(r -> symbols.add(r.element()));
        symbols.removeIf(symbol -> !shows(symbol));
        return symbols;
    }

    /** Shown though the record expects other elements only. */
    public boolean showsUndeclared(String element) {
        return !declared().isEmpty() && !declared().contains(element) && shows(element);
    }

    public Optional<ElementSeen> seen(String element) {
        return result.identification().flatMap(i -> i.element(element));
    }

    public Optional<Quantified> row(String element) {
        return result.composition().stream()
                .filter(r -> r.element().equals(element))
                .findFirst();
    }

    public Optional<Estimate> atomicPercent(String element) {
        return row(element).flatMap(Quantified::atomicPercent);
    }

    /** 0 where the element has no number. */
    public double percent(String element) {
        return atomicPercent(element).map(Estimate::value).orElse(0.0);
    }

    /** Where an element's line stands as measured, eV: in a narrow scan, else in the survey. */
    public OptionalDouble measuredEv(Line line) {
        for (MeasuredIntensity i : result.intensities()) {
            if (i.intensity().line().whole().equals(line.whole())
                    && i.intensity().detected()) {
                return OptionalDouble.of(i.intensity().peakEv());
            }
        }
        for (LineSeen l : seen(line.element()).map(ElementSeen::lines).orElse(List.of())) {
            boolean same = Line.find(l.line())
                    .filter(found ->
                            found.high().equals(line.high()) || found.whole().equals(line))
                    .isPresent();
            if (same) return OptionalDouble.of(l.energyEv());
        }
        return OptionalDouble.empty();
    }

    /** The same on the referenced scale. */
    public OptionalDouble referencedEv(Line line) {
        OptionalDouble measured = measuredEv(line);
        return measured.isPresent() ? result.charge().referenced(measured.getAsDouble()) : OptionalDouble.empty();
    }

    /** Distance to another spot, mm. */
    public OptionalDouble distanceMm(SpotView other) {
        if (spot.position().isEmpty() || other.spot.position().isEmpty()) return OptionalDouble.empty();
        return OptionalDouble.of(Math.hypot(
                spot.position().get().x() - other.spot.position().get().x(),
                spot.position().get().y() - other.spot.position().get().y()));
    }
}
