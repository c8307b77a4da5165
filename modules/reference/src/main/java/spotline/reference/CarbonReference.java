package spotline.reference;

import java.util.Optional;
import java.util.OptionalDouble;

/** What a published guide says about the C 1s energy of adventitious carbon: a value and a range in eV where it gives them. */
public record CarbonReference(OptionalDouble valueEv, Optional<EnergyRange> range, String statement, String source) {}
