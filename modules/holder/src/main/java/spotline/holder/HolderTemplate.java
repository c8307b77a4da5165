package spotline.holder;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What samples are mounted on. What is not known is not checked against.
 *
 * @param origin where the dimensions come from
 * @param outline corners in order, mm, lower left corner of their extent at 0, 0
 * @param usable corners of the area on which samples may lie; empty when not known
 * @param referenceHeightMm of the reference plane above the holder's base, mm
 * @param heightWindow heights at which a surface can be analysed, mm from the reference plane
 * @param maxThicknessMm of a specimen with its tape or slip, mm
 * @param temperature range the stage can be set to
 * @param rotationAxis where the axis meets the surface
 * @param orientationMark by which people tell which way round the holder lies
 * @param electricalContacts number of separate contacts to the samples
 */
public record HolderTemplate(
        String name,
        Optional<String> title,
        Optional<String> origin,
        List<PointMm> outline,
        List<PointMm> usable,
        List<KeepOut> keepOuts,
        OptionalDouble referenceHeightMm,
        Optional<HeightWindow> heightWindow,
        OptionalDouble maxThicknessMm,
        Optional<TemperatureRange> temperature,
        Optional<PointMm> rotationAxis,
        Optional<OrientationMark> orientationMark,
        List<StubSeat> stubSeats,
        OptionalInt electricalContacts,
        Optional<Boolean> biasPossible) {
    public HolderTemplate {
        if (name.isBlank()) throw new IllegalArgumentException("a holder template needs a name");
        outline = List.copyOf(outline);
        if (outline.size() < 3) {
            throw new IllegalArgumentException("an outline needs 3 corners or more, had " + outline.size());
        }
        usable = List.copyOf(usable);
        keepOuts = List.copyOf(keepOuts);
        stubSeats = List.copyOf(stubSeats);
    }

    /** An area that must stay free, with what is there. */
    public record KeepOut(String name, Kind kind, List<PointMm> outline) {
        public KeepOut {
            requireNonNull(name, "name");
            requireNonNull(kind, "kind");
            outline = List.copyOf(outline);
        }

        /** What stands in the way. */
        public enum Kind implements Word {
            CONTACT,
            SCREW,
            CLIP,
            GRIP,
            OTHER
        }
    }

    /** Heights in mm from the reference plane. */
    public record HeightWindow(double low, double high) {
        public HeightWindow {
            if (!(low <= high))
                throw new IllegalArgumentException("low must not lie above high, were " + low + ", " + high);
        }
    }

    /** Stage temperatures, degrees Celsius, and where the range is recorded. */
    public record TemperatureRange(double min, double max, Optional<String> record) {
        public TemperatureRange {
            if (!(min <= max))
                throw new IllegalArgumentException("min must not lie above max, were " + min + ", " + max);
        }
    }

    /** Something on the holder that has no mirror image, with where it is. */
    public record OrientationMark(String name, PointMm at) {
        public OrientationMark {
            if (name.isBlank()) throw new IllegalArgumentException("an orientation mark needs a name");
        }
    }

    /** A round seat for a stub, mm. */
    public record StubSeat(String id, PointMm centre, double diameterMm) {
        public StubSeat {
            if (id.isBlank()) throw new IllegalArgumentException("a seat needs an id");
            if (!(diameterMm > 0)) throw new IllegalArgumentException("a seat must be above 0 mm, was " + diameterMm);
        }
    }
}
