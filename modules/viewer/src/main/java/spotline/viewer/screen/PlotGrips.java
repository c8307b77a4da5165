package spotline.viewer.screen;

import java.awt.geom.Rectangle2D;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import javafx.scene.AccessibleRole;
import javafx.scene.Cursor;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import spotline.viewer.model.BenchData;
import spotline.viewer.model.Curve;
import spotline.viewer.model.Words;

/** What can be taken hold of on the plot, by hand or by keys: ends of windows and, while a fit is edited, its components. */
final class PlotGrips extends Pane {
    /** Between the plot's pixels and what they stand for, measured energies. */
    interface Scale {
        Rectangle2D area();

        double x(double energyEv);

        double energy(double x);

        double y(double value);

        double value(double y);

        double lowEv();

        double highEv();
    }

    /** Apex of a component: measured energy, value of the background below it, value at its top. */
    record Apex(String component, double energyEv, double baseline, double top) {
        static Apex of(Curve component, double factor) {
            int top = 0;
            for (int i = 1; i < component.channels(); i++) if (component.value(i) > component.value(top)) top = i;
            double below = Math.min(component.value(0), component.value(component.channels() - 1));
            return new Apex(component.name(), component.energy(top), factor * below, factor * component.value(top));
        }
    }

    private static final double GRIP = 6;
    private static final double DOT = 12;
    private static final double STEP_EV = 0.1;
    private static final double SMALLEST_WINDOW_EV = 0.5;

    private final Words words;
    private final Scale scale;
    private final BenchPane.Listener listener;
    private final Map<String, Region> kept = new LinkedHashMap<>();
    private boolean held;

    PlotGrips(Words words, Scale scale, BenchPane.Listener listener) {
        this.words = words;
        this.scale = scale;
        this.listener = listener;
        setPickOnBounds(false);
    }

    /** What is held by the hand stays until it is let go; what has the keyboard keeps it. */
    void place(List<BenchData.WindowMark> windows, List<Apex> apexes) {
        if (held) return;
        Set<String> wanted = new HashSet<>();
        if (scale.area() != null && !scale.area().isEmpty()) {
            for (BenchData.WindowMark w : windows) {
                end(w, true, wanted);
                end(w, false, wanted);
            }
            for (Apex apex : apexes) apex(apex, wanted);
        }
        kept.keySet().removeIf(id -> !wanted.contains(id));
        getChildren().removeIf(n -> !wanted.contains(n.getId()));
    }

    private Region grip(String id, String style, Set<String> wanted) {
        wanted.add(id);
        Region known = kept.get(id);
        if (known != null) return known;
        Region grip = new Region();
        grip.setManaged(false);
        grip.setId(id);
        grip.getStyleClass().add(style);
        grip.setFocusTraversable(true);
        grip.setAccessibleRole(AccessibleRole.SLIDER);
        kept.put(id, grip);
        getChildren().add(grip);
        return grip;
    }

    private void end(BenchData.WindowMark w, boolean low, Set<String> wanted) {
        double at = low ? w.lowEv() : w.highEv();
        if (at < scale.lowEv() || at > scale.highEv()) return;
        Region grip = grip("grip-" + w.line() + (low ? "-low" : "-high"), "grip", wanted);
        grip.setCursor(Cursor.H_RESIZE);
        grip.setAccessibleText(words.of(low ? "bench.low-end" : "bench.high-end", w.line(), fixed(at)));
        Rectangle2D area = scale.area();
        grip.resizeRelocate(scale.x(at) - GRIP / 2, area.getY(), GRIP, area.getHeight());
        grip.setOnMouseDragged(e -> {
            held = true;
            moved(w, low, grip, energy(e), false);
            e.consume();
        });
        grip.setOnMouseReleased(e -> {
            held = false;
            moved(w, low, grip, energy(e), true);
            e.consume();
        });
        grip.setOnKeyPressed(e -> {
            boolean keep = e.getCode() == KeyCode.ENTER;
            double by = step(e);
            if (!keep && by == 0) return;
            moved(w, low, grip, at + by, keep);
            e.consume();
        });
    }

    private static double step(KeyEvent e) {
        double size = e.isShiftDown() ? 10 * STEP_EV : STEP_EV;
        return e.getCode() == KeyCode.LEFT ? size : e.getCode() == KeyCode.RIGHT ? -size : 0;
    }

    private double energy(MouseEvent e) {
        return scale.energy(sceneToLocal(e.getSceneX(), e.getSceneY()).getX());
    }

    private void moved(BenchData.WindowMark w, boolean low, Region grip, double to, boolean settled) {
        double at = Math.max(scale.lowEv(), Math.min(scale.highEv(), to));
        double newLow = low ? Math.min(at, w.highEv() - SMALLEST_WINDOW_EV) : w.lowEv();
        double newHigh = low ? w.highEv() : Math.max(at, w.lowEv() + SMALLEST_WINDOW_EV);
        grip.setLayoutX(scale.x(low ? newLow : newHigh) - GRIP / 2);
        listener.window(w.line(), newLow, newHigh, settled);
    }

    private void apex(Apex a, Set<String> wanted) {
        if (a.energyEv() < scale.lowEv() || a.energyEv() > scale.highEv()) return;
        Region dot = grip("apex-" + a.component(), "apex", wanted);
        dot.setCursor(Cursor.MOVE);
        dot.setAccessibleText(words.of("bench.component", a.component(), fixed(a.energyEv())));
        dot.resizeRelocate(scale.x(a.energyEv()) - DOT / 2, scale.y(a.top()) - DOT / 2, DOT, DOT);
        dot.setOnMouseDragged(e -> {
            held = true;
            javafx.geometry.Point2D at = sceneToLocal(e.getSceneX(), e.getSceneY());
            dot.relocate(at.getX() - DOT / 2, at.getY() - DOT / 2);
            e.consume();
        });
        dot.setOnMouseReleased(e -> {
            boolean was = held;
            held = false;
            double y = sceneToLocal(e.getSceneX(), e.getSceneY()).getY();
            if (was) listener.component(a.component(), energy(e), factor(a, scale.value(y)));
            e.consume();
        });
        dot.setOnKeyPressed(e -> {
            double by = step(e);
            double factor = e.getCode() == KeyCode.UP ? 1.05 : e.getCode() == KeyCode.DOWN ? 1 / 1.05 : 1;
            if (by == 0 && factor == 1) return;
            listener.component(a.component(), a.energyEv() + by, factor);
            e.consume();
        });
    }

    private static double factor(Apex a, double value) {
        double height = a.top() - a.baseline();
        return height > 0 ? Math.max(0.01, (value - a.baseline()) / height) : 1;
    }

    private static String fixed(double energyEv) {
        return String.format(Locale.ROOT, "%.2f", energyEv);
    }
}
