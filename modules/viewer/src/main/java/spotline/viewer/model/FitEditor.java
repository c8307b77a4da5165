package spotline.viewer.model;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.CancellationException;
import java.util.stream.Collectors;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import spotline.analysis.background.Shirley;
import spotline.analysis.peakfit.BackgroundModel;
import spotline.analysis.peakfit.ComponentModel;
import spotline.analysis.peakfit.DefaultModels;
import spotline.analysis.peakfit.DoubletRule;
import spotline.analysis.peakfit.FitModel;
import spotline.analysis.peakfit.ParameterRule;
import spotline.analysis.peakfit.PeakFit;
import spotline.analysis.peakfit.PeakFitResult;
import spotline.core.Finding;
import spotline.core.Outcome;
import spotline.core.Problem;
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

    private final Workbench bench;
    private final ObjectProperty<Optional<FitModel>> model = new SimpleObjectProperty<>(Optional.empty());
    private final ObjectProperty<Optional<PeakFitResult>> result = new SimpleObjectProperty<>(Optional.empty());
    private final StringProperty message = new SimpleStringProperty("");
    private final Newest newest = new Newest();
    private final BooleanProperty fitting = new SimpleBooleanProperty(false);
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
        if (now.isEmpty() || scan.isEmpty()) return;
        if (scan.get().survey()) {
            bench.fault().set(bench.words().of("fit.survey"));
            return;
        }
        line = lineOf(now.get(), scan.get());
        if (line.isEmpty()) {
            bench.fault().set(bench.words().of("fit.no-line"));
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
                    ComponentModel highest = ModelChanges.component(
                            bench.words().of("fit.component") + " 1", highest(scan, window), lorentzian());
                    return FitModel.of(window, new BackgroundModel(Shirley.of(ENDPOINTS), true), highest);
                });
    }

    /** Energy of the highest channel of a window, eV. */
    private static double highest(LinkedSpectrum scan, Window window) {
        int best = scan.scan().firstAtOrAbove(window.lowEv());
        double[] energies = scan.scan().energies();
        for (int i = best; i < energies.length && energies[i] <= window.highEv(); i++) {
            if (scan.scan().counts(i) > scan.scan().counts(best)) best = i;
        }
        return energies[best];
    }

    /** Puts the editor down; the run is as it was. */
    public void end() {
        newest.next();
        fitting.set(false);
        model.set(Optional.empty());
        result.set(Optional.empty());
        message.set("");
        first = Optional.empty();
        line = Optional.empty();
    }

    /** A component at a measured energy, eV: a Voigt peak of free position, width and area. */
    public void add(double energyEv) {
        model.get()
                .ifPresent(
                        m -> become(ModelChanges.added(m, bench.words().of("fit.component"), energyEv, lorentzian())));
    }

    private double lorentzian() {
        return line.flatMap(l -> bench.reference().naturalWidth(l.high()))
                .map(w -> w.fwhmEv())
                .orElse(0.1);
    }

    public void remove(String component) {
        model.get().ifPresent(m -> become(ModelChanges.without(m, component)));
    }

    public void rename(String component, String name) {
        model.get()
                .filter(m ->
                        !name.isBlank() && ModelChanges.named(m, name.strip()).isEmpty())
                .ifPresent(m -> become(ModelChanges.renamed(m, component, name.strip())));
    }

    /** What holds a parameter from now on. */
    public void rule(String component, String parameter, ParameterRule rule) {
        model.get().ifPresent(m -> become(ModelChanges.ruled(m, component, parameter, rule)));
    }

    /** The component brings the partner of its line's doublet, by the reference data, or no longer does. */
    public void doublet(String component, boolean on) {
        Optional<DoubletRule> rule = on ? line.map(DoubletRule::of) : Optional.empty();
        model.get().ifPresent(m -> become(ModelChanges.coupled(m, component, rule)));
    }

    /**
     * A component's apex was put elsewhere by hand: its position and its area start there, or stay there where they are
     * locked.
     *
     * @param energyEv measured binding energy
     * @param factor new height over the fitted one
     */
    public void move(String component, double energyEv, double factor) {
        if (model.get().isEmpty()) return;
        List<FitRow> rows = rows();
        List<ComponentModel> next =
                ModelChanges.placed(model.get().get().components(), rows, component, "position", energyEv);
        Optional<FitRow> area = FitRow.find(rows, component, "area");
        if (area.isPresent() && area.get().fitted().isPresent() && factor > 0) {
            next = ModelChanges.placed(
                    next, rows, component, "area", factor * area.get().fitted().getAsDouble());
        }
        become(next);
    }

    /** Bounds of a free parameter; refused where they do not hold the start. */
    public void limits(String component, String parameter, double min, double max) {
        Optional<FitRow> row = FitRow.find(rows(), component, parameter);
        if (row.isEmpty() || row.get().holding() != FitRow.Holding.FREE) return;
        if (!(min < max)) {
            message.set(bench.words().of("fit.limits-order"));
            return;
        }
        double start = Math.max(min, Math.min(max, row.get().start().orElse(Double.NaN)));
        rule(
                component,
                parameter,
                Double.isNaN(start) ? ParameterRule.Free.within(min, max) : ParameterRule.Free.from(start, min, max));
    }

    public void window(double lowEv, double highEv) {
        if (model.get().isEmpty() || !(lowEv < highEv)) return;
        FitModel now = model.get().get();
        change(new FitModel(new Window(lowEv, highEv), now.background(), now.components(), now.satellites()));
    }

    /** Leaves out all starts, so that they are guessed from the data. */
    public void guess() {
        model.get().ifPresent(m -> become(ModelChanges.withoutStarts(m)));
    }

    public void revert() {
        model.set(first);
        refit();
    }

    private void become(List<ComponentModel> components) {
        if (model.get().isEmpty()) return;
        if (components.isEmpty()) {
            message.set(bench.words().of("fit.last"));
            return;
        }
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
        long mine = newest.next();
        fitting.set(true);
        FitModel wanted = now.get();
        bench.inBackground(() -> {
            if (mine != newest.get()) return;
            try {
                Outcome<PeakFitResult> outcome =
                        new PeakFit(bench.reference()).fit(scan.get().scan(), wanted, newest.work(mine));
                bench.onScreen(() -> {
                    if (mine == newest.get()) show(outcome);
                });
            } catch (CancellationException e) {
                // A newer model is being fitted, or none is wanted.
                return;
            } catch (RuntimeException e) {
                bench.onScreen(() -> {
                    if (mine != newest.get()) return;
                    fitting.set(false);
                    message.set(bench.words().of("fit.failed", e));
                });
            }
        });
    }

    /** Gives up the fit that is going on; what was fitted last stays. */
    void cancel() {
        if (!fitting.get()) return;
        newest.next();
        fitting.set(false);
        message.set(bench.words().of("fit.cancelled"));
    }

    private void show(Outcome<PeakFitResult> outcome) {
        fitting.set(false);
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
            message.set(bench.words().of("fit.no-fit"));
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
        try {
            Edit edit = Edits.copied(bench.living().get().document(), from.get().spot(), moved);
            bench.signing().propose(edit.title(), why -> edit);
        } catch (IllegalArgumentException e) {
            message.set(bench.words().of("fit.nothing-own", from.get().spot()));
        }
    }

    /** Every parameter of every component, in their order. */
    public List<FitRow> rows() {
        return FitRow.of(model.get(), result.get());
    }

    public ObjectProperty<Optional<FitModel>> model() {
        return model;
    }

    public ObjectProperty<Optional<PeakFitResult>> result() {
        return result;
    }

    /** Whether a fit is going on. */
    public BooleanProperty fitting() {
        return fitting;
    }

    /** What the fit has to say; empty when nothing. */
    public StringProperty message() {
        return message;
    }
}
