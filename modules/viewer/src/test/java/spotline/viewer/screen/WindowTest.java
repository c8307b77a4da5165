package spotline.viewer.screen;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spotline.viewer.model.BenchData;
import spotline.viewer.model.FitRow;
import spotline.viewer.model.Layer;

/** The screens as an analyst goes through them; the pictures in {@code target/screens} are for looking at. */
class WindowTest {
    @TempDir
    Path folder;

    @Test
    void fromTheEmptyWindowToAnExportedTable() throws Exception {
        try (Screen screen = new Screen(1280, 800)) {
            screen.picture("empty");
            screen.click("empty-demo");
            screen.settled();
            screen.picture("open");
            assertThat(((Label) screen.node("title")).getText()).contains("invented demonstration");

            screen.click("spot-5");
            assertThat(screen.bench.chosen().get()).containsExactly("5");
            screen.robot.push(KeyCode.RIGHT);
            assertThat(screen.bench.chosen().get()).containsExactly("6");
            screen.robot.write("5");
            assertThat(screen.bench.chosen().get()).containsExactly("5");
            screen.click("scan-05-pigment-a.txt#3");
            screen.picture("narrow-scan");
            BenchData before = screen.bench.bench().get().orElseThrow();
            assertThat(before.name()).isEqualTo("Ti 2p");

            String line = before.windows().get(0).line();
            screen.robot.drag(screen.node("grip-" + line + "-high")).dropBy(40, 0);
            screen.until(() -> screen.bench.signing().pending().get().isPresent());
            screen.picture("window-dragged");
            assertThat(screen.bench.bench().get().orElseThrow().windows().get(0).highEv())
                    .isLessThan(before.windows().get(0).highEv());
            screen.click("why");
            screen.robot.write("to see what the end does");
            screen.click("keep");
            screen.settled();
            assertThat(screen.bench.past().undoable().get()).contains("window of spot 5");
            screen.click("undo");
            screen.settled();
            assertThat(screen.bench.bench().get().orElseThrow().windows()).isEqualTo(before.windows());

            Path table = folder.resolve("table.csv");
            Screen.fx(() -> {
                screen.window.exportTo(table);
                return true;
            });
            assertThat(Files.readString(table)).startsWith("sample,spot,element,atomic_percent");
            Path image = folder.resolve("table.png");
            Screen.fx(() -> {
                screen.window.exportTo(image);
                screen.window.exportTo(folder.resolve("table.doc"));
                return true;
            });
            assertThat(Files.size(image)).isGreaterThan(1000);
            assertThat(screen.bench.fault().get()).contains(".csv");
        }
    }

    @Test
    void aFitIsMadeByHandAndTakenBack() throws Exception {
        try (Screen screen = new Screen(1280, 800)) {
            screen.click("empty-demo");
            screen.settled();
            screen.click("spot-2");
            screen.click("scan-02-primer-flake.txt#2");
            screen.click("fit-edit");
            screen.until(() -> screen.bench.fits().result().get().isPresent());
            screen.picture("fit-editor");
            int components =
                    screen.bench.fits().model().get().orElseThrow().components().size();
            screen.click("fit-add");
            screen.robot.clickOn(screen.node("bench"));
            screen.until(() ->
                    screen.bench.fits().model().get().orElseThrow().components().size() == components + 1);
            screen.until(() -> screen.bench.fits().result().get().isPresent()
                    || !screen.bench.fits().message().get().isEmpty());
            assertThat(screen.bench.fits().result().get())
                    .as(screen.bench.fits().message().get())
                    .isPresent();
            screen.click("fit-revert");
            screen.until(() ->
                    screen.bench.fits().model().get().orElseThrow().components().size() == components);
            screen.click("fit-keep");
            screen.click("why");
            screen.robot.write("the default model, on record");
            screen.click("keep");
            screen.settled();
            assertThat(screen.bench.past().undoable().get()).contains("Fit model of C 1s of spot 2");
            assertThat(screen.bench.primary().orElseThrow().fits())
                    .anyMatch(f -> f.line().toString().equals("C 1s") && !f.byDefault());
            screen.click("fit-close");
            screen.click("undo");
            screen.settled();
            assertThat(screen.bench.primary().orElseThrow().fits())
                    .anyMatch(f -> f.line().toString().equals("C 1s") && f.byDefault());
        }
    }

