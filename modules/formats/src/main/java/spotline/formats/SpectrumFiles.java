package spotline.formats;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import spotline.core.Finding;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.formats.iso14976.BlockSpectra;
import spotline.formats.iso14976.ExperimentBlock;
import spotline.formats.iso14976.Iso14976Parser;
import spotline.formats.iso14976.Iso14976Probe;
import spotline.formats.iso14976.SpectrumExperiment;
import spotline.formats.source.Probe;
import spotline.formats.source.ReadLimits;
import spotline.formats.source.Warnings;
import spotline.formats.text.TextColumns;
import spotline.formats.text.TextColumnsReader;
import spotline.formats.text.TextLook;
import spotline.formats.text.TextSpectrum;
import spotline.formats.text.UndeclaredColumns;

/** Opens a spectrum file with the reader that knows it. */
public final class SpectrumFiles {
    private static final String READABLE = "a readable spectrum file";

    private SpectrumFiles() {}

    /**
     * What each reader makes of the head of a file, the surest first.
     *
     * <p>Errors: {@link ReadException} when the file cannot be read.
     */
    public static List<Probe> probe(Path file, String displayName) throws ReadException {
        return probe(head(file, displayName));
    }

    private static List<Probe> probe(byte[] head) {
        List<Probe> probes = new ArrayList<>(List.of(Iso14976Probe.probe(head), TextColumnsReader.probe(head)));
        probes.sort((a, b) -> b.verdict().compareTo(a.verdict()));
        return probes;
    }

    /**
     * Reads a whole file.
     *
     * <p>Errors: {@link ReadException} when the file is missing, unreadable, of no known format, damaged beyond use, or
     * a text file whose columns nobody declared.
     *
     * @param displayName the file's name in messages and results
     * @param columns what the columns are, should it be a text file
     */
    public static SpectrumFile open(Path file, String displayName, Optional<TextColumns> columns, ReadLimits limits)
            throws ReadException {
        byte[] head = head(file, displayName);
        long size = size(file, displayName, limits);
        if (isIso14976(head)) {
            return read(file, displayName, in -> iso14976(displayName, in, size, columns, limits));
        }
        TextColumns declared = declared(displayName, head, columns);
        return read(file, displayName, in -> text(displayName, in, size, declared, limits));
    }

    private static boolean isIso14976(byte[] head) {
        return Iso14976Probe.probe(head).verdict() != Probe.Verdict.NO;
    }

    /** Errors: {@link ReadException} when the head is no text, or nobody declared its columns. */
    private static TextColumns declared(String displayName, byte[] head, Optional<TextColumns> columns)
            throws ReadException {
        Probe text = TextColumnsReader.probe(head);
        boolean worthReading = columns.isPresent() && head.length > 0 && !FileSigns.isBinary(head);
        if (text.verdict() == Probe.Verdict.NO && !worthReading) {
            throw new ReadException(
                    Place.line(displayName, 1),
                    "found " + FileSigns.describe(head),
                    "the format identifier of ISO 14976, or columns of numbers");
        }
        return columns.orElseThrow(() -> new ReadException(
                Place.file(displayName),
                "found columns of numbers that nobody declared",
                "\"columns\" for it, with energy, ordinate, scale and photonEnergyEv"));
    }

    /**
     * A whole file as an experiment of ISO 14976, every field of it kept where it is one already.
     *
     * <p>Errors: as {@link #open(Path, String, Optional, ReadLimits)}.
     */
    public static ReadExperiment experiment(
            Path file, String displayName, Optional<TextColumns> columns, ReadLimits limits) throws ReadException {
        byte[] head = head(file, displayName);
        long size = size(file, displayName, limits);
        try (InputStream in = Files.newInputStream(file)) {
            if (isIso14976(head)) {
                Iso14976Parser.Parsed parsed = Iso14976Parser.parse(displayName, in, size, limits);
                return new ReadExperiment(parsed.experiment(), parsed.warnings());
            }
            TextColumns declared = declared(displayName, head, columns);
            TextSpectrum text = TextColumnsReader.read(displayName, in, size, limits, declared);
            return new ReadExperiment(SpectrumExperiment.of(text.set(), displayName), text.warnings());
        } catch (IOException e) {
            throw unreadable(displayName, e);
        }
    }

