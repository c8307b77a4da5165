package spotline.formats.text;

import java.io.InputStream;
import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import spotline.core.ReadException;
import spotline.formats.source.LineSource;
import spotline.formats.source.ReadLimits;
import spotline.formats.source.Warnings;

/** Looks at the columns of a text file before anybody declared them. */
public final class UndeclaredColumns {
    /** What a holder run must say of a text file, then what it should say. */
    private static final List<String> UNDECLARED = List.of(
            "energy column",
            "ordinate column",
            "scale (binding or kinetic)",
            "photon energy",
            "ordinate kind (counts or counts-per-second)",
            "dwell time",
            "scans",
            "pass energy");

    private UndeclaredColumns() {}

    /**
     * What the file holds as far as its numbers say, and what they do not say.
     *
     * <p>Errors: {@link ReadException} without a row of two or more numbers, or where a line among the rows does not fit.
     *
     * @param name of the file, as messages give it
     * @param size bytes of the whole file; a negative number when not known
     */
    public static TextLook look(String name, InputStream in, long size, ReadLimits limits) throws ReadException {
        Warnings warnings = new Warnings(name);
        LineSource lines = new LineSource(name, in, size, limits);
        TextRows rows = new TextRows(lines, warnings, limits, new TextRows.AllNumbers());
        List<ColumnCourse> courses = new ArrayList<>();
        MessageDigest digest = sha256();
        String separator = "";
        while (rows.next()) {
            if (rows.rows() == 1) {
                for (int k = 0; k < rows.columns(); k++) courses.add(new ColumnCourse());
                separator = rows.separators();
            }
            ByteBuffer row = ByteBuffer.allocate(Double.BYTES * rows.columns());
            for (int k = 0; k < rows.columns(); k++) {
                double value = rows.value(k + 1);
                courses.get(k).add(value);
                row.putDouble(value);
            }
            digest.update(row.array());
        }
        if (rows.rows() == 0) {
            throw new ReadException(lines.place(), "found no row of numbers", "rows of two or more numbers");
        }
        return new TextLook(
                rows.columns(),
                rows.rows(),
                rows.firstRowLine(),
                separator,
                rows.decimalComma(),
                courses.stream().map(ColumnCourse::range).toList(),
                UNDECLARED,
                new ColumnSuggestions(courses, rows.comments()).all(),
                HexFormat.of().formatHex(digest.digest()),
                rows.comments(),
                warnings.findings());
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
