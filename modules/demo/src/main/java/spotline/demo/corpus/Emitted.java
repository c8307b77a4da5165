package spotline.demo.corpus;

/**
 * A zero-loss peak as it leaves the surface.
 *
 * @param line {@code "2p"}; empty for Auger electrons and loss structure
 * @param first it belongs to the stronger member of a doublet
 * @param bindingEv apparent, charging included
 * @param gaussianEv full width of all but the analyser and the source
 * @param lean share of the area that trails towards higher binding energy
 */
record Emitted(
        String line,
        boolean first,
        double bindingEv,
        double area,
        double gaussianEv,
        double lorentzianEv,
        double lean) {}
