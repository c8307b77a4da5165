package spotline.holder.json;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Optional;

/** Days as files write them, {@code 2026-05-12}. Read by hand, since a date formatter is slow to start. */
public final class CalendarDate {
    private CalendarDate() {}

    /** Empty for anything but four, two and two digits of a day that the calendar has. */
    public static Optional<LocalDate> of(String text) {
        if (text.length() != 10 || text.charAt(4) != '-' || text.charAt(7) != '-') return Optional.empty();
        int year = number(text, 0, 4);
        int month = number(text, 5, 7);
        int day = number(text, 8, 10);
        boolean inRange = year >= 0 && month >= 1 && month <= 12 && day >= 1;
        return inRange && YearMonth.of(year, month).isValidDay(day)
                ? Optional.of(LocalDate.of(year, month, day))
                : Optional.empty();
    }

    private static int number(String text, int from, int to) {
        int number = 0;
        for (int i = from; i < to; i++) {
            char digit = text.charAt(i);
            if (digit < '0' || digit > '9') return Integer.MIN_VALUE;
            number = 10 * number + digit - '0';
        }
        return number;
    }
}
