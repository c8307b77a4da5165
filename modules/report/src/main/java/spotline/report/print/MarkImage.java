package spotline.report.print;

import static java.util.Objects.requireNonNull;

import java.util.Base64;

/** A picture of dots as its file holds it, PNG or JPEG. */
public final class MarkImage {
    private final String type;
    private final byte[] bytes;
    private final int width;
    private final int height;

    /**
     * @param type {@code image/png} or {@code image/jpeg}
     * @param width dots
     * @param height dots
     */
    public MarkImage(String type, byte[] bytes, int width, int height) {
        this.type = requireNonNull(type, "type");
        this.bytes = bytes.clone();
        if (width < 1 || height < 1)
            throw new IllegalArgumentException("a picture needs a dot, had " + width + " x " + height);
        this.width = width;
        this.height = height;
    }

    public byte[] bytes() {
        return bytes.clone();
    }

    /** Dots across. */
    public int width() {
        return width;
    }

    /** Dots down. */
    public int height() {
        return height;
    }

    /** Width over height. */
    public double aspect() {
        return (double) width / height;
    }

    public String dataUri() {
        return "data:" + type + ";base64," + Base64.getEncoder().encodeToString(bytes);
    }
}
