package spotline.viewer.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import spotline.analysis.background.Shirley;
import spotline.analysis.peakfit.BackgroundModel;
import spotline.analysis.peakfit.ComponentModel;
import spotline.analysis.peakfit.DefaultModels;
import spotline.analysis.peakfit.DoubletRule;
import spotline.analysis.peakfit.FitModel;
import spotline.analysis.peakfit.FittedComponent;
import spotline.analysis.peakfit.FittedParameter;
import spotline.analysis.peakfit.ParameterRule;
import spotline.analysis.peakfit.PeakFit;
import spotline.analysis.peakfit.PeakFitResult;
import spotline.core.Finding;
import spotline.core.Outcome;
import spotline.core.Problem;
import spotline.core.Work;
import spotline.numerics.shape.Voigt;
import spotline.reference.Line;
import spotline.run.LineFit;
import spotline.run.LinkedSpectrum;
import spotline.run.SpotResult;
import spotline.run.document.Edit;
import spotline.run.document.Edits;
import spotline.run.fitmodel.FitModelWriter;
import spotline.spectra.Window;

/**
 * The fit model of the scan on the bench while it is worked on. Nothing of the run changes until it is kept; each change is
 * fitted at once and the newest wins.
 */
public final class FitEditor {
    private static final int ENDPOINTS = 5;
    private static final double REACH_EV = 1.5;

    /**
     * A parameter of a component.
     *
     * @param start where a free one starts, or the value of a fixed one; empty where it is guessed or follows another
     * @param leader the component that it follows; empty where it follows none
     * @param fitted as the last fit has it
     */
    public record Row(
            String component,
            String parameter,
            Holding holding,
            OptionalDouble start,
            double min,
            double max,
            String leader,
            OptionalDouble fitted,
            OptionalDouble u) {}

    /** What holds a parameter. */
    public enum Holding {
        FREE,
        FIXED,
        EQUAL,
        OFFSET,
        RATIO
    }

    private final Workbench bench;
    private final ObjectProperty<Optional<FitModel>> model = new SimpleObjectProperty<>(Optional.empty());
    private final ObjectProperty<Optional<PeakFitResult>> result = new SimpleObjectProperty<>(Optional.empty());
    private final StringProperty message = new SimpleStringProperty("");
    private final AtomicLong newest = new AtomicLong();
    private Optional<FitModel> first = Optional.empty();
    private Optional<Line> line = Optional.empty();
    private String spot = "";
    private String spectrum = "";

    FitEditor(Workbench bench) {
        this.bench = bench;
    }

    /** Takes up the scan on the bench: its fit, else the default model of its line, else an empty one. */
    public void begin() {
        Optional<SpotResult> now = bench.primary();
        Optional<LinkedSpectrum> scan =
                now.flatMap(s -> Workbench.scan(s, bench.spectrum().get()));
        end();
        if (now.isEmpty() || scan.isEmpty() || scan.get().survey()) return;
        line = lineOf(now.get(), scan.get());
        if (line.isEmpty()) {
            message.set("No line is known to be in this scan.");
            return;
        }
        spot = now.get().spot();
        spectrum = scan.get().label();
        Optional<LineFit> fit = now.get().fits().stream()
                .filter(f -> f.spectrum().equals(spectrum))
                .findFirst();
        first = Optional.of(fit.map(f -> f.result().model()).orElseGet(() -> start(now.get(), scan.get())));
        model.set(first);
        refit();
    }

    private static Optional<Line> lineOf(SpotResult spot, LinkedSpectrum scan) {
        return spot.intensities().stream()
                .filter(m -> m.intensity().spectrum().equals(scan.label()))
                .map(m -> m.intensity().line().whole())
                .findFirst()
                .or(() -> Line.find(scan.region()).map(Line::whole));
    }

    private FitModel start(SpotResult of, LinkedSpectrum scan) {
        Set<String> elements = new TreeSet<>();
        of.composition().forEach(row -> elements.add(row.element()));
        double shift = of.charge().shiftEv().orElse(0);
        return new DefaultModels(bench.reference())
                .of(line.orElseThrow(), scan.scan(), shift, elements)
                .orElseGet(() -> {
                    Window window = of.intensities().stream()
                            .filter(m -> m.intensity().spectrum().equals(scan.label()))
                            .map(m -> m.intensity().window())
                            .findFirst()
                            .orElse(scan.scan().range());
                    return new FitModel(window, new BackgroundModel(Shirley.of(ENDPOINTS), true), List.of(), List.of());
                });
    }

    /** Puts the editor down; the run is as it was. */
    public void end() {
        newest.incrementAndGet();
        model.set(Optional.empty());
        result.set(Optional.empty());
        message.set("");
        first = Optional.empty();
        line = Optional.empty();
    }

