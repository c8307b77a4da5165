package spotline.holder;

/** What the record says of the spectrometer's relative intensity response. */
public sealed interface DeclaredTransmission {
    /** Nothing is said. */
    record Unknown() implements DeclaredTransmission {}

    /** What a spectrum file carries, else flat. */
    record AsRecorded() implements DeclaredTransmission {}

    /** The same at every energy. */
    record Flat() implements DeclaredTransmission {}

    /** Proportional to a power of the kinetic energy. */
    record PowerLaw(double power) implements DeclaredTransmission {
        public PowerLaw {
            if (!Double.isFinite(power)) throw new IllegalArgumentException("power must be finite, was " + power);
        }
    }

    /** A table in a CSV file, named relative to the holder-run file, with kinetic energy in eV and transmission. */
    record FromFile(String file) implements DeclaredTransmission {
        public FromFile {
            if (file.isBlank()) throw new IllegalArgumentException("a transmission table needs a file");
        }
    }
}
