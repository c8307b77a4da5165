package spotline.report;

import static java.util.Objects.requireNonNull;

import java.time.Instant;
import java.util.Optional;
import spotline.report.html.Form;
import spotline.report.html.Letterhead;

/**
 * How the files of a run are made up.
 *
 * @param made written into files that hold a time; without it they hold none, or the earliest they can
 */
public record ReportOptions(Form form, Letterhead letterhead, Optional<Instant> made) {
    public static final ReportOptions DEFAULT = new ReportOptions(Form.FULL, Letterhead.NONE, Optional.empty());

    public ReportOptions {
        requireNonNull(form, "form");
        requireNonNull(letterhead, "letterhead");
        requireNonNull(made, "made");
    }
}
