package spotline.numerics.fit;

/** Why a fit ended. */
public enum StopReason {
    /** The decrease still to be expected is below the tolerance. */
    CONVERGED(true),
    /** No smaller value can be found within the precision of the arithmetic. */
    PRECISION_REACHED(true),
    /** Nothing was free. */
    NOTHING_FREE(true),
    ITERATION_LIMIT(false),
    /** The objective is not finite at the start. */
    NOT_FINITE(false);

    private final boolean converged;

    StopReason(boolean converged) {
        this.converged = converged;
    }

    public boolean converged() {
        return converged;
    }
}
