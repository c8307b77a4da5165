package spotline.analysis.peakfit;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.core.Problem;
import spotline.core.Problems;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * What is fitted to a narrow scan.
 *
 * <p>Units: binding energies as measured, eV; areas in counts eV, satellites and doublet partners not included. Errors:
 * {@link IllegalArgumentException} with every problem, see {@link #check}.
 *
 * @param satellites that every component carries, of an unmonochromated source; none behind a monochromator
 */
public record FitModel(
        Window window, BackgroundModel background, List<ComponentModel> components, List<Satellite> satellites) {
    public FitModel {
        requireNonNull(window, "window");
        requireNonNull(background, "background");
        components = List.copyOf(components);
        satellites = List.copyOf(satellites);
        Problems.throwIfAny(check(Optional.of(window), components));
    }

    public static FitModel of(Window window, BackgroundModel background, ComponentModel... components) {
        return new FitModel(window, background, List.of(components), List.of());
    }

    public FitModel with(List<Satellite> carried) {
        return new FitModel(window, background, components, carried);
    }

    public FitModel withComponents(List<ComponentModel> others) {
        return new FitModel(window, background, others, satellites);
    }

    public FitModel withBackground(BackgroundModel other) {
        return new FitModel(window, other, components, satellites);
    }

    /**
     * Every problem of a model at once: names twice, unknown parameters, unknown and cyclic ties, values outside bounds.
     *
     * @param window empty where it is itself unreadable
     * @return fields as JSON pointers into a fit-model file
     */
    public static List<Problem> check(Optional<Window> window, List<ComponentModel> components) {
        return new ModelChecks(window, components).problems();
    }

    /** The problems this model has with a scan: doublets that are not resolved, fewer channels than free parameters. */
    public List<Problem> check(BindingScan scan, ReferenceData reference) {
        return check(window, background, components, scan, reference);
    }

    /** As {@link #check(BindingScan, ReferenceData)} for the parts of a model that may have problems of its own. */
    public static List<Problem> check(
            Window window,
            BackgroundModel background,
            List<ComponentModel> components,
            BindingScan scan,
            ReferenceData reference) {
        List<Problem> problems = new ArrayList<>();
        for (int c = 0; c < components.size(); c++) {
            Optional<DoubletRule> doublet = components.get(c).doublet();
            if (doublet.isEmpty() || !ModelChecks.hasPartner(components.get(c))) continue;
            if (doublet.get().splittingEv().isPresent()
                    && doublet.get().areaRatio().isPresent()) continue;
            if (reference.doublet(doublet.get().line(), scan.photonEnergyEv()).isEmpty()) {
                problems.add(new Problem(
                        "/components/" + c + "/doublet",
                        doublet.get().line() + ", of which no doublet is tabulated",
                        "a doublet of the reference data, or its splitting and area ratio given"));
            }
        }
        int from = scan.firstAtOrAbove(window.lowEv());
        int channels = Math.max(0, scan.lastAtOrBelow(window.highEv()) + 1 - from);
        int ends = 2 * background.background().endpointChannels();
        int free = 0;
        for (ComponentModel component : components) free += ModelChecks.freeParameters(component);
        if (background.fitted()) {
            double[] energies = new double[Math.max(channels, ends + 2)];
            for (int i = 0; i < energies.length; i++) energies[i] = i;
            Optional<Integer> own = background
                    .background()
                    .fitted(energies)
                    .map(b -> b.parameters().size());
            if (own.isEmpty()) {
                problems.add(new Problem(
                        "/background/fitted",
                        "true for a " + background.background().describe() + " background",
                        "false: it depends on the data in a way that a fit cannot follow"));
            }
            free += own.orElse(0);
        }
        if (channels < free) {
            problems.add(new Problem(
                    "/window",
                    channels + " channels of the scan from " + window.lowEv() + " to " + window.highEv() + " eV for "
                            + free + " free parameters",
                    "at least as many channels as free parameters"));
        } else if (channels < ends) {
            problems.add(new Problem(
                    "/background/endpointChannels",
                    channels + " channels of the scan in the window",
                    ends + " or more, for both ends"));
        }
        return List.copyOf(problems);
    }
}
