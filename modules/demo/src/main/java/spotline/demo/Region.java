package spotline.demo;

import java.util.List;

/** The medium or the overlayer of a surface, as an emitter of electrons along one direction. */
sealed interface Region {
    List<ElementState> states();

    /** Atoms of a state per nm3. */
    double density(ElementState state);

    /** Length over which its own electrons are lost, nm. */
    double lengthNm(double kineticEv);

    Depth depth(double kineticEv);

    double cosEmission();

    /** Zero-loss area that comes out: (relative cross section) nm / nm3. */
    default double area(double crossSection, double density, double kineticEv) {
        return crossSection
                * density
                * lengthNm(kineticEv)
                * cosEmission()
                * depth(kineticEv).zeroLossShare();
    }

    default List<String> elements() {
        return states().stream().map(ElementState::element).distinct().toList();
    }

    static List<Region> of(Surface surface, AtomicData atoms, double cosEmission) {
        Region medium = new Below(surface, atoms, cosEmission);
        return surface.overlayer().thicknessNm() > 0
                ? List.of(medium, new Within(surface.overlayer(), cosEmission))
                : List.of(medium);
    }

    record Below(Surface surface, AtomicData atoms, double cosEmission) implements Region {
        @Override
        public List<ElementState> states() {
            return surface.states();
        }

        @Override
        public double density(ElementState state) {
            return surface.density(state);
        }

        @Override
        public double lengthNm(double kineticEv) {
            return atoms.inelasticMeanFreePathNm(surface.medium(), kineticEv);
        }

        @Override
        public Depth depth(double kineticEv) {
            return new Depth.Below(surface.overlayer().reducedThickness(kineticEv, cosEmission));
        }
    }

    record Within(Overlayer overlayer, double cosEmission) implements Region {
        @Override
        public List<ElementState> states() {
            return overlayer.states();
        }

        @Override
        public double density(ElementState state) {
            return Overlayer.CARBON_PER_NM3 * state.share();
        }

        @Override
        public double lengthNm(double kineticEv) {
            return Overlayer.attenuationLengthNm(kineticEv);
        }

        @Override
        public Depth depth(double kineticEv) {
            return new Depth.Within(overlayer.reducedThickness(kineticEv, cosEmission));
        }
    }
}