    @Test
    void theHoldersReferencesAreSeenAtOnceAndInTheDark() throws Exception {
        try (Screen screen = new Screen(1920, 1080)) {
            screen.click("empty-demo");
            screen.settled();
            screen.click("charge");
            screen.picture("energy-references");
            screen.click("charge-4");
            assertThat(screen.bench.chosen().get()).containsExactly("4");
            assertThat(screen.has("bench")).isTrue();
            screen.click("dark");
            screen.click("larger");
            screen.click("larger");
            screen.picture("dark-and-large");
            screen.click("layer-other_spots");
            assertThat(screen.bench.layers().get()).contains(Layer.OTHER_SPOTS);
        }
    }

    @Test
    void aProjectIsSavedAndOpenedAgain() throws Exception {
        try (Screen screen = new Screen(1280, 800)) {
            screen.click("empty-demo");
            screen.settled();
            Path project = folder.resolve("bearing.spotline");
            Screen.fx(() -> {
                screen.window.saveTo(project);
                return true;
            });
            screen.until(() -> screen.bench.file().get().map(project::equals).orElse(false));
            screen.settled();
            assertThat(project).isRegularFile();
            assertThat(screen.bench.fault().get()).isEmpty();
            assertThat(screen.bench.faces())
                    .hasSize(6)
                    .allMatch(f -> !f.shares().isEmpty());
        }
    }

    /** Spot, scan, end of a window, reason and undo without a mouse; and every part says what it is. */
    @Test
    void everythingCanBeDoneWithKeysAndHasAName() throws Exception {
        try (Screen screen = new Screen(1280, 800)) {
            assertThat(screen.unnamed()).isEmpty();
            screen.click("empty-demo");
            screen.settled();
            screen.robot.push(KeyCode.F2);
            screen.robot.write("5");
            assertThat(screen.bench.chosen().get()).containsExactly("5");
            screen.robot.push(KeyCode.F3);
            for (int i = 0; i < 9 && !name(screen).equals("Ti 2p"); i++) screen.robot.push(KeyCode.RIGHT);
            assertThat(name(screen)).isEqualTo("Ti 2p");
            assertThat(screen.unnamed()).isEmpty();
            BenchData before = screen.bench.bench().get().orElseThrow();
            screen.robot.push(KeyCode.F4);
            screen.robot.push(KeyCode.TAB);
            screen.robot.push(KeyCode.LEFT);
            screen.robot.push(KeyCode.LEFT);
            screen.until(() -> !window(screen).equals(before.windows().get(0)));
            assertThat(screen.bench.signing().pending().get()).isEmpty();
            screen.robot.push(KeyCode.ENTER);
            screen.until(() -> screen.bench.signing().pending().get().isPresent());
            screen.robot.write("by keys alone");
            screen.robot.push(KeyCode.ENTER);
            screen.settled();
            assertThat(screen.bench.past().undoable().get()).contains("window of spot 5");
            assertThat(window(screen)).isNotEqualTo(before.windows().get(0));
            screen.robot.push(KeyCode.F7);
            screen.picture("history");
            assertThat(screen.unnamed()).isEmpty();
            screen.robot.push(KeyCode.CONTROL, KeyCode.Z);
            screen.settled();
            assertThat(window(screen)).isEqualTo(before.windows().get(0));
            screen.robot.push(KeyCode.F7);
            screen.click("fit-edit");
            screen.until(() -> screen.bench.fits().result().get().isPresent());
            assertThat(screen.unnamed()).isEmpty();
            dragAComponent(screen);
            screen.robot.push(KeyCode.F6);
            assertThat(screen.unnamed()).isEmpty();
        }
    }

    /** A component taken by its apex starts where it was put, and is fitted from there. */
    private static void dragAComponent(Screen screen) throws Exception {
        FitRow before = position(screen);
        screen.robot.drag(screen.node("apex-" + before.component())).dropBy(-12, 6);
        screen.until(() -> !screen.bench.fits().fitting().get()
                && !position(screen).start().equals(before.start()));
        assertThat(screen.bench.fits().result().get()).isPresent();
    }

    private static FitRow position(Screen screen) {
        return screen.bench.fits().rows().stream()
                .filter(r -> r.parameter().equals("position"))
                .findFirst()
                .orElseThrow();
    }

    private static String name(Screen screen) {
        return screen.bench.bench().get().map(BenchData::name).orElse("");
    }

    private static BenchData.WindowMark window(Screen screen) {
        return screen.bench.bench().get().orElseThrow().windows().get(0);
    }
}
