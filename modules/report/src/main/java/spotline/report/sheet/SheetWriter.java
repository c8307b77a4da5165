package spotline.report.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.holder.HolderPlan;
import spotline.holder.HolderTemplate;
import spotline.holder.LocalRiskReview;
import spotline.holder.Silence;
import spotline.holder.check.Caution;
import spotline.holder.check.Cautions;
import spotline.report.print.Canvas;
import spotline.report.print.Flow;
import spotline.report.print.Frame;
import spotline.report.print.Ink;
import spotline.report.print.Paper;
import spotline.report.print.SheetPages;
import spotline.report.print.Typeface;
import spotline.report.print.Weight;

/** Lays the parts of a sheet out on pages. */
final class SheetWriter {
    private static final double RULER_MM = 100;

    /** Height kept for the head of the sheet, the ruler and the legend. */
    private static final double HEAD_MM = 85;

    /** Width of a caution's topic. */
    private static final double CAUTION_MM = 34;

    private final HolderPlan plan;
    private final Optional<HolderTemplate> holder;
    private final List<Finding> open = new ArrayList<>();
    private final List<String> silenced = new ArrayList<>();
    private final HolderFigure figure;
    private final boolean landscape;
    private final int reduction;
    private final Flow flow;

    SheetWriter(HolderPlan plan, Optional<HolderTemplate> holder, List<Finding> findings) {
        this.plan = plan;
        this.holder = holder;
        for (Finding finding : findings) {
            Optional<Silence> silence = plan.file().silence().stream()
                    .filter(entry -> entry.covers(finding))
                    .findFirst();
            if (silence.isEmpty()) open.add(finding);
            else
                silenced.add(finding.rule() + ": " + finding.message() + " Silenced: "
                        + silence.get().reason());
        }
        figure = new HolderFigure(plan, holder);
        Typeface typeface = new Typeface();
        Frame upright = Frame.of(Paper.A4, false);
        landscape = reduction(typeface, Frame.of(Paper.A4, true)) < reduction(typeface, upright);
        Frame frame = Frame.of(Paper.A4, landscape);
        reduction = reduction(typeface, frame);
        flow = new Flow(typeface, frame.widthMm(), frame.heightMm());
    }

    /** The least whole number by which the drawing fits on a page with the head and the ruler. */
    private int reduction(Typeface typeface, Frame frame) {
        double labels = figure.heightMm(typeface, frame.widthMm(), 0);
        double room = frame.heightMm() - HEAD_MM - labels;
        double by = Math.max(figure.widthMm() / frame.widthMm(), figure.holderHeightMm() / room);
        return Math.max(1, (int) Math.ceil(by - 1e-9));
    }

    SheetPages write() {
        head();
        drawing();
        new SpotTable(plan).write(flow);
        findings();
        cautions();
        new Preparation(plan).write(flow);
        List<Canvas> pages = flow.pages();
        for (int i = 0; i < pages.size(); i++) foot(pages.get(i), i + 1, pages.size());
        return new SheetPages(
                title(), landscape, pages.stream().map(Canvas::marks).toList());
    }

    private String title() {
        return plan.file().title().map(text -> "Loading sheet: " + text).orElse("Loading sheet");
    }

    private void head() {
        flow.page().words(0, 5.2, 5.6, Weight.BOLD, Ink.BLACK, "Loading sheet");
        flow.page()
                .wordsRight(
                        flow.widthMm(),
                        5.2,
                        3.4,
                        Weight.REGULAR,
                        Ink.BLACK,
                        plan.file().date().map(Object::toString).orElse(""));
        flow.skip(8);
        plan.file().title().ifPresent(text -> flow.paragraph(text, 0, 3.6, Weight.BOLD, Ink.BLACK));
        List<String> facts = new ArrayList<>();
        facts.add("Holder: "
                + holder.map(h -> h.name() + h.title().map(t -> " (" + t + ")").orElse(""))
                        .orElse("not named"));
        plan.file().operator().ifPresent(name -> facts.add("Operator: " + name));
        plan.file().instrument().name().ifPresent(name -> facts.add("Instrument: " + name));
        flow.paragraph(String.join("   ·   ", facts), Weight.REGULAR, Ink.DARK);
        status();
    }

    private void status() {
        List<String> reasons = Cautions.notReady(plan, open);
        boolean ready = reasons.isEmpty();
        List<String> lines = new ArrayList<>();
        String text = ready
                ? "No stop is open, and a local risk review is on record" + reviewed()
                        + ". The load is ready when the list at the end is ticked and signed."
                : String.join(" ", reasons);
        double width = flow.widthMm() - 6;
        lines.addAll(flow.typeface().lines(text, width, Flow.TEXT_MM, Weight.REGULAR));
        double height = 7.4 + lines.size() * Flow.LINE_MM;
        flow.skip(1.5);
        double y = flow.y();
        Ink ink = ready ? Ink.BLACK : Ink.ALARM;
        flow.page().outline("status", Canvas.box(0, y, flow.widthMm(), height), ink, ready ? 0.25 : 0.7, 0);
        flow.page().words(3, y + 4.8, 3.4, Weight.BOLD, ink, ready ? "CHECKED, NOT YET SIGNED" : "NOT READY TO LOAD");
        for (int i = 0; i < lines.size(); i++) {
            flow.page()
                    .words(
                            3,
                            y + 6.4 + Flow.TEXT_MM + i * Flow.LINE_MM,
                            Flow.TEXT_MM,
                            Weight.REGULAR,
                            Ink.BLACK,
                            lines.get(i));
        }
        flow.skip(height);
    }

