package spotline.formats.iso14976;

/** Where the abscissa of the ordinate values comes from. */
public enum ScanMode implements Word {
    /** Equal steps from a start. */
    REGULAR,
    /** Listed among the corresponding variables, by custom as the first. */
    IRREGULAR,
    /** The raster of the map. */
    MAPPING;

    @Override
    public String word() {
        return name();
    }
}
