package spotline.report.paper;

import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import spotline.report.print.Ink;
import spotline.report.print.Mark;
import spotline.report.print.MarkImage;
import spotline.report.print.Typeface;
import spotline.report.print.Weight;

/** Turns the elements of a page into pieces, from top to bottom. */
final class PageLayout {
    private static final double TEXT_MM = 2.75;
    private static final double NOTE_MM = 2.4;
    private static final double LEADING = 1.4;
    /** Figures are drawn for a page of so many pixels. */
    private static final double PAGE_PIXELS = 880;

    private static final double BESIDE_GAP_MM = 6;
    private static final double BULLET_MM = 4;
    private static final Map<String, Double> HEADING_MM = Map.of("h1", 6.2, "h2", 4.6, "h3", 3.8, "h4", 3.1, "h5", 2.8);

    private final Typeface typeface;
    private final double widthMm;
    private final double pageMm;
    private final double mmPerPixel;
    private final List<Piece> pieces = new ArrayList<>();
    /** One page for one reader: headings take less room. */
    private boolean compact;

    private PageLayout(Typeface typeface, double widthMm, double pageMm, double mmPerPixel) {
        this.mmPerPixel = mmPerPixel;
        this.typeface = typeface;
        this.widthMm = widthMm;
        this.pageMm = pageMm;
    }

    /** @param pageMm height that the highest piece may have */
    static List<Piece> of(Typeface typeface, PageNode.Element element, double widthMm, double pageMm) {
        PageLayout layout = new PageLayout(typeface, widthMm, pageMm, widthMm / PAGE_PIXELS);
        element.elements().forEach(layout::add);
        return layout.pieces;
    }

    private void add(PageNode.Element element) {
        switch (element.tag()) {
            case "nav", "footer" -> {}
            case "h1", "h2", "h3", "h4", "h5" -> heading(element);
            case "p", "summary", "figcaption" -> {
                if (element.is("keys")) keys(element);
                else paragraph(element, 0, "");
            }
            case "ul", "ol" -> list(element);
            case "dl" -> facts(element);
            case "table" -> pieces.addAll(TableLayout.of(typeface, element, widthMm, pageMm));
            case "figure" -> pieces.add(figure(element, widthMm, mmPerPixel));
            case "img" -> image(element);
            default -> container(element);
        }
    }

    private void container(PageNode.Element element) {
        if (element.is("owner")) compact = true;
        if (element.is("grid")) {
            grid(element);
        } else if (element.is("beside")) {
            beside(element);
        } else {
            int from = pieces.size();
            element.elements().forEach(this::add);
            boolean breaks = element.is("sample") && from < pieces.size();
            if (breaks) pieces.set(from, pieces.get(from).onNewPage());
        }
    }

    private void heading(PageNode.Element element) {
        int level = element.tag().charAt(1) - '0';
        boolean low = compact && level == 2;
        double size = low ? HEADING_MM.getOrDefault("h3", TEXT_MM) : HEADING_MM.getOrDefault(element.tag(), TEXT_MM);
        List<Inline.Line> lines =
                Inline.of(typeface, element, Weight.BOLD, Ink.BLACK).lines(widthMm, size);
        double above = low ? 1.7 : level <= 2 ? 4 : 2.2;
        double lineMm = 1.25 * size;
        double below = low ? 2 : level <= 2 ? 2.4 : 1.2;
        double height = above + lines.size() * lineMm + below;
        boolean ruled = level == 2;
        Piece piece = Piece.of(height, (page, x, y) -> {
            double baseline = y + above + size;
            for (Inline.Line line : lines) {
                line.draw(page, x, baseline, size);
                baseline += lineMm;
            }
            if (ruled) page.line("", x, y + height - 1.4, x + widthMm, y + height - 1.4, Ink.BLACK, 0.25);
        });
        pieces.add(piece.keptWithNext()
                .marked(new Piece.Heading(Math.max(1, level - 1), element.text().strip())));
    }

