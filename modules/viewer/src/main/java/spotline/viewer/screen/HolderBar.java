package spotline.viewer.screen;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.BiConsumer;
import javafx.geometry.VPos;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Line;
import javafx.scene.shape.Polygon;
import javafx.scene.shape.Rectangle;
import javafx.scene.text.Text;
import spotline.holder.PointMm;
import spotline.reference.Elements;
import spotline.viewer.model.HolderPicture;
import spotline.viewer.model.Shape;
import spotline.viewer.model.SpotFace;
import spotline.viewer.model.Words;

/** The holder across the top of the window, to scale, each spot with its label, its charge verdict and its composition. */
public final class HolderBar extends Region {
    /** Share of the window's height, and what it may not leave. */
    private static final double SHARE = 0.24;

    private static final double LOWEST = 170;
    private static final double HIGHEST = 300;

    private static final double SIDE = 14;
    private static final double NARROWEST_TAG = 112;
    private static final double WIDEST_TAG = 220;
    private static final double LETTER = 6.5;
    private static final double TAG_HEIGHT = 32;
    private static final double STRIP_HEIGHT = 7;
    private static final double TEXT_HEIGHT = 16;

    private final Pane drawing = new Pane();
    private final Words words;
    private final BiConsumer<String, Boolean> choose;
    private final Map<String, Region> tags = new HashMap<>();
    private HolderPicture picture;
    private List<SpotFace> faces = List.of();
    private Set<String> chosen = Set.of();
    private String focus = "";
    private Palette palette = Palette.LIGHT;
    private double textScale = 1;
    private double tagHeight = TAG_HEIGHT;
    private double drawnWidth = -1;
    private double drawnHeight = -1;
    private final StringBuilder typed = new StringBuilder();
    private long lastTyped;

    /** @param choose is told the spot, and whether it is added to those already chosen */
    public HolderBar(Words words, BiConsumer<String, Boolean> choose) {
        this.words = words;
        this.choose = choose;
        this.picture = new HolderPicture(0, 0, 1, 1, java.util.Optional.empty(), List.of(), List.of(), List.of());
        getStyleClass().add("holder-bar");
        setId("holder-bar");
        setFocusTraversable(true);
        setAccessibleRole(AccessibleRole.LIST_VIEW);
        setAccessibleText(words.of("holder.name"));
        getChildren().add(drawing);
        addEventHandler(KeyEvent.KEY_PRESSED, this::pressed);
        addEventHandler(KeyEvent.KEY_TYPED, this::typed);
        setMinHeight(LOWEST);
    }

    public void show(
            HolderPicture newPicture,
            List<SpotFace> newFaces,
            Set<String> newChosen,
            Palette newPalette,
            double newTextScale) {
        textScale = newTextScale;
        tagHeight = Math.round(TAG_HEIGHT + TEXT_HEIGHT * (newTextScale - 1));
        picture = newPicture;
        faces = List.copyOf(newFaces);
        chosen = Set.copyOf(newChosen);
        palette = newPalette;
        if (!newChosen.isEmpty() && !newChosen.contains(focus))
            focus = newChosen.iterator().next();
        draw();
    }

    /** The bench is what is worked on: it has the most of a small window. */
    @Override
    protected double computePrefHeight(double width) {
        double window = getScene() == null ? 0 : getScene().getHeight();
        return Math.max(LOWEST, Math.min(HIGHEST, SHARE * window));
    }

    @Override
    protected void layoutChildren() {
        // Drawing changes what is laid out: only another size asks for it.
        if (getWidth() != drawnWidth || getHeight() != drawnHeight) draw();
    }

    private void draw() {
        drawnWidth = getWidth();
        drawnHeight = getHeight();
        double width = getWidth();
        double height = getHeight();
        drawing.resizeRelocate(0, 0, width, height);
        drawing.getChildren().clear();
        tags.clear();
        if (width < 10 || height < 10 || picture.spots().isEmpty()) return;
        Frame frame = Frame.of(picture, width, height, tagHeight);
        picture.outline()
                .ifPresent(o -> drawing.getChildren().add(polygon(frame, o, palette.panel(), palette.metal(), 1.2)));
        for (Shape k : picture.keepOuts()) {
            Polygon p = polygon(frame, k, palette.rule(), palette.metal(), 0.6);
            p.setOpacity(0.55);
            drawing.getChildren().add(p);
        }
        for (HolderPicture.Piece piece : picture.pieces()) drawing.getChildren().add(piece(frame, piece));
        List<Node> leaders = new ArrayList<>();
        List<Node> labels = new ArrayList<>();
        place(frame, leaders, labels);
        drawing.getChildren().addAll(leaders);
        drawing.getChildren().addAll(labels);
        // What is made while the window is laid out would be styled a frame late, or never.
        drawing.applyCss();
        drawing.layout();
    }

