package spotline.spectra;

/** A header entry kept word for word. */
public record HeaderField(String name, String value) {}
