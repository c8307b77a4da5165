package spotline.viewer.screen;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.BooleanSupplier;
import javafx.application.Platform;
import javafx.embed.swing.SwingFXUtils;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Control;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.SplitPane;
import javafx.scene.control.TitledPane;
import javafx.scene.image.WritableImage;
import javafx.stage.Stage;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Assumptions;
import org.testfx.api.FxRobot;
import org.testfx.util.WaitForAsyncUtils;
import spotline.viewer.model.Bench;
import spotline.viewer.model.Workbench;

/** The real window on a screen that nobody sees, driven by a robot. */
final class Screen implements AutoCloseable {
    private static final Path PICTURES = Path.of("target", "screens");
    private static boolean started;

    final Workbench bench;
    final WorkbenchWindow window;
    final FxRobot robot = new FxRobot();
    private final Stage stage;

    Screen(int width, int height) throws Exception {
        start();
        Object[] made = fx(() -> {
            Workbench workbench = Workbench.on(Platform::runLater, Bench.WORDS, Clock.systemUTC(), "test");
            WorkbenchWindow w = new WorkbenchWindow(workbench, Bench.WORDS, Optional.of(Bench.DEMO), title -> {});
            Stage s = new Stage();
            s.setScene(new Scene(w.root(), width, height));
            s.setX(0);
            s.setY(0);
            s.show();
            return new Object[] {workbench, w, s};
        });
        bench = (Workbench) made[0];
        window = (WorkbenchWindow) made[1];
        stage = (Stage) made[2];
    }

    /** Skipped where the system has no fonts for a screen at all, unless the environment says that it must have. */
    private static synchronized void start() throws Exception {
        if (started) return;
        CountDownLatch up = new CountDownLatch(1);
        try {
            Platform.startup(up::countDown);
            if (!up.await(60, TimeUnit.SECONDS)) throw new IllegalStateException("no screen within a minute");
        } catch (RuntimeException | LinkageError e) {
            if ("required".equals(System.getenv("SPOTLINE_SCREENS"))) throw e;
            Assumptions.abort("no screen can be had here: " + e);
        }
        Platform.setImplicitExit(false);
        started = true;
    }

    static <T> T fx(Callable<T> work) throws Exception {
        return WaitForAsyncUtils.asyncFx(work).get(60, TimeUnit.SECONDS);
    }

    void until(BooleanSupplier condition) throws Exception {
        try {
            WaitForAsyncUtils.waitFor(60, TimeUnit.SECONDS, () -> fx(condition::getAsBoolean));
        } catch (TimeoutException e) {
            throw new AssertionError("it did not happen within a minute: " + fx(this::state), e);
        }
        WaitForAsyncUtils.waitForFxEvents();
    }

    private String state() {
        return "open " + bench.file().get() + ", busy " + bench.busy().get() + " with \""
                + bench.doing().get() + "\", results " + bench.result().get().isPresent() + ", fault \""
                + bench.fault().get() + "\"";
    }

    void settled() throws Exception {
        until(() -> bench.result().get().isPresent() && !bench.busy().get());
    }

    /** Until no work is going on, or it was stopped. */
    void calm() throws Exception {
        until(() -> !bench.busy().get() && !bench.fits().fitting().get());
    }

    /** A node by its id, whatever characters that has. */
    Node node(String id) throws Exception {
        WaitForAsyncUtils.waitForFxEvents();
        return fx(() -> all(window.root())
                .filter(n -> id.equals(n.getId()))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no node " + id)));
    }

    boolean has(String id) throws Exception {
        return fx(() -> all(window.root()).anyMatch(n -> id.equals(n.getId()) && n.isVisible()));
    }

    private static java.util.stream.Stream<Node> all(Node node) {
        java.util.stream.Stream<Node> own = java.util.stream.Stream.of(node);
        if (!(node instanceof javafx.scene.Parent parent)) return own;
        return java.util.stream.Stream.concat(
                own, parent.getChildrenUnmodifiable().stream().flatMap(Screen::all));
    }

    /** Scrolls to a node where that is needed, and clicks it; a part drawn anew meanwhile is looked for again. */
    void click(String id) throws Exception {
        for (int attempt = 1; ; attempt++) {
            Node node = node(id);
            fx(() -> {
                scrollTo(node);
                return true;
            });
            WaitForAsyncUtils.waitForFxEvents();
            try {
                robot.clickOn(node);
                WaitForAsyncUtils.waitForFxEvents();
                return;
            } catch (RuntimeException e) {
                if (attempt == 3) throw e;
            }
        }
    }

    /** Controls and drawn parts that can have the keyboard and of which a screen reader would say nothing. */
    List<String> unnamed() throws Exception {
        return fx(() -> {
            List<String> found = new ArrayList<>();
            unnamed(window.root(), found);
            return found;
        });
    }

    private static void unnamed(Node node, List<String> found) {
        if (!node.isVisible()) return;
        boolean text = node instanceof Labeled labeled
                && labeled.getText() != null
                && !labeled.getText().isBlank();
        String spoken = node.getAccessibleText();
        if (node.isFocusTraversable() && !text && (spoken == null || spoken.isBlank())) {
            found.add(node.getClass().getSimpleName() + " " + node.getId());
        }
        List<? extends Node> inside = List.of();
        if (node instanceof ScrollPane pane) inside = List.of(pane.getContent());
        else if (node instanceof SplitPane pane) inside = pane.getItems();
        else if (node instanceof TitledPane pane) inside = List.of(pane.getContent());
        else if (node instanceof Parent parent && !(node instanceof Control)) {
            inside = parent.getChildrenUnmodifiable();
        }
        for (Node part : inside) unnamed(part, found);
    }

    private static void scrollTo(Node node) {
        for (Node n = node; n != null; n = n.getParent()) {
            if (!(n instanceof ScrollPane pane)) continue;
            double content = pane.getContent().getBoundsInLocal().getHeight();
            double view = pane.getViewportBounds().getHeight();
            double at = pane.getContent()
                    .sceneToLocal(node.localToScene(node.getBoundsInLocal()))
                    .getCenterY();
            if (content > view) pane.setVvalue(Math.max(0, Math.min(1, (at - view / 2) / (content - view))));
        }
    }

    void picture(String name) throws Exception {
        WaitForAsyncUtils.waitForFxEvents();
        WritableImage image = fx(() -> stage.getScene().snapshot(null));
        Files.createDirectories(PICTURES);
        try {
            ImageIO.write(
                    SwingFXUtils.fromFXImage(image, null),
                    "png",
                    PICTURES.resolve(name + ".png").toFile());
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    @Override
    public void close() throws Exception {
        fx(() -> {
            stage.close();
            bench.close();
            return true;
        });
    }
}
