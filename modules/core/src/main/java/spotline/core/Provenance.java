package spotline.core;

/**
 * Where a result came from.
 *
 * @param file name as the holder run gives it
 * @param sha256 of the file's bytes, lower-case hex
 * @param block counted from 1
 * @param line first line of the block, counted from 1
 * @param step the step that made the result, with its version: {@code "shirley/1"}
 */
public record Provenance(String file, String sha256, int block, int line, String step) {
    public Provenance by(String newStep) {
        return new Provenance(file, sha256, block, line, newStep);
    }
}