    /** Millimetres to pixels. */
    private record Frame(
            double left, double top, double scale, double lowX, double highY, double bottom, double right) {
        static Frame of(HolderPicture picture, double width, double height, double tagHeight) {
            double room = height - 2 * (tagHeight + 6);
            double scale = Math.min((width - 2 * SIDE) / picture.widthMm(), Math.max(20, room) / picture.heightMm());
            double left = (width - scale * picture.widthMm()) / 2;
            double top = (height - scale * picture.heightMm()) / 2;
            return new Frame(left, top, scale, picture.lowX(), picture.highY(), height, width);
        }

        double x(double mm) {
            return left + (mm - lowX) * scale;
        }

        double y(double mm) {
            return top + (highY - mm) * scale;
        }
    }

    private Polygon polygon(Frame frame, Shape shape, Color fill, Color stroke, double strokeWidth) {
        Polygon p = new Polygon();
        for (PointMm corner : shape.corners()) p.getPoints().addAll(frame.x(corner.x()), frame.y(corner.y()));
        p.setFill(fill);
        p.setStroke(stroke);
        p.setStrokeWidth(strokeWidth);
        p.setMouseTransparent(true);
        return p;
    }

    private Node piece(Frame frame, HolderPicture.Piece piece) {
        Polygon p = switch (piece.kind()) {
            case TAPE -> polygon(frame, piece.shape(), palette.rule(), palette.metal(), 0.5);
            case SPECIMEN -> polygon(frame, piece.shape(), palette.specimen(), palette.quiet(), 1);
            case CLIP -> polygon(frame, piece.shape(), palette.metal(), palette.quiet(), 0.8);
        };
        p.setAccessibleText(piece.name());
        return p;
    }

