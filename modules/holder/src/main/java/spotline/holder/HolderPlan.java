package spotline.holder;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * What lies where on the holder: every spot with the specimen it lies on, whichever way the file wrote it.
 *
 * @param file the record it came from
 * @param specimens the declared ones in their order, then the spots' own
 */
public record HolderPlan(HolderRunFile file, List<Specimen> specimens, List<Spot> spots) {
    public HolderPlan {
        requireNonNull(file, "file");
        specimens = List.copyOf(specimens);
        spots = List.copyOf(spots);
    }

    /**
     * Errors: {@link IllegalArgumentException} for a spot that names a specimen which is not declared; a file that
     * {@link HolderRunReader} accepted has none.
     */
    public static HolderPlan of(HolderRunFile file) {
        Map<String, Specimen> declared = new LinkedHashMap<>();
        for (Specimen specimen : file.specimens()) declared.put(specimen.id(), specimen);
        List<Specimen> specimens = new ArrayList<>(file.specimens());
        Set<String> ids = new HashSet<>(declared.keySet());
        List<Spot> spots = new ArrayList<>();
        for (SpotEntry entry : file.spots()) {
            Specimen specimen;
            if (entry.specimen().isPresent()) {
                Specimen named = declared.get(entry.specimen().get());
                if (named == null) {
                    throw new IllegalArgumentException("spot " + entry.id() + " names specimen "
                            + entry.specimen().get() + ", which is not declared");
                }
                specimen = named;
            } else {
                specimen = own(entry, ids);
                specimens.add(specimen);
            }
            spots.add(spot(entry, specimen));
        }
        return new HolderPlan(file, specimens, spots);
    }

    private static Specimen own(SpotEntry entry, Set<String> ids) {
        StringBuilder id = new StringBuilder("spot ").append(entry.id());
        while (!ids.add(id.toString())) id.append('\'');
        Optional<PointMm> centre = entry.xMm().isPresent() && entry.yMm().isPresent()
                ? Optional.of(new PointMm(entry.xMm().getAsDouble(), entry.yMm().getAsDouble()))
                : Optional.empty();
        return new Specimen(
                id.toString(),
                Optional.of(entry.id()),
                centre,
                entry.outline(),
                0,
                entry.thicknessMm(),
                entry.sample(),
                entry.mount().orElse(Mount.UNKNOWN),
                entry.transfer());
    }

    private static Spot spot(SpotEntry entry, Specimen specimen) {
        return new Spot(
                entry.id(),
                specimen,
                entry.xMm(),
                entry.yMm(),
                entry.zMm(),
                entry.tiltDeg(),
                entry.emissionAngleDeg(),
                entry.azimuthDeg(),
                entry.analysisArea(),
                entry.positionUncertaintyMm(),
                entry.purpose(),
                entry.etchSteps(),
                entry.spectra(),
                entry.treatment());
    }

    public Optional<Spot> spot(String id) {
        return spots.stream().filter(spot -> spot.id().equals(id)).findFirst();
    }

    public List<Spot> spotsOn(Specimen specimen) {
        return spots.stream()
                .filter(spot -> spot.specimen().id().equals(specimen.id()))
                .toList();
    }

    /** The spot and every other that measures the same sample for its own sake, in the plan's order; itself alone for a blank. */
    public List<Spot> replicates(Spot spot) {
        if (spot.purpose() == SpotPurpose.BLANK || spot.sample().isEmpty()) return List.of(spot);
        String key = spot.sample().get().key();
        return spots.stream()
                .filter(other -> other.purpose() == spot.purpose())
                .filter(other ->
                        other.sample().map(Sample::key).filter(key::equals).isPresent())
                .toList();
    }

    /** The spot's own analysis area at normal emission, else the instrument's. */
    public Optional<AreaMm> analysisArea(Spot spot) {
        return spot.analysisArea().isPresent()
                ? spot.analysisArea()
                : file.instrument().analysisArea();
    }

    /** The spot's own emission angle, else the instrument's, degrees from the surface normal. */
    public OptionalDouble emissionAngleDeg(Spot spot) {
        return spot.emissionAngleDeg().isPresent()
                ? spot.emissionAngleDeg()
                : file.instrument().emissionAngleDeg();
    }
}
