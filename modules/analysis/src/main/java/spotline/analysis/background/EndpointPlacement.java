package spotline.analysis.background;

/** Where the channels lie that the ends of a background are averaged from. */
public enum EndpointPlacement {
    /** The first and last channels of the window itself. */
    INSIDE("inside the window"),
    /** Just outside the window; inside, with a finding, where the scan has no such channels. */
    OUTSIDE("outside the window");

    private final String words;

    EndpointPlacement(String words) {
        this.words = words;
    }

    String words() {
        return words;
    }
}