    /** A component at a measured energy, eV: a Voigt peak of free position, width and area. */
    public void add(double energyEv) {
        if (model.get().isEmpty()) return;
        FitModel now = model.get().get();
        int number = now.components().size() + 1;
        while (named(now, "component " + number).isPresent()) number++;
        ComponentModel added = ComponentModel.of("component " + number, new Voigt())
                .with("position", ParameterRule.Free.from(energyEv, energyEv - REACH_EV, energyEv + REACH_EV))
                .with("gaussianFwhm", ParameterRule.Free.from(1.2, 0.3, 4))
                .with("lorentzianFwhm", new ParameterRule.Fixed(lorentzian()));
        List<ComponentModel> all = new ArrayList<>(now.components());
        all.add(added);
        become(all);
    }

    private double lorentzian() {
        return line.flatMap(l -> bench.reference().naturalWidth(l.high()))
                .map(w -> w.fwhmEv())
                .orElse(0.1);
    }

    public void remove(String component) {
        List<ComponentModel> all = new ArrayList<>();
        model.get()
                .ifPresent(m -> m.components().forEach(c -> {
                    if (!c.name().equals(component)) all.add(freed(c, component));
                }));
        become(all);
    }

    /** What followed a component that goes is free. */
    private static ComponentModel freed(ComponentModel c, String gone) {
        ComponentModel kept = c;
        for (Map.Entry<String, ParameterRule> rule : c.parameters().entrySet()) {
            if (rule.getValue() instanceof ParameterRule.Tied tied
                    && tied.component().equals(gone)) {
                kept = kept.with(rule.getKey(), ParameterRule.Free.UNBOUNDED);
            }
        }
        return kept;
    }

    public void rename(String component, String name) {
        if (model.get().isEmpty()
                || name.isBlank()
                || named(model.get().get(), name).isPresent()) return;
        List<ComponentModel> all = new ArrayList<>();
        for (ComponentModel c : model.get().get().components()) {
            ComponentModel kept = c.name().equals(component)
                    ? new ComponentModel(name.strip(), c.shape(), c.parameters(), c.doublet())
                    : c;
            for (Map.Entry<String, ParameterRule> rule : c.parameters().entrySet()) {
                ParameterRule followed = renamed(rule.getValue(), component, name.strip());
                if (followed != rule.getValue()) kept = kept.with(rule.getKey(), followed);
            }
            all.add(kept);
        }
        become(all);
    }

    private static ParameterRule renamed(ParameterRule rule, String from, String to) {
        if (rule instanceof ParameterRule.EqualTo e && e.component().equals(from)) return new ParameterRule.EqualTo(to);
        if (rule instanceof ParameterRule.RatioTo r && r.component().equals(from)) {
            return new ParameterRule.RatioTo(to, r.ratio());
        }
        if (rule instanceof ParameterRule.OffsetFrom o && o.component().equals(from)) {
            return new ParameterRule.OffsetFrom(to, o.offset());
        }
        return rule;
    }

    /** What holds a parameter from now on. */
    public void rule(String component, String parameter, ParameterRule rule) {
        if (model.get().isEmpty()) return;
        become(model.get().get().components().stream()
                .map(c -> c.name().equals(component) ? c.with(parameter, rule) : c)
                .toList());
    }

    /** The component brings the partner of its line's doublet, by the reference data, or no longer does. */
    public void doublet(String component, boolean on) {
        if (model.get().isEmpty() || line.isEmpty()) return;
        become(model.get().get().components().stream()
                .map(c -> !c.name().equals(component)
                        ? c
                        : new ComponentModel(
                                c.name(),
                                c.shape(),
                                c.parameters(),
                                on ? Optional.of(DoubletRule.of(line.get())) : Optional.empty()))
                .toList());
    }

    public void window(double lowEv, double highEv) {
        if (model.get().isEmpty() || !(lowEv < highEv)) return;
        FitModel now = model.get().get();
        change(new FitModel(new Window(lowEv, highEv), now.background(), now.components(), now.satellites()));
    }

    /** Leaves out all starts, so that they are guessed from the data. */
    public void guess() {
        if (model.get().isEmpty()) return;
        become(model.get().get().components().stream()
                .map(FitEditor::withoutStarts)
                .toList());
    }

    private static ComponentModel withoutStarts(ComponentModel c) {
        ComponentModel guessed = c;
        for (Map.Entry<String, ParameterRule> rule : c.parameters().entrySet()) {
            if (rule.getValue() instanceof ParameterRule.Free free) {
                guessed = guessed.with(rule.getKey(), ParameterRule.Free.within(free.min(), free.max()));
            }
        }
        return guessed;
    }

    public void revert() {
        model.set(first);
        refit();
    }

    private void become(List<ComponentModel> components) {
        if (model.get().isEmpty()) return;
        FitModel now = model.get().get();
        List<Problem> problems = FitModel.check(Optional.of(now.window()), components);
        if (!problems.isEmpty()) {
            message.set(problems.stream().map(Problem::sentence).collect(Collectors.joining("; ")));
            return;
        }
        change(now.withComponents(components));
    }

    private void change(FitModel next) {
        model.set(Optional.of(next));
        refit();
    }

