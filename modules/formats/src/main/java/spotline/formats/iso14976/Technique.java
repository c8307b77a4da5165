package spotline.formats.iso14976;

/** Analysis technique of a block. */
public enum Technique implements Word {
    AES_DIFF("AES diff"),
    AES_DIR("AES dir"),
    EDX("EDX"),
    ELS("ELS"),
    FABMS("FABMS"),
    FABMS_ENERGY_SPEC("FABMS energy spec"),
    ISS("ISS"),
    SIMS("SIMS"),
    SIMS_ENERGY_SPEC("SIMS energy spec"),
    SNMS("SNMS"),
    SNMS_ENERGY_SPEC("SNMS energy spec"),
    UPS("UPS"),
    XPS("XPS"),
    XRF("XRF");

    private final String word;

    Technique(String word) {
        this.word = word;
    }

    @Override
    public String word() {
        return word;
    }

    /** Techniques whose probe is a particle beam that the header describes. */
    boolean usesIonProbe() {
        return switch (this) {
            case FABMS, FABMS_ENERGY_SPEC, ISS, SIMS, SIMS_ENERGY_SPEC, SNMS, SNMS_ENERGY_SPEC -> true;
            default -> false;
        };
    }

    /** Techniques excited by photons, whose characteristic energy is a photon energy. */
    boolean usesPhotons() {
        return this == XPS || this == UPS || this == XRF;
    }
}