    /** The same with {@link ReadLimits#DEFAULT}. */
    public static SpectrumFile open(Path file, String displayName, Optional<TextColumns> columns) throws ReadException {
        return open(file, displayName, columns, ReadLimits.DEFAULT);
    }

    /**
     * What a text file holds before its columns are declared.
     *
     * <p>Errors: {@link ReadException} when the file is missing, unreadable, or no rows of numbers.
     */
    public static TextLook look(Path file, String displayName, ReadLimits limits) throws ReadException {
        long size = size(file, displayName, limits);
        try (InputStream in = Files.newInputStream(file)) {
            return UndeclaredColumns.look(displayName, in, size, limits);
        } catch (IOException e) {
            throw unreadable(displayName, e);
        }
    }

    private static SpectrumFile iso14976(
            String name, InputStream in, long size, Optional<TextColumns> columns, ReadLimits limits)
            throws ReadException {
        Iso14976Parser parser = new Iso14976Parser(name, in, size, limits);
        Warnings conversion = new Warnings(name);
        BlockSpectra spectra = new BlockSpectra(parser.header(), conversion);
        List<Block> blocks = new ArrayList<>();
        int number = 0;
        for (Optional<ExperimentBlock> block = parser.next(); block.isPresent(); block = parser.next()) {
            number++;
            int at = number;
            int line = parser.blockLine();
            spectra.convert(block.get(), at, line).ifPresent(set -> blocks.add(new Block(at, line, set)));
        }
        if (columns.isPresent()) {
            conversion.note(
                    "columns-not-used", 0, "columns are declared, but the file is ISO 14976; its own header is used");
        }
        List<Finding> warnings = new ArrayList<>(parser.warnings());
        warnings.addAll(conversion.findings());
        return new SpectrumFile(name, "", SpectrumFile.ISO_14976, blocks, warnings);
    }

    private static SpectrumFile text(String name, InputStream in, long size, TextColumns columns, ReadLimits limits)
            throws ReadException {
        TextSpectrum spectrum = TextColumnsReader.read(name, in, size, limits, columns);
        Block block = new Block(1, spectrum.firstRowLine(), spectrum.set());
        return new SpectrumFile(name, "", SpectrumFile.TEXT_COLUMNS, List.of(block), spectrum.warnings());
    }

    private interface Reading {
        SpectrumFile from(InputStream in) throws ReadException;
    }

    /** One pass over the file gives both its content and its digest. */
    private static SpectrumFile read(Path file, String name, Reading reading) throws ReadException {
        MessageDigest digest = sha256();
        try (InputStream in = new DigestInputStream(Files.newInputStream(file), digest)) {
            SpectrumFile read = reading.from(in);
            in.transferTo(OutputStream.nullOutputStream());
            String sha256 = HexFormat.of().formatHex(digest.digest());
            return new SpectrumFile(name, sha256, read.format(), read.blocks(), read.warnings());
        } catch (IOException e) {
            throw unreadable(name, e);
        }
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    private static byte[] head(Path file, String name) throws ReadException {
        try {
            if (Files.isDirectory(file)) throw new ReadException(Place.file(name), "a directory", READABLE);
            try (InputStream in = Files.newInputStream(file)) {
                return in.readNBytes(Probe.HEAD_BYTES);
            }
        } catch (IOException e) {
            throw unreadable(name, e);
        }
    }

    private static long size(Path file, String name, ReadLimits limits) throws ReadException {
        try {
            long size = Files.size(file);
            if (size <= limits.fileBytes()) return size;
            throw new ReadException(
                    Place.file(name), "a file of " + size + " bytes", "at most " + limits.fileBytes() + " bytes");
        } catch (IOException e) {
            throw unreadable(name, e);
        }
    }

    private static ReadException unreadable(String name, IOException e) {
        String found = "the file could not be read";
        if (e instanceof NoSuchFileException) found = "no such file";
        else if (e instanceof AccessDeniedException) found = "no permission to read the file";
        return new ReadException(Place.file(name), found, READABLE);
    }
}