    private void paragraph(PageNode.Element element, double indent, String bullet) {
        boolean note = element.is("note") || element.tag().equals("figcaption") || element.is("kicker");
        double size = note ? NOTE_MM : TEXT_MM;
        boolean bold = element.is("opening") || element.is("banner");
        List<Inline.Line> lines = Inline.of(
                        typeface, element, bold ? Weight.BOLD : Weight.REGULAR, note ? Ink.DARK : Ink.BLACK)
                .lines(widthMm - indent, size);
        double lineMm = LEADING * size;
        for (int i = 0; i < lines.size(); i++) {
            Inline.Line line = lines.get(i);
            boolean first = i == 0;
            double after = i == lines.size() - 1 ? (compact ? 0.5 : 1.1) : 0;
            Piece piece = Piece.of(lineMm + after, (page, x, y) -> {
                if (first && !bullet.isEmpty()) page.words(x, y + size, size, Weight.REGULAR, Ink.BLACK, bullet);
                line.draw(page, x + indent, y + size, size);
            });
            // Neither the first nor the last line stands alone on a page.
            boolean keep = lines.size() > 1 && (i == 0 || i == lines.size() - 2);
            pieces.add(keep ? piece.keptWithNext() : piece);
        }
    }

    private void list(PageNode.Element list) {
        String bullet = list.is("findings") ? "" : "\u2022";
        list.elements().forEach(item -> paragraph(item, bullet.isEmpty() ? 0 : BULLET_MM, bullet));
        pieces.add(Piece.space(compact ? 0.3 : 1));
    }

    /** Terms above what is known of each, in columns. */
    private void facts(PageNode.Element list) {
        int columns = 4;
        double columnMm = widthMm / columns;
        List<PageNode.Element> row = new ArrayList<>();
        int used = 0;
        for (PageNode.Element fact : list.elements().toList()) {
            int span = fact.is("wide") ? 2 : 1;
            if (used + span > columns) {
                pieces.add(factRow(row, columnMm));
                row = new ArrayList<>();
                used = 0;
            }
            row.add(fact);
            used += span;
        }
        if (!row.isEmpty()) pieces.add(factRow(row, columnMm));
        pieces.add(Piece.space(1.5));
    }

    private Piece factRow(List<PageNode.Element> row, double columnMm) {
        List<Piece> cells = new ArrayList<>();
        List<Double> lefts = new ArrayList<>();
        double left = 0;
        double height = 0;
        for (PageNode.Element fact : row) {
            double width = columnMm * (fact.is("wide") ? 2 : 1);
            List<Piece> parts = new ArrayList<>();
            fact.elements().forEach(part -> {
                boolean term = part.tag().equals("dt");
                double size = term ? 2.1 : 2.5;
                for (Inline.Line line : Inline.of(typeface, part, Weight.REGULAR, term ? Ink.DARK : Ink.BLACK)
                        .lines(width - 3, size)) {
                    parts.add(Piece.of(1.32 * size, (page, x, y) -> line.draw(page, x, y + size, size)));
                }
            });
            Piece cell = Piece.stacked(parts);
            cells.add(cell);
            lefts.add(left);
            left += width;
            height = Math.max(height, cell.heightMm());
        }
        return Piece.of(height + 1.3, (page, x, y) -> {
            for (int i = 0; i < cells.size(); i++) cells.get(i).drawer().draw(page, x + lefts.get(i), y);
        });
    }

    /** A drawing with its words, as one piece. */
    private Piece figure(PageNode.Element figure, double roomMm, double most) {
        List<Piece> parts = new ArrayList<>();
        figure.drawing().ifPresent(drawing -> {
            double[] size = drawing.size();
            // Never wider than its room, never higher than most of a page.
            double scale = Math.min(most, Math.min(roomMm / size[0], 0.8 * pageMm / size[1]));
            double width = size[0] * scale;
            double height = size[1] * scale;
            parts.add(Piece.of(
                    height + 0.8, (page, x, y) -> page.add(new Mark.Vector(x, y, width, height, drawing.svg()))));
        });
        PageLayout words = new PageLayout(typeface, roomMm, pageMm, mmPerPixel);
        figure.elements().filter(e -> !e.is("drawing")).forEach(words::add);
        parts.addAll(words.pieces);
        parts.add(Piece.space(1.5));
        return Piece.stacked(parts);
    }

