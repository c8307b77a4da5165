package spotline.formats.iso14976;

/** What the blocks of an experiment are to each other. */
public enum ExperimentMode implements Word {
    /** Spectra at a set of positions. */
    MAP,
    /** The same over a sputter depth profile. */
    MAPDP,
    /** An image of single values a block. */
    MAPSV,
    /** The same over a sputter depth profile. */
    MAPSVDP,
    /** Independent spectra. */
    NORM,
    /** Sputter depth profile of spectra. */
    SDP,
    /** Sputter depth profile of single values. */
    SDPSV,
    /** Electron image. */
    SEM,
    /** No experiment of the other kinds: derived data. */
    NOEXP;

    @Override
    public String word() {
        return name();
    }

    boolean hasRegions() {
        return this == MAP || this == MAPDP || this == NORM || this == SDP;
    }

    /** Spectra at positions of a map. */
    boolean hasPositions() {
        return this == MAP || this == MAPDP;
    }

    boolean hasFieldOfView() {
        return hasPositions() || hasLinescan();
    }

    boolean hasLinescan() {
        return this == MAPSV || this == MAPSVDP || this == SEM;
    }

    boolean isDepthProfile() {
        return this == MAPDP || this == MAPSVDP || this == SDP || this == SDPSV;
    }
}
