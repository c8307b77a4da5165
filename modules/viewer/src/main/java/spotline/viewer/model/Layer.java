package spotline.viewer.model;

/** What the bench can show or hide. */
public enum Layer {
    MEASURED,
    BACKGROUND,
    MODEL,
    COMPONENTS,
    LINES,
    OTHER_SPOTS,
    REFERENCED,
    DIFFERENCE,
    NORMALISED;

    /** Key of its name in the resource bundle. */
    public String key() {
        return "layer." + name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }
}