    private void grid(PageNode.Element grid) {
        double half = (widthMm - BESIDE_GAP_MM) / 2;
        List<PageNode.Element> figures = grid.elements().toList();
        for (int i = 0; i < figures.size(); i += 2) {
            Piece left = figure(figures.get(i), half, half);
            Piece right = i + 1 < figures.size() ? figure(figures.get(i + 1), half, half) : Piece.space(0);
            pieces.add(Piece.beside(left, right, half + BESIDE_GAP_MM));
        }
    }

    private void beside(PageNode.Element element) {
        double half = (widthMm - BESIDE_GAP_MM) / 2;
        List<List<Piece>> columns = new ArrayList<>();
        for (PageNode.Element part : element.elements().toList()) {
            PageLayout column = new PageLayout(typeface, half, pageMm, mmPerPixel);
            column.compact = compact;
            column.add(part);
            columns.add(column.pieces);
        }
        for (int i = 0; i < columns.size(); i += 2) {
            Piece left = Piece.stacked(columns.get(i));
            Piece right = i + 1 < columns.size() ? Piece.stacked(columns.get(i + 1)) : Piece.space(0);
            boolean fits = Math.max(left.heightMm(), right.heightMm()) < 0.9 * pageMm;
            if (fits) {
                pieces.add(Piece.beside(left, right, half + BESIDE_GAP_MM));
            } else {
                pieces.addAll(columns.get(i));
                if (i + 1 < columns.size()) pieces.addAll(columns.get(i + 1));
            }
        }
    }

    /** What the lines of a drawing stand for. */
    private void keys(PageNode.Element keys) {
        List<Piece> row = new ArrayList<>();
        List<Double> lefts = new ArrayList<>();
        double left = 0;
        for (PageNode.Element key : keys.elements().toList()) {
            Inline.Line words = new Inline.Line(List.of(new Inline.Run(
                    typeface.cut(key.text(), widthMm - 9, NOTE_MM, Weight.REGULAR), Weight.REGULAR, Ink.DARK)));
            double width = 8 + words.widthMm(typeface, NOTE_MM) + 4;
            if (left + width > widthMm + 4 && !row.isEmpty()) {
                pieces.add(keyRow(row, lefts));
                row = new ArrayList<>();
                lefts = new ArrayList<>();
                left = 0;
            }
            List<PageNode.Drawing> sample = key.drawing().stream().toList();
            row.add(Piece.of(3.6, (page, x, y) -> {
                sample.forEach(d -> page.add(new Mark.Vector(x, y + 0.7, 6.75, 1.8, d.svg())));
                words.draw(page, x + 8, y + NOTE_MM, NOTE_MM);
            }));
            lefts.add(left);
            left += width;
        }
        if (!row.isEmpty()) pieces.add(keyRow(row, lefts));
    }

    private static Piece keyRow(List<Piece> row, List<Double> lefts) {
        List<Piece> cells = List.copyOf(row);
        List<Double> at = List.copyOf(lefts);
        return Piece.of(3.6, (page, x, y) -> {
            for (int i = 0; i < cells.size(); i++) cells.get(i).drawer().draw(page, x + at.get(i), y);
        });
    }

    private void image(PageNode.Element element) {
        String source = element.attributes().getOrDefault("src", "");
        int comma = source.indexOf(";base64,");
        if (comma < 0) return;
        double width = Double.parseDouble(element.attributes().getOrDefault("width", "1"));
        double height = Double.parseDouble(element.attributes().getOrDefault("height", "1"));
        MarkImage image = new MarkImage(
                source.substring("data:".length(), comma),
                Base64.getDecoder().decode(source.substring(comma + 8)),
                (int) width,
                (int) height);
        double shownMm = Math.min(14, 60 / image.aspect());
        pieces.add(Piece.of(
                shownMm + 2,
                (page, x, y) -> page.add(new Mark.Picture(x, y, shownMm * image.aspect(), shownMm, image))));
    }
}
