package spotline.formats.iso14976;

import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import spotline.formats.source.Warnings;
import spotline.spectra.Acquisition;
import spotline.spectra.Analyser;
import spotline.spectra.Excitation;
import spotline.spectra.HeaderField;
import spotline.spectra.Timing;

/** What the header of one block says about how it was acquired. */
final class AcquisitionReading {
    private static final Pattern NOT_MONOCHROMATED =
            Pattern.compile("(?:non|not|no|un|without)[\\s_-]*mono", Pattern.CASE_INSENSITIVE);
    private static final Pattern MONOCHROMATED = Pattern.compile("mono", Pattern.CASE_INSENSITIVE);

    private final ExperimentHeader header;
    private final ExperimentBlock block;
    private final String name;
    private final int line;
    private final Warnings warnings;

    AcquisitionReading(ExperimentHeader header, ExperimentBlock block, String name, int line, Warnings warnings) {
        this.header = header;
        this.block = block;
        this.name = name;
        this.line = line;
        this.warnings = warnings;
    }

    Acquisition read(List<HeaderField> fields) {
        return new Acquisition(
                block.blockId(),
                block.sampleId(),
                block.technique().word(),
                time(),
                excitation(),
                analyser(),
                timing(),
                block.species(),
                block.transition(),
                emissionAngleDeg(),
                position(),
                block.comments(),
                fields);
    }

    private Optional<OffsetDateTime> time() {
        BlockTime time = block.time();
        if (!time.isKnown()) return Optional.empty();
        try {
            return Optional.of(dated(time));
        } catch (DateTimeException | ArithmeticException notADate) {
            warnings.note(
                    "iso14976-date",
                    line,
                    name + " has no valid date: year " + time.year() + ", month " + time.month() + ", day " + time.day()
                            + ", " + time.hours() + " h " + time.minutes() + " min " + time.seconds() + " s, "
                            + time.hoursInAdvanceOfGmt() + " h in advance of GMT; the time is taken as not known");
            return Optional.empty();
        }
    }

    private static OffsetDateTime dated(BlockTime time) {
        double seconds = time.seconds().raw();
        int wholeSeconds = (int) Math.floor(seconds);
        long nanos = Math.round((seconds - wholeSeconds) * 1e9);
        int offset = Math.toIntExact(Math.round(time.hoursInAdvanceOfGmt().raw() * 3600));
        return LocalDateTime.of(
                        whole(time.year()),
                        whole(time.month()),
                        whole(time.day()),
                        whole(time.hours()),
                        whole(time.minutes()),
                        wholeSeconds)
                .plusNanos(nanos)
                .atOffset(ZoneOffset.ofTotalSeconds(offset));
    }

    private static int whole(Real number) {
        return number.whole().orElseThrow(() -> new DateTimeException("not a whole number"));
    }

    private Excitation excitation() {
        String label = block.source().label();
        OptionalDouble energy = block.technique().usesPhotons()
                ? block.source().characteristicEnergy().positive()
                : OptionalDouble.empty();
        return new Excitation(label, energy, monochromated(label));
    }

    private static Optional<Boolean> monochromated(String label) {
        if (NOT_MONOCHROMATED.matcher(label).find()) return Optional.of(false);
        return MONOCHROMATED.matcher(label).find() ? Optional.of(true) : Optional.empty();
    }

    private Analyser analyser() {
        AnalyserSettings settings = block.analyser();
        String mode = settings.mode().strip();
        OptionalDouble pass = settings.passEnergyOrRatio().positive();
        return new Analyser(
                settings.mode(),
                mode.equalsIgnoreCase("FAT") ? pass : OptionalDouble.empty(),
                mode.equalsIgnoreCase("FRR") ? pass : OptionalDouble.empty(),
                settings.workFunction().value());
    }

    private Timing timing() {
        Signal signal = block.signal();
        boolean pulses = signal.mode().strip().equalsIgnoreCase(Signal.PULSE_COUNTING);
        return new Timing(
                signal.collectionTime().positive(),
                signal.scans().positive(),
                pulses ? signal.timeCorrection().value() : OptionalDouble.empty());
    }

    /**
     * Angle between the take-off direction and the sample normal, from their polar angles (from upward z) and azimuths.
     * Given only where it is certain: writers leave zeros where they do not know, and stacks over angle keep theirs in
     * an experimental variable, so all zeros, or a variable named as an angle, say nothing.
     */
    private OptionalDouble emissionAngleDeg() {
        AnalyserSettings analyser = block.analyser();
        SampleOrientation sample = block.orientation();
        if (!analyser.takeOffPolar().isKnown() || !sample.tiltPolar().isKnown()) return OptionalDouble.empty();
        double takeOff = Math.toRadians(analyser.takeOffPolar().raw());
        double tilt = Math.toRadians(sample.tiltPolar().raw());
        boolean angleElsewhere = header.experimentalVariables().stream()
                .anyMatch(v -> v.label().toLowerCase(Locale.ROOT).contains("angle")
                        || v.label().toLowerCase(Locale.ROOT).contains("tilt"));
        if (angleElsewhere || (takeOff == 0 && tilt == 0)) return OptionalDouble.empty();
        double apart = 0;
        if (takeOff != 0 && tilt != 0) {
            if (!analyser.takeOffAzimuth().isKnown() || !sample.tiltAzimuth().isKnown()) return OptionalDouble.empty();
            apart = Math.toRadians(
                    analyser.takeOffAzimuth().raw() - sample.tiltAzimuth().raw());
        }
        double cosine = Math.sin(takeOff) * Math.sin(tilt) * Math.cos(apart) + Math.cos(takeOff) * Math.cos(tilt);
        double angle = Math.toDegrees(Math.acos(Math.max(-1, Math.min(1, cosine))));
        return angle < 90 ? OptionalDouble.of(angle) : OptionalDouble.empty();
    }

    private List<HeaderField> position() {
        List<HeaderField> position = new ArrayList<>();
        for (int i = 0; i < header.experimentalVariables().size(); i++) {
            Variable variable = header.experimentalVariables().get(i);
            Real value = block.experimentalValues().get(i);
            if (value.isKnown() && variable.label().toLowerCase(Locale.ROOT).contains("position")) {
                position.add(new HeaderField(variable.label(), (value.text() + " " + variable.unit()).strip()));
            }
        }
        block.mapPosition().ifPresent(map -> {
            if (map.x().isKnown())
                position.add(new HeaderField("x coordinate", map.x().text()));
            if (map.y().isKnown())
                position.add(new HeaderField("y coordinate", map.y().text()));
        });
        return position;
    }
}