    /** Labels stand above the holder and below it in turns, where the next one would touch its neighbour. */
    private void place(Frame frame, List<Node> leaders, List<Node> labels) {
        double[] taken = {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
        List<HolderPicture.SpotPlace> sorted = new ArrayList<>(picture.spots());
        sorted.sort(java.util.Comparator.comparingDouble(s -> s.at().x()));
        double above = Math.max(2, frame.y(picture.highY()) - tagHeight - 4);
        double below = Math.min(frame.bottom() - tagHeight - 2, frame.y(picture.lowY()) + 4);
        double width = Math.max(34, Math.min(wanted(sorted), 1.9 * (frame.right() - 2 * SIDE) / sorted.size()));
        for (HolderPicture.SpotPlace spot : sorted) {
            double x = frame.x(spot.at().x());
            double y = frame.y(spot.at().y());
            int side = taken[0] <= taken[1] ? 0 : 1;
            if (x - width / 2 >= taken[0] + 4) side = 0;
            double left = Math.max(2, Math.min(frame.right() - width - 2, Math.max(x - width / 2, taken[side] + 4)));
            taken[side] = left + width;
            double top = side == 0 ? above : below;
            boolean isChosen = chosen.contains(spot.id());
            Line leader = new Line(
                    x, y, Math.max(left + 6, Math.min(left + width - 6, x)), side == 0 ? top + tagHeight : top);
            leader.setStroke(isChosen ? palette.accent() : palette.quiet());
            leader.setStrokeWidth(isChosen ? 1.6 : 0.8);
            leader.setMouseTransparent(true);
            leaders.add(leader);
            spot.footprint().ifPresent(f -> leaders.add(polygon(frame, f, palette.accent(), palette.accent(), 0.8)));
            Circle dot = new Circle(x, y, isChosen ? 4.5 : 3, isChosen ? palette.accent() : palette.ink());
            dot.setOnMouseClicked(e -> choose(spot.id(), e.isShortcutDown() || e.isShiftDown()));
            leaders.add(dot);
            Region tag = tag(spot, width, isChosen);
            tag.resizeRelocate(left, top, width, tagHeight);
            tags.put(spot.id(), tag);
            labels.add(tag);
        }
    }

    /** One width for all labels, so that their strips can be compared: what the longest name needs. */
    private double wanted(List<HolderPicture.SpotPlace> spots) {
        int letters = spots.stream()
                .mapToInt(s -> s.id().length() + 2 + s.sample().length())
                .max()
                .orElse(0);
        return textScale * Math.max(NARROWEST_TAG, Math.min(WIDEST_TAG, LETTER * letters + 30));
    }

    private Region tag(HolderPicture.SpotPlace spot, double width, boolean isChosen) {
        Pane tag = new Pane();
        tag.setManaged(false);
        tag.setId("spot-" + spot.id());
        tag.getStyleClass().add("spot-tag");
        if (isChosen) tag.getStyleClass().add("chosen");
        tag.setAccessibleRole(AccessibleRole.TOGGLE_BUTTON);
        SpotFace face =
                faces.stream().filter(f -> f.id().equals(spot.id())).findFirst().orElse(null);
        tag.setAccessibleText(face == null ? words.of("spot.untreated", spot.id()) : face.spoken());
        Text name = new Text(
                face == null || width < 60 * textScale
                        ? spot.id()
                        : clipped(spot.id() + "  " + spot.sample(), (width - 26) / textScale));
        name.getStyleClass().add("spot-name");
        name.setFill(palette.ink());
        name.setTextOrigin(VPos.TOP);
        name.relocate(5, 3);
        tag.getChildren().add(name);
        if (face != null) {
            Node mark = VerdictMark.of(face.verdict(), 9, palette);
            mark.relocate(width - 15, 5);
            tag.getChildren().add(mark);
            strip(tag, face, width - 10);
        }
        tag.setOnMouseClicked(e -> choose(spot.id(), e.isShortcutDown() || e.isShiftDown()));
        Tooltip.install(tag, new Tooltip(tag.getAccessibleText()));
        return tag;
    }

    private static String clipped(String text, double width) {
        int most = Math.max(2, (int) (width / (LETTER - 0.1)));
        return text.length() <= most ? text : text.substring(0, most - 1) + "\u2026";
    }

    private void strip(Pane tag, SpotFace face, double width) {
        double x = 5;
        Rectangle empty = new Rectangle(5, tagHeight - STRIP_HEIGHT - 4, width, STRIP_HEIGHT);
        empty.setFill(palette.rule());
        tag.getChildren().add(empty);
        for (SpotFace.Share share : face.shares()) {
            double part = share.part() * width;
            Rectangle r = new Rectangle(x, tagHeight - STRIP_HEIGHT - 4, Math.max(0.5, part - 0.8), STRIP_HEIGHT);
            r.setFill(Palette.ofElement(
                    Elements.bySymbol(share.element()).map(e -> e.z()).orElse(0)));
            tag.getChildren().add(r);
            x += part;
        }
    }

    private void choose(String spot, boolean add) {
        requestFocus();
        focus = spot;
        choose.accept(spot, add);
    }

    private void pressed(KeyEvent e) {
        int dx = e.getCode() == KeyCode.LEFT ? -1 : e.getCode() == KeyCode.RIGHT ? 1 : 0;
        int dy = e.getCode() == KeyCode.DOWN ? -1 : e.getCode() == KeyCode.UP ? 1 : 0;
        if ((dx == 0 && dy == 0) || picture.spots().isEmpty()) return;
        String from = focus.isEmpty() ? picture.spots().get(0).id() : focus;
        choose(picture.neighbour(from, dx, dy), e.isShiftDown());
        e.consume();
    }

    /** Typing a label chooses the spot; letters within a second belong together. */
    private void typed(KeyEvent e) {
        String c = e.getCharacter();
        if (c.isEmpty() || Character.isISOControl(c.charAt(0))) return;
        long now = System.currentTimeMillis();
        if (now - lastTyped > 1000) typed.setLength(0);
        lastTyped = now;
        typed.append(c);
        String label = typed.toString();
        picture.spots().stream()
                .filter(s -> s.id().equalsIgnoreCase(label))
                .findFirst()
                .or(() -> picture.spots().stream()
                        .filter(s -> s.id().startsWith(label))
                        .findFirst())
                .ifPresent(s -> choose(s.id(), false));
        e.consume();
    }

    /** The tag of a spot, for tests and for scrolling to it. */
    Region tagOf(String spot) {
        return Objects.requireNonNull(tags.get(spot), spot);
    }
}
