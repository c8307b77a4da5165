package spotline.viewer.screen;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;
import javafx.scene.Node;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spotline.analysis.peakfit.ComponentModel;
import spotline.analysis.peakfit.FitModel;
import spotline.analysis.peakfit.ParameterRule;
import spotline.core.Finding;
import spotline.numerics.random.RandomStreams;
import spotline.viewer.model.BenchData;
import spotline.viewer.model.Layer;
import spotline.viewer.model.Past;
import spotline.viewer.model.ScanLanes;
import spotline.viewer.model.Workbench;

/** Whatever is done in whatever order: nothing is thrown, nothing is kept that is not needed, and all of it can be undone. */
class RandomActionsTest {
    private static final long SEED = 13;

    @TempDir
    Path folder;

    /** Two spots of the demonstration: enough to choose between. */
    private Path fewSpots() throws Exception {
        Path from = spotline.viewer.model.Bench.DEMO;
        ObjectNode root = (ObjectNode) new ObjectMapper().readTree(from.toFile());
        ArrayNode spots = (ArrayNode) root.get("spots");
        for (int i = spots.size() - 1; i >= 0; i--) {
            if (i != 1 && i != 4) spots.remove(i);
        }
        for (JsonNode spot : spots) {
            String name = spot.at("/spectra/0/file").asText();
            Files.copy(from.resolveSibling(name), folder.resolve(name));
        }
        return Files.write(folder.resolve("few.json"), root.toString().getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void threeHundredActions() throws Exception {
        act(300, false);
    }

    @Test
    @Tag("slow")
    void tenThousandActions() throws Exception {
        act(10_000, true);
    }

    private void act(int actions, boolean weigh) throws Exception {
        Path few = fewSpots();
        List<Throwable> thrown = Collections.synchronizedList(new ArrayList<>());
        try (Screen screen = new Screen(1280, 800)) {
            Screen.fx(() -> {
                Thread.currentThread().setUncaughtExceptionHandler((t, e) -> thrown.add(e));
                screen.bench.open(few);
                return true;
            });
            screen.settled();
            String first = Screen.fx(() -> screen.bench.past().stateHash());
            RandomGenerator random = RandomStreams.stream(SEED, "actions");
            Actions on = new Actions(screen, random);
            // Steps that were worked out are remembered up to a bound: weighed is what comes after it was reached.
            int warmUp = weigh ? actions / 5 : 0;
            for (int i = 0; i < warmUp; i++) on.next();
            long before = weigh ? heap(screen) : 0;
            for (int i = warmUp; i < actions; i++) {
                String what = on.next();
                assertThat(thrown).as("action %d, %s", i, what).isEmpty();
            }
            if (weigh) {
                long after = heap(screen);
                Files.writeString(
                        Files.createDirectories(Path.of("target")).resolve("heap.txt"),
                        "bytes in use after " + warmUp + " actions " + before + ", after " + actions + " " + after
                                + "\n");
                assertThat((double) after).as("heap, %d bytes before", before).isLessThan(1.1 * before);
            }
            while (!Screen.fx(() -> screen.bench.past().undoable().get()).isEmpty()) {
                Screen.fx(() -> {
                    screen.bench.past().undo();
                    return true;
                });
            }
            assertThat(Screen.fx(() -> screen.bench.past().stateHash())).isEqualTo(first);
            screen.calm();
            assertThat(thrown).isEmpty();
        }
    }

    /** Bytes in use when everything rests, after the collector has had its chance. */
    private static long heap(Screen screen) throws Exception {
        screen.calm();
        long least = Long.MAX_VALUE;
        for (int i = 0; i < 5; i++) {
            System.gc();
            Thread.sleep(50);
            Runtime r = Runtime.getRuntime();
            least = Math.min(least, r.totalMemory() - r.freeMemory());
        }
        return least;
    }

    /** What an analyst can do, drawn by lot. */
    private static final class Actions {
        private final Screen screen;
        private final Workbench bench;
        private final RandomGenerator random;

        Actions(Screen screen, RandomGenerator random) {
            this.screen = screen;
            this.bench = screen.bench;
            this.random = random;
        }

        String next() throws Exception {
            int lot = random.nextInt(100);
            String what = Screen.fx(() -> act(lot));
            // Sometimes the next hand is on before the work is done, sometimes not.
            if (random.nextInt(20) == 0) screen.calm();
            return what;
        }

        private <T> Optional<T> any(List<T> of) {
            return of.isEmpty() ? Optional.empty() : Optional.of(of.get(random.nextInt(of.size())));
        }

        private String act(int lot) {
            if (lot < 18) return chooseSpot();
            if (lot < 34) return chooseScan();
            if (lot < 42) return layer();
            if (lot < 52) return keys();
            if (lot < 62) return window();
            if (lot < 68) return keep();
            if (lot < 72) return drop();
            if (lot < 77) return past();
            if (lot < 90) return fit();
            if (lot < 92) return silence();
            if (lot < 94) return toggle("charge");
            if (lot < 95) return toggle("dark");
            if (lot < 97) return toggle("show-history");
            if (lot < 98) return cancel();
            return click();
        }

        private String chooseSpot() {
            any(bench.faces()).ifPresent(f -> bench.choose(f.id(), random.nextInt(4) == 0));
            return "choose a spot";
        }

        private String chooseScan() {
            any(bench.lanes().intervals()).map(ScanLanes.Interval::spectrum).ifPresent(bench::chooseSpectrum);
            return "choose a scan";
        }

        private String layer() {
            Layer layer = Layer.values()[random.nextInt(Layer.values().length)];
            bench.show(layer, random.nextBoolean());
            return "layer " + layer;
        }

        private String keys() {
            List<KeyCode> codes = List.of(
                    KeyCode.LEFT, KeyCode.RIGHT, KeyCode.PLUS, KeyCode.MINUS, KeyCode.HOME, KeyCode.UP, KeyCode.ENTER);
            KeyCode code = codes.get(random.nextInt(codes.size()));
            List<String> ids = List.of("holder-bar", "scan-ruler", "bench", "composition");
            String id = ids.get(random.nextInt(ids.size()));
            press(screen.window.root().lookup("#" + id), code);
            return code + " on " + id;
        }

        private static void press(Node node, KeyCode code) {
            if (node == null) return;
            node.fireEvent(new KeyEvent(KeyEvent.KEY_PRESSED, "", "", code, false, false, false, false));
        }

        private String window() {
            Optional<BenchData.WindowMark> mark = bench.bench().get().flatMap(d -> any(d.windows()));
            mark.ifPresent(w -> bench.windows()
                    .move(
                            w.line(),
                            w.lowEv() + random.nextDouble() - 0.5,
                            w.highEv() + random.nextDouble() - 0.5,
                            random.nextBoolean()));
            return "drag a window";
        }

        private String keep() {
            bench.signing().keep("a tester", random.nextInt(8) == 0 ? " " : "by lot");
            return "keep";
        }

        private String drop() {
            bench.signing().drop();
            return "drop";
        }

        private String past() {
            switch (random.nextInt(6)) {
                case 0 -> bench.past().redo();
                case 1 -> bench.past().checkpoint("point " + random.nextInt(5));
                case 2 ->
                    any(bench.past().shown().get().entries().stream()
                                    .flatMap(e -> e.checkpoints().stream())
                                    .toList())
                            .ifPresent(bench.past()::back);
                case 3 ->
                    any(bench.past().shown().get().entries())
                            .map(Past.Entry::number)
                            .ifPresent(bench.past()::goTo);
                case 4 -> bench.past().reported();
                default -> bench.past().undo();
            }
            return "history";
        }

        private String fit() {
            Optional<FitModel> model = bench.fits().model().get();
            if (model.isEmpty()) {
                bench.fits().begin();
                return "begin a fit";
            }
            Optional<ComponentModel> any = any(model.get().components());
            BenchData data = bench.bench().get().orElseThrow();
            double at = data.measured().energy(random.nextInt(data.measured().channels()));
            int lot = random.nextInt(12);
            switch (lot) {
                case 0 -> bench.fits().add(at);
                case 1 -> any.ifPresent(c -> bench.fits().remove(c.name()));
                case 2 -> any.ifPresent(c -> bench.fits().rename(c.name(), "state " + random.nextInt(4)));
                case 3 -> any.ifPresent(c -> bench.fits().doublet(c.name(), random.nextBoolean()));
                case 4 -> any.ifPresent(c -> bench.fits().rule(c.name(), "position", new ParameterRule.Fixed(at)));
                case 5 -> any.ifPresent(c -> bench.fits().move(c.name(), at, 0.2 + 2 * random.nextDouble()));
                case 6 -> any.ifPresent(c -> bench.fits().limits(c.name(), "position", at - 1, at + 1));
                case 7 -> bench.fits().guess();
                case 8 -> bench.fits().revert();
                case 9 -> bench.fits().keep();
                case 10 -> bench.fits().applyTo(List.of(bench.faces().get(0).id()));
                default -> bench.fits().end();
            }
            return "fit, " + lot;
        }

        private String silence() {
            List<Finding> all = bench.result().get().map(r -> r.findings()).orElse(List.of());
            any(all).ifPresent(bench.signing()::silence);
            return "silence";
        }

        private String toggle(String id) {
            if (screen.window.root().lookup("#" + id) instanceof ToggleButton button) button.fire();
            return id;
        }

        private String cancel() {
            bench.stopping().cancel();
            if (random.nextBoolean()) bench.stopping().goOn();
            return "cancel";
        }

        private String click() {
            bench.bench().get().ifPresent(d -> bench.candidates(d.measured().energy(0) + 20 * random.nextDouble()));
            return "ask for lines";
        }
    }
}
