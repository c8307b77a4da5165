package spotline.demo;

import java.util.List;

/** What the model needs to know of the elements and of solids; the factors that an analysis uses are taken from the same source. */
public interface AtomicData {
    /**
     * A core or valence level that the source can ionise.
     *
     * @param shell {@code "2p"}, both members of a doublet
     * @param level {@code "2p3/2"}
     * @param bindingEv of the element, eV from the Fermi level
     * @param crossSection of this level, relative to C 1s at the same photon energy
     * @param shellCrossSection of the whole shell
     * @param widthEv natural full width
     */
    record Level(
            String shell,
            String level,
            double bindingEv,
            double crossSection,
            double shellCrossSection,
            double widthEv) {}

    /** Levels of an element. Errors: {@link IllegalArgumentException} for an unknown symbol. */
    List<Level> levels(String element);

    /** Inelastic mean free path of a solid, nm. */
    double inelasticMeanFreePathNm(Medium medium, double kineticEv);
}