    private String reviewed() {
        LocalRiskReview review = plan.file().localRiskReview().orElseThrow();
        return " (" + review.by() + review.date().map(day -> ", " + day).orElse("")
                + review.reference().map(text -> ", " + text).orElse("") + ")";
    }

    private void drawing() {
        double scale = 1.0 / reduction;
        double height = figure.heightMm(flow.typeface(), flow.widthMm(), scale);
        String drawn = reduction == 1 ? "drawn 1:1" : "drawn 1:" + reduction + ", not at full size";
        flow.heading("The holder as seen from the analyser, " + drawn, Math.min(height, 100) + 14);
        figure.draw(flow.page(), flow.y() + 1, flow.widthMm(), scale);
        flow.skip(height + 3);
        ruler();
        legend();
    }

    private void ruler() {
        double left = (flow.widthMm() - RULER_MM) / 2;
        double y = flow.y() + 1;
        Canvas page = flow.page();
        page.line("ruler", left, y, left + RULER_MM, y, Ink.BLACK, Canvas.THIN_MM);
        for (int mm = 0; mm <= RULER_MM; mm++) {
            double length = mm % 10 == 0 ? 3 : mm % 5 == 0 ? 2.2 : 1.4;
            page.line("ruler tick", left + mm, y, left + mm, y + length, Ink.BLACK, Canvas.HAIR_MM);
            if (mm % 10 == 0) page.wordsCentred(left + mm, y + 5.8, 2.3, Weight.REGULAR, Ink.BLACK, "" + mm);
        }
        page.words(left + RULER_MM + 4, y + 2.6, 2.3, Weight.BOLD, Ink.BLACK, "mm");
        flow.skip(7.6);
        page.wordsCentred(
                flow.widthMm() / 2,
                flow.y() + 2.3,
                2.3,
                Weight.REGULAR,
                Ink.BLACK,
                "Print at 100 %, not fitted to the page. Lay a steel rule on these 100 mm: if they differ, nothing here is"
                        + " to scale.");
        flow.skip(4.2);
    }

    private void legend() {
        List<String> parts = new ArrayList<>();
        parts.add("cross: spot, with its analysis area");
        parts.add("grey: specimen");
        boolean clips =
                plan.specimens().stream().anyMatch(s -> !s.mount().clips().isEmpty());
        boolean tape =
                plan.specimens().stream().anyMatch(s -> s.mount().tapePatch().isPresent());
        if (clips) parts.add("dark: clip");
        if (tape) parts.add("dotted: tape");
        holder.ifPresent(h -> {
            if (!h.keepOuts().isEmpty()) {
                parts.add("hatched: keep free ("
                        + String.join(
                                ", ",
                                h.keepOuts().stream()
                                        .map(HolderTemplate.KeepOut::name)
                                        .distinct()
                                        .toList())
                        + ")");
            }
            if (!h.usable().isEmpty()) parts.add("dashed: usable area");
            if (h.rotationAxis().isPresent()) parts.add("long cross: rotation axis");
            h.orientationMark().ifPresent(mark -> parts.add("triangle: " + mark.name() + " of the holder, here"));
        });
        flow.paragraph(String.join("; ", parts) + ".", 0, 2.3, Weight.REGULAR, Ink.DARK);
        holder.flatMap(HolderTemplate::origin)
                .ifPresent(text -> flow.paragraph("Dimensions: " + text, 0, 2.3, Weight.REGULAR, Ink.DARK));
    }

    private void findings() {
        flow.heading("Open findings", 8);
        if (open.isEmpty()) flow.paragraph("None.", Weight.REGULAR, Ink.BLACK);
        for (Severity severity : new Severity[] {Severity.STOP, Severity.CAUTION, Severity.NOTE}) {
            for (Finding finding : open) {
                if (finding.severity() != severity) continue;
                boolean stop = severity == Severity.STOP;
                flow.item(stop ? "STOP" : severity.word(), 17, finding.message(), stop ? Ink.ALARM : Ink.BLACK);
            }
        }
        for (String text : silenced) flow.item("silenced", 17, text, Ink.DARK);
    }

    private void cautions() {
        double height = flow.paragraphMm(Cautions.NOTICE, Weight.BOLD);
        List<String> texts = new ArrayList<>();
        List<Caution> cautions = Cautions.of(plan, holder);
        for (Caution caution : cautions) {
            String concerns = String.join(", ", caution.concerns());
            String text = concerns.isEmpty() ? caution.text() : caution.text() + " Here: " + concerns + ".";
            texts.add(text);
            height += flow.itemMm(CAUTION_MM, text);
        }
        flow.heading("Cautions", flow.together(height));
        for (int i = 0; i < texts.size(); i++) {
            flow.item(cautions.get(i).topic(), CAUTION_MM, texts.get(i), Ink.BLACK);
        }
        flow.paragraph(Cautions.NOTICE, Weight.BOLD, Ink.BLACK);
    }

    private void foot(Canvas page, int number, int of) {
        double y = flow.heightMm() - 0.6;
        page.line("", 0, y - 3.4, flow.widthMm(), y - 3.4, Ink.DARK, Canvas.HAIR_MM);
        String text = page.typeface().cut(title(), flow.widthMm() - 30, 2.3, Weight.REGULAR);
        page.words(0, y, 2.3, Weight.REGULAR, Ink.DARK, text);
        page.wordsRight(flow.widthMm(), y, 2.3, Weight.REGULAR, Ink.DARK, "page " + number + " of " + of);
    }
}
