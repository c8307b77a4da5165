package spotline.formats;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import spotline.spectra.Axis;
import spotline.spectra.Ordinate;
import spotline.spectra.SpectrumSet;

/** What tells the same measurement under another name: a digest of its numbers alone. */
public final class DataDigest {
    private static final int ROOM = 1024;

    private DataDigest() {}

    /** SHA-256 of the axis and then each ordinate as big-endian doubles, lower-case hex; names and units left out. */
    public static String of(SpectrumSet set) {
        MessageDigest digest = sha256();
        ByteBuffer room = ByteBuffer.allocate(ROOM * Double.BYTES);
        Axis axis = set.axis();
        for (int i = 0; i < axis.channels(); i++) put(digest, room, axis.value(i));
        for (Ordinate ordinate : set.ordinates()) {
            for (int i = 0; i < ordinate.size(); i++) put(digest, room, ordinate.value(i));
        }
        digest.update(room.array(), 0, room.position());
        return HexFormat.of().formatHex(digest.digest());
    }

    private static void put(MessageDigest digest, ByteBuffer room, double value) {
        if (!room.hasRemaining()) {
            digest.update(room.array());
            room.clear();
        }
        room.putDouble(value);
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
