package spotline.run.document;

import spotline.core.ReadException;

/** Keeps each operation safe before it counts as done: a journal beside a project. */
@FunctionalInterface
public interface Keeper {
    /** Errors: {@link ReadException} when it cannot be kept; the operation then is not done. */
    void keep(Operation operation, History after) throws ReadException;

    /** Of a document that is held in memory alone. */
    Keeper NOBODY = (operation, after) -> {};
}
