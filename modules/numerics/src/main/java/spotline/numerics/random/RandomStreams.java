package spotline.numerics.random;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;

/**
 * Random streams derived from a seed and what they are for, never from a thread or a clock: the same on every JVM.
 *
 * <p>The generator is L64X128MixRandom, whose algorithm the Java API documentation fixes; its 64-bit seed is
 * the head of the SHA-256 of the seed and the keys, each key preceded by its length, so that lists of keys that read alike
 * when run together differ.
 */
public final class RandomStreams {
    private static final RandomGeneratorFactory<RandomGenerator> FACTORY =
            RandomGeneratorFactory.of("L64X128MixRandom");

    private RandomStreams() {}

    /** @param key what the stream is for: spot, spectrum, purpose, number of the trial */
    public static RandomGenerator stream(long seed, String... key) {
        MessageDigest digest = sha256();
        digest.update(ByteBuffer.allocate(Long.BYTES).putLong(0, seed));
        for (String part : key) {
            byte[] bytes = part.getBytes(StandardCharsets.UTF_8);
            digest.update(ByteBuffer.allocate(Integer.BYTES).putInt(0, bytes.length));
            digest.update(bytes);
        }
        // not create(byte[]): on Java 17 it smears the sign of each byte over its word, and streams coincide
        return FACTORY.create(ByteBuffer.wrap(digest.digest()).getLong());
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
