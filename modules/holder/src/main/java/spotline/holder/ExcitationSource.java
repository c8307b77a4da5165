package spotline.holder;

/** The X-ray line that excites the photoelectrons; its photon energy is reference data, not kept here. */
public enum ExcitationSource implements Word {
    ALUMINIUM_KA("Al Ka"),
    MAGNESIUM_KA("Mg Ka"),
    SILVER_LA("Ag La"),
    CHROMIUM_KA("Cr Ka"),
    GALLIUM_KA("Ga Ka"),
    /** Not known, or another source that gives its photon energy. */
    UNKNOWN("unknown");

    private final String word;

    ExcitationSource(String word) {
        this.word = word;
    }

    @Override
    public String word() {
        return word;
    }
}
