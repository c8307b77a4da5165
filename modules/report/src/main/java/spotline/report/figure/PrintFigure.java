package spotline.report.figure;

import static java.util.Objects.requireNonNull;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import javax.imageio.stream.ImageOutputStream;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.block.BlockBorder;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.svg.SVGGraphics2D;
import org.jfree.svg.ViewBox;
import spotline.report.print.Frame;
import spotline.report.print.Mark;
import spotline.report.print.PdfPages;
import spotline.report.print.SheetPages;
import spotline.report.print.Typeface;

/** A figure for a paper, ready to be written as SVG, PDF or PNG. The same figure gives the same bytes. */
public final class PrintFigure {
    /** Kind of file. */
    public enum Kind {
        SVG,
        PDF,
        PNG;

        /** By the end of a file's name; empty for another. */
        public static Optional<Kind> of(String fileName) {
            String lower = fileName.toLowerCase(Locale.ROOT);
            for (Kind kind : values()) {
                if (lower.endsWith("." + kind.name().toLowerCase(Locale.ROOT))) return Optional.of(kind);
            }
            return Optional.empty();
        }
    }

    private final Plot plot;
    private final boolean legend;
    private final PrintStyle style;
    private final String description;

    /**
     * @param legend whether the curves are named beneath
     * @param description in words
     */
    PrintFigure(Plot plot, boolean legend, PrintStyle style, String description) {
        this.plot = requireNonNull(plot, "plot");
        this.legend = legend;
        this.style = requireNonNull(style, "style");
        this.description = requireNonNull(description, "description");
    }

    public String description() {
        return description;
    }

    /** @param made written into a PDF as the time it was made; without it the file holds no time */
    public byte[] bytes(Kind kind, Optional<Instant> made) {
        return switch (kind) {
            case SVG -> document().getBytes(StandardCharsets.UTF_8);
            case PDF -> pdf(made);
            case PNG -> png();
        };
    }

    private JFreeChart chart() {
        Plots.keepRotatedText();
        JFreeChart chart = new JFreeChart(null, style.font(), plot, legend);
        chart.setBackgroundPaint(Color.WHITE);
        chart.setPadding(new RectangleInsets(2, 2, 1, 2));
        LegendTitle names = chart.getLegend();
        if (names != null) {
            names.setItemFont(new PrintPlots(style).small());
            names.setFrame(BlockBorder.NONE);
            names.setBackgroundPaint(null);
            names.setItemLabelPadding(new RectangleInsets(1, 2, 1, 6));
        }
        return chart;
    }

    private String svg() {
        SVGGraphics2D graphics = new SVGGraphics2D(style.widthPt(), style.heightPt());
        graphics.setDefsKeyPrefix("f");
        chart().draw(graphics, area());
        return graphics.getSVGElement(
                        null, false, new ViewBox(0, 0, (int) style.widthPt(), (int) style.heightPt()), null, null)
                .replaceFirst(" xmlns:xlink='[^']*' xmlns:jfreesvg='[^']*'", "")
                .replaceFirst(
                        "viewBox='[^']*'",
                        String.format(Locale.ROOT, "viewBox='0 0 %.3f %.3f'", style.widthPt(), style.heightPt()))
                .replaceAll("font-family: [^;]*;", "font-family: DejaVu Sans, sans-serif;");
    }

    private Rectangle2D area() {
        return new Rectangle2D.Double(0, 0, style.widthPt(), style.heightPt());
    }

    private String document() {
        String size =
                String.format(Locale.ROOT, "<svg width='%.2fmm' height='%.2fmm' ", style.widthMm(), style.heightMm());
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + svg().replaceFirst("<svg ", size) + "\n";
    }

    private byte[] pdf(Optional<Instant> made) {
        List<Mark> marks = List.of(new Mark.Vector(0, 0, style.widthMm(), style.heightMm(), svg()));
        SheetPages pages = new SheetPages(description, false, List.of(marks), List.of(), true);
        return PdfPages.write(pages, Frame.tight(style.widthMm(), style.heightMm()), new Typeface(), made);
    }

    private byte[] png() {
        double dotsPerPoint = style.dpi() / 72.0;
        BufferedImage image = new BufferedImage(
                (int) Math.round(style.widthPt() * dotsPerPoint),
                (int) Math.round(style.heightPt() * dotsPerPoint),
                BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        graphics.setRenderingHint(RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
        graphics.scale(dotsPerPoint, dotsPerPoint);
        chart().draw(graphics, area());
        graphics.dispose();
        try {
            return written(image);
        } catch (IOException e) {
            throw new UncheckedIOException("a picture could not be made in memory", e);
        }
    }

    /** With its resolution, so that it comes out at its size when it is placed in a text. */
    private byte[] written(BufferedImage image) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
        IIOMetadata metadata = writer.getDefaultImageMetadata(ImageTypeSpecifier.createFromRenderedImage(image), null);
        // In the words of PNG itself: the library takes the size of a dot of its general form for a density.
        String perMetre = Long.toString(Math.round(style.dpi() / 0.0254));
        IIOMetadataNode density = new IIOMetadataNode("pHYs");
        density.setAttribute("pixelsPerUnitXAxis", perMetre);
        density.setAttribute("pixelsPerUnitYAxis", perMetre);
        density.setAttribute("unitSpecifier", "meter");
        IIOMetadataNode root = new IIOMetadataNode("javax_imageio_png_1.0");
        root.appendChild(density);
        metadata.mergeTree("javax_imageio_png_1.0", root);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ImageOutputStream to = ImageIO.createImageOutputStream(out)) {
            writer.setOutput(to);
            writer.write(new IIOImage(image, null, metadata));
        }
        writer.dispose();
        return out.toByteArray();
    }
}
