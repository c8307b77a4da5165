package spotline.core;

/**
 * One thing wrong with a setting or a field.
 *
 * @param field name, or JSON pointer in a file
 * @param found what stands there, with its unit
 * @param expected the limit or form it should have, with its unit
 */
public record Problem(String field, String found, String expected) {
    /** One sentence without the place's file. */
    public String sentence() {
        return field + ": " + found + ", expected " + expected;
    }
}
