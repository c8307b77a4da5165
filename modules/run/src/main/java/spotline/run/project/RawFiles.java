package spotline.run.project;

/** How a project keeps the files that its holder run names. */
public enum RawFiles {
    /** Their bytes: the project stands alone. */
    INSIDE,
    /** Their paths and sums: the project stays small, and its results can be had again only where the files are. */
    OUTSIDE
}
