package spotline.report.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.core.Decimal;
import spotline.holder.HolderPlan;
import spotline.holder.LocalRiskReview;
import spotline.holder.MountMethod;
import spotline.holder.Sample;
import spotline.holder.SampleForm;
import spotline.holder.Specimen;
import spotline.holder.Spot;
import spotline.holder.StagePlan;
import spotline.report.print.Flow;
import spotline.report.print.Ink;
import spotline.report.print.Weight;

/** What to do before loading, with a box each, and who did it. Source of the points: common practice, no source. */
final class Preparation {
    private static final double BOX_MM = 3.4;
    private static final double GAP_MM = 2;
    private static final double SIGNATURE_MM = 16;

    private final HolderPlan plan;

    Preparation(HolderPlan plan) {
        this.plan = plan;
    }

    void write(Flow flow) {
        List<String> points = points();
        List<List<String>> wrapped = new ArrayList<>();
        double column = flow.widthMm() / 2;
        double width = column - BOX_MM - GAP_MM - 4;
        for (String point : points) {
            wrapped.add(flow.typeface().lines(point, width, Flow.TEXT_MM, Weight.REGULAR));
        }
        double height = SIGNATURE_MM + 2 * (BOX_MM + 2);
        for (int i = 0; i < wrapped.size(); i += 2) height += rowMm(wrapped, i);
        flow.heading("Before loading", flow.together(height));
        review(flow);
        for (int i = 0; i < wrapped.size(); i += 2) {
            double row = rowMm(wrapped, i);
            flow.need(row);
            point(flow, 0, wrapped.get(i), false);
            if (i + 1 < wrapped.size()) point(flow, column, wrapped.get(i + 1), false);
            flow.skip(row);
        }
        signatures(flow);
    }

    private static double rowMm(List<List<String>> wrapped, int i) {
        int lines = wrapped.get(i).size();
        if (i + 1 < wrapped.size()) lines = Math.max(lines, wrapped.get(i + 1).size());
        return Math.max(BOX_MM + 0.4, lines * Flow.LINE_MM) + 1.5;
    }

    private static void point(Flow flow, double x, List<String> lines, boolean ticked) {
        flow.page().tickBox(x, flow.y(), BOX_MM, ticked);
        double y = flow.y() + Flow.TEXT_MM + 0.1;
        for (String line : lines) {
            flow.page().words(x + BOX_MM + GAP_MM, y, Flow.TEXT_MM, Weight.REGULAR, Ink.BLACK, line);
            y += Flow.LINE_MM;
        }
    }

    /** The one box that the record can tick, since it names who did the review. */
    private void review(Flow flow) {
        Optional<LocalRiskReview> review = plan.file().localRiskReview();
        String text = review.isPresent()
                ? "Risks reviewed under the local rules by " + review.get().by()
                        + review.get().date().map(day -> ", " + day).orElse("")
                        + review.get()
                                .reference()
                                .map(where -> " (" + where + ")")
                                .orElse("")
                        + ", as the record says."
                : "Risks reviewed under the local rules, by (name): ______________________________  date: ____________";
        List<String> lines =
                flow.typeface().lines(text, flow.widthMm() - BOX_MM - GAP_MM, Flow.TEXT_MM, Weight.REGULAR);
        double height = Math.max(BOX_MM + 0.4, lines.size() * Flow.LINE_MM) + 1.5;
        flow.need(height);
        point(flow, 0, lines, review.isPresent());
        flow.skip(height);
    }

    private List<String> points() {
        List<String> points = new ArrayList<>(List.of(
                "Protection worn as the local risk review says",
                "Clean gloves on; changed after anything else was touched",
                "Holder cleaned, and clean when looked at",
                "Contacts of the holder not touched",
                "Tools cleaned between samples",
                "Every label checked against this sheet, and the orientation mark where the drawing has it",
                "Nothing reaches over the edge or into a hatched area",
                "Heights and thicknesses within the holder's limits"));
        if (any(SampleForm.POWDER) || anyMount(MountMethod.POWDER_ON_TAPE)) {
            points.add("Loose powder removed, away from the other samples");
        } else {
            points.add("No loose grains, fibres or flakes on the holder");
        }
        if (any(SampleForm.LIQUID_RESIDUE)) points.add("Residues dry, and allowed in the vacuum");
        points.add("Conduction paths as declared: straps on, clips tight, isolated samples free of metal");
        if (plan.specimens().stream().anyMatch(Preparation::keptFromAir)) {
            points.add("Samples kept from the air: vessel closed and tight, time in air written down: ________ s");
        }
        if (plan.spots().stream().anyMatch(Spot::sputtered)) {
            points.add("Ion gun: steps agreed with those trained on it; nothing loose in its reach");
        }
        if (!plan.file().stage().setPoints().isEmpty()) points.add("Set-points entered as planned: " + setPoints());
        if (plan.file().stage().biasV().orElse(0) != 0) {
            OptionalDouble bias = plan.file().stage().biasV();
            points.add("Bias agreed with those allowed to connect it: " + Decimal.significant(bias.getAsDouble(), 3)
                    + " V");
        }
        points.add("Photograph taken with this sheet beside the holder");
        return points;
    }

    private String setPoints() {
        List<String> texts = new ArrayList<>();
        for (StagePlan.SetPoint point : plan.file().stage().setPoints()) {
            texts.add(Decimal.significant(point.temperatureC(), 4) + " °C"
                    + (point.holdMinutes().isPresent()
                            ? " for " + Decimal.significant(point.holdMinutes().getAsDouble(), 3) + " min"
                            : ""));
        }
        return String.join(", ", texts);
    }

    private static boolean keptFromAir(Specimen specimen) {
        return specimen.transfer().isPresent()
                || specimen.sample().filter(Sample::airSensitive).isPresent();
    }

    private boolean any(SampleForm form) {
        return plan.specimens().stream()
                .anyMatch(specimen -> specimen.sample()
                        .filter(sample -> sample.form() == form)
                        .isPresent());
    }

    private boolean anyMount(MountMethod method) {
        return plan.specimens().stream().anyMatch(specimen -> specimen.mount().method() == method);
    }

    private static void signatures(Flow flow) {
        flow.need(SIGNATURE_MM);
        flow.skip(11);
        double width = flow.widthMm();
        String[] names = {"Prepared by", "Checked by", "Date and time"};
        double[] from = {0, 0.38 * width, 0.76 * width};
        double[] to = {0.35 * width, 0.73 * width, width};
        for (int i = 0; i < names.length; i++) {
            flow.page().line("signature", from[i], flow.y(), to[i], flow.y(), Ink.BLACK, 0.25);
            flow.page().words(from[i], flow.y() + 3.2, 2.3, Weight.REGULAR, Ink.DARK, names[i]);
        }
        flow.skip(5);
    }
}
