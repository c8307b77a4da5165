package spotline.formats.iso14976;

import java.time.OffsetDateTime;

/** Items 1 to 7: when the block was measured. */
public record BlockTime(
        Real year, Real month, Real day, Real hours, Real minutes, Real seconds, Real hoursInAdvanceOfGmt) {
    public static final BlockTime UNKNOWN = new BlockTime(
            Real.UNKNOWN, Real.UNKNOWN, Real.UNKNOWN, Real.UNKNOWN, Real.UNKNOWN, Real.UNKNOWN, Real.UNKNOWN);

    /** Nanoseconds are kept as a fraction of the seconds. */
    public static BlockTime of(OffsetDateTime time) {
        return new BlockTime(
                Real.of(time.getYear()),
                Real.of(time.getMonthValue()),
                Real.of(time.getDayOfMonth()),
                Real.of(time.getHour()),
                Real.of(time.getMinute()),
                Real.of(time.getSecond() + time.getNano() * 1e-9),
                Real.of(time.getOffset().getTotalSeconds() / 3600.0));
    }

    boolean isKnown() {
        return year.isKnown()
                && month.isKnown()
                && day.isKnown()
                && hours.isKnown()
                && minutes.isKnown()
                && seconds.isKnown()
                && hoursInAdvanceOfGmt.isKnown();
    }
}
