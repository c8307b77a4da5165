package spotline.analysis.quantify;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.core.Estimate;

/**
 * A chemical state's share of its element.
 *
 * <p>The element's atomic fraction comes from its window; a peak fit only shares it out: X_k = X f_k with f_k = A_k / sum A
 * of the fitted areas. States of one line lie so close that mean free path and transmission are the same for all.
 *
 * <p>Errors: none; without an atomic fraction the share alone is given, and with no positive sum of areas nothing is.
 *
 * @param line the line that was fitted
 * @param atomicPercent of all elements of the composition; empty where the element's is
 * @param fractionOfElement 0 to 1, from the fit with its covariances
 */
public record StateShare(
        String element, String line, String state, Optional<Estimate> atomicPercent, Estimate fractionOfElement) {
    /** A component of a fit: the area it holds, its contributions keyed so that those of one fit go together. */
    public record Component(String state, Estimate area) {}

    public static List<StateShare> of(
            String element, String line, Optional<Estimate> atomicPercent, List<Component> components) {
        List<Estimate> areas = components.stream().map(Component::area).toList();
        if (areas.isEmpty()) return List.of();
        Estimate total = Estimate.sum(areas);
        if (!(total.value() > 0)) return List.of();
        List<StateShare> shares = new ArrayList<>();
        for (Component component : components) {
            Estimate fraction = component.area().dividedBy(total);
            shares.add(new StateShare(
                    element, line, component.state(), atomicPercent.map(x -> x.times(fraction)), fraction));
        }
        return List.copyOf(shares);
    }
}