    /** Fits in the background; the bench shows it when it is done. */
    public void refit() {
        Optional<FitModel> now = model.get();
        Optional<LinkedSpectrum> scan = bench.spot(spot).flatMap(s -> Workbench.scan(s, spectrum));
        if (now.isEmpty() || scan.isEmpty()) return;
        long mine = newest.incrementAndGet();
        if (now.get().components().isEmpty()) {
            result.set(Optional.empty());
            message.set("Add a component.");
            return;
        }
        bench.inBackground(() -> {
            if (mine != newest.get()) return;
            Outcome<PeakFitResult> outcome =
                    new PeakFit(bench.reference()).fit(scan.get().scan(), now.get(), Work.UNWATCHED);
            bench.onScreen(() -> {
                if (mine == newest.get()) show(outcome);
            });
        });
    }

    private void show(Outcome<PeakFitResult> outcome) {
        message.set(outcome.allFindings().stream().map(Finding::message).collect(Collectors.joining(" ")));
        result.set(outcome.result());
        if (outcome.result().isEmpty()) return;
        PeakFitResult fitted = outcome.result().get();
        bench.bench()
                .set(bench.bench()
                        .get()
                        .filter(b -> b.spectrum().equals(fitted.spectrum()))
                        .map(b -> b.with(fitted)));
    }

    /** What is kept waits for its reason. */
    public void keep() {
        if (model.get().isEmpty() || line.isEmpty() || bench.living().isEmpty()) return;
        if (result.get().isEmpty()) {
            message.set("A model without a fit cannot be kept.");
            return;
        }
        Edit edit = Edits.fitModel(
                bench.living().get().document(),
                spot,
                line.get(),
                FitModelWriter.json(model.get().get()));
        bench.signing().propose(edit.title(), why -> edit);
    }

    /** The settings of this spot, its fit models included, for other spots: starts are estimated anew, locks kept. */
    public void applyTo(List<String> others) {
        Optional<SpotResult> from =
                bench.spot(spot.isEmpty() ? bench.chosen().get().get(0) : spot);
        if (from.isEmpty() || bench.living().isEmpty() || others.isEmpty()) return;
        SortedMap<String, Double> moved = new TreeMap<>();
        double here = from.get().charge().shiftEv().orElse(0);
        for (String other : others) {
            double there = bench.spot(other)
                    .flatMap(s -> s.charge().shiftEv().stream().boxed().findFirst())
                    .orElse(0.0);
            moved.put(other, here - there);
        }
        Edit edit = Edits.copied(bench.living().get().document(), from.get().spot(), moved);
        bench.signing().propose(edit.title(), why -> edit);
    }

    /** Every parameter of every component, in their order. */
    public List<Row> rows() {
        List<Row> rows = new ArrayList<>();
        for (ComponentModel c : model.get().map(FitModel::components).orElse(List.of())) {
            for (String parameter : c.shape().parameterNames()) rows.add(row(c, parameter));
        }
        return rows;
    }

    private Row row(ComponentModel c, String parameter) {
        ParameterRule rule = c.parameters().getOrDefault(parameter, ParameterRule.Free.UNBOUNDED);
        Optional<FittedParameter> fitted = result.get()
                .flatMap(r -> r.components().stream()
                        .filter(f -> f.name().equals(c.name()))
                        .findFirst())
                .map(FittedComponent::parameters)
                .map(p -> p.get(parameter));
        OptionalDouble value =
                fitted.isPresent() ? OptionalDouble.of(fitted.get().value().value()) : OptionalDouble.empty();
        OptionalDouble u = fitted.isPresent() ? fitted.get().value().standardUncertainty() : OptionalDouble.empty();
        if (rule instanceof ParameterRule.EqualTo tie) {
            return new Row(c.name(), parameter, Holding.EQUAL, OptionalDouble.empty(), 0, 0, tie.component(), value, u);
        }
        if (rule instanceof ParameterRule.OffsetFrom tie) {
            return own(c.name(), parameter, Holding.OFFSET, tie.offset(), tie.component(), value, u);
        }
        if (rule instanceof ParameterRule.RatioTo tie) {
            return own(c.name(), parameter, Holding.RATIO, tie.ratio(), tie.component(), value, u);
        }
        Holding holding = rule instanceof ParameterRule.Fixed ? Holding.FIXED : Holding.FREE;
        return own(c.name(), parameter, holding, (ParameterRule.Own) rule, "", value, u);
    }

    private static Row own(
            String component,
            String parameter,
            Holding holding,
            ParameterRule.Own own,
            String leader,
            OptionalDouble value,
            OptionalDouble u) {
        if (own instanceof ParameterRule.Fixed fixed) {
            OptionalDouble at = OptionalDouble.of(fixed.value());
            return new Row(component, parameter, holding, at, fixed.value(), fixed.value(), leader, value, u);
        }
        ParameterRule.Free free = (ParameterRule.Free) own;
        return new Row(component, parameter, holding, free.start(), free.min(), free.max(), leader, value, u);
    }

    private static Optional<ComponentModel> named(FitModel model, String name) {
        return model.components().stream().filter(c -> c.name().equals(name)).findFirst();
    }

    public ObjectProperty<Optional<FitModel>> model() {
        return model;
    }

    public ObjectProperty<Optional<PeakFitResult>> result() {
        return result;
    }

    /** What the fit has to say; empty when nothing. */
    public StringProperty message() {
        return message;
    }
}
