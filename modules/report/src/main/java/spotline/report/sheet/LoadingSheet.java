package spotline.report.sheet;

import static java.util.Objects.requireNonNull;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import spotline.core.Finding;
import spotline.core.ReadException;
import spotline.holder.HolderPlan;
import spotline.holder.HolderRunReader;
import spotline.holder.HolderTemplate;
import spotline.holder.HolderTemplates;
import spotline.holder.check.PlanCheck;
import spotline.report.print.Frame;
import spotline.report.print.Paper;
import spotline.report.print.PdfPages;
import spotline.report.print.SheetPages;
import spotline.report.print.SvgPages;
import spotline.report.print.Typeface;

/**
 * The sheet to load a holder by: the holder drawn to scale with what lies on it, a ruler, the spots, what is open, and the
 * list to tick and sign.
 *
 * <p>Shape: a plan, its holder and the findings about it in; a PDF, or an SVG a page, out. The same input gives the same
 * bytes. Units: mm; drawn 1:1 where the holder fits on the paper, else reduced by a whole number, which the sheet says.
 */
public final class LoadingSheet {
    private final HolderPlan plan;
    private final Optional<HolderTemplate> holder;
    private final List<Finding> findings;

    private LoadingSheet(HolderPlan plan, Optional<HolderTemplate> holder, List<Finding> findings) {
        this.plan = requireNonNull(plan, "plan");
        this.holder = requireNonNull(holder, "holder");
        this.findings = List.copyOf(findings);
    }

    /** With the findings of the plan's own checks. */
    public static LoadingSheet of(HolderPlan plan, Optional<HolderTemplate> holder) {
        return of(plan, holder, PlanCheck.check(plan, holder));
    }

    /** @param findings about the plan; those that the plan silences are told as silenced */
    public static LoadingSheet of(HolderPlan plan, Optional<HolderTemplate> holder, List<Finding> findings) {
        return new LoadingSheet(plan, holder, findings);
    }

    /** Errors: {@link ReadException} when the holder run, or the template it names, cannot be read. */
    public static LoadingSheet read(Path holderRun) throws ReadException {
        HolderPlan plan = HolderPlan.of(HolderRunReader.read(holderRun));
        return of(plan, HolderTemplates.of(plan.file(), holderRun));
    }

    /** @param made written into the file as the time it was made; without it the file holds no time */
    public byte[] pdf(Paper paper, Optional<Instant> made) {
        SheetPages pages = pages();
        return PdfPages.write(pages, Frame.of(paper, pages.landscape()), new Typeface(), made);
    }

    /** One SVG document a page. The typeface is named, not embedded: without it another one is fitted to its widths. */
    public List<String> svg(Paper paper) {
        SheetPages pages = pages();
        return SvgPages.write(pages, Frame.of(paper, pages.landscape()));
    }

    private SheetPages pages() {
        return new SheetWriter(plan, holder, findings).write();
    }

    /**
     * The time that the environment variable {@code SOURCE_DATE_EPOCH} gives; empty for a text that is no whole number of
     * seconds since 1970 within the years a PDF can hold.
     */
    public static Optional<Instant> sourceDate(String text) {
        try {
            Instant instant = Instant.ofEpochSecond(Long.parseLong(text.strip()));
            boolean fourDigits = !instant.isBefore(Instant.EPOCH) && instant.isBefore(LAST);
            return fourDigits ? Optional.of(instant) : Optional.empty();
        } catch (NumberFormatException | java.time.DateTimeException e) {
            return Optional.empty();
        }
    }

    private static final Instant LAST = Instant.parse("9999-12-31T00:00:00Z");
}
