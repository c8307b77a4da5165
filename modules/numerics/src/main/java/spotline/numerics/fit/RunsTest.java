package spotline.numerics.fit;

import java.util.OptionalDouble;

/**
 * Runs of equal sign among residuals against what independent signs give (A. Wald, J. Wolfowitz, Ann. Math. Stat. 11
 * (1940) 147).
 *
 * @param runs number of runs
 * @param expected number expected for as many positive and negative residuals in random order
 * @param z difference over its standard deviation, negative when residuals hang together; empty when all have one sign
 * @param probability two-sided probability of a difference as large, by the normal approximation
 */
public record RunsTest(int runs, double expected, OptionalDouble z, OptionalDouble probability) {}
