package spotline.bench.viewer;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadInfo;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.stage.Stage;
import spotline.viewer.model.BenchData;
import spotline.viewer.model.Words;
import spotline.viewer.model.Workbench;
import spotline.viewer.screen.WorkbenchWindow;

/**
 * The viewer's times: from the start of a process to a drawn, treated holder; choosing another spot; dragging the end of a
 * window. Run as {@code java -cp modules/bench/target/benchmarks.jar spotline.bench.viewer.ViewerTimes demo-spectra}, or
 * with {@code start}, {@code choose} or {@code drag} after it for that part alone. What is drawn is the whole window, by software, on a screen that nobody sees. Wall time, and the processor time of the threads
 * that draw: what else the machine does makes the first longer, not the second.
 */
public final class ViewerTimes {
    private static final int STARTS = 5;
    private static final int WARM_UP = 60;
    private static final int MEASURED = 121;
    private static final String HOLDER = "footbridge-bearing.json";
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    private final Workbench bench;
    private final Scene scene;
    private final CompletableFuture<String> first = new CompletableFuture<>();

    private ViewerTimes(Workbench bench, Words words, Stage stage) {
        this.bench = bench;
        bench.fault().addListener((o, was, is) -> {
            if (!is.isEmpty()) first.completeExceptionally(new IOException(is));
        });
        WorkbenchWindow window = new WorkbenchWindow(bench, words, Optional.empty(), first::complete);
        scene = new Scene(window.root(), 1280, 800);
        stage.setScene(scene);
        stage.show();
    }

    public static void main(String[] args) {
        int status = 1;
        try {
            unseen();
            if (args[0].equals("--once")) once(Path.of(args[1]));
            else all(args);
            status = 0;
        } catch (Exception e) {
            e.printStackTrace();
        } finally {
            // The screen's thread would go on.
            System.exit(status);
        }
    }

    private static void all(String[] args) throws Exception {
        Path demo = Path.of(args[0]).resolve(HOLDER);
        Path folder = Files.createTempDirectory("spotline-viewer-times");
        try {
            Path many = Holders.many(Path.of(args[0]), HOLDER, folder);
            Path wide = Holders.wide(folder);
            String part = args.length > 1 ? args[1] : "";
            if ("start".contains(part)) {
                starts("demonstration", demo);
                starts("20 spots x 9 spectra", many);
            }
            if ("choose".contains(part)) {
                choosing("demonstration", demo);
                choosing("20 spots x 9 spectra", many);
            }
            if ("drag".contains(part)) dragging("2,000 channels, 4 components", wide, "wide.txt#1");
        } finally {
            Holders.remove(folder);
        }
    }

    private static void unseen() {
        Map.of(
                        "glass.platform", "Monocle",
                        "monocle.platform", "Headless",
                        "headless.geometry", "1920x1200-32",
                        "prism.order", "sw",
                        "java.awt.headless", "true")
                .forEach((key, value) -> {
                    if (System.getProperty(key) == null) System.setProperty(key, value);
                });
    }

    private static void once(Path holder) throws Exception {
        ViewerTimes times = opened(holder);
        fx(times::draw);
        long nanos = ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                .getProcessCpuTime();
        System.out.println("drawn " + nanos);
    }

    private static void starts(String what, Path holder) throws IOException, InterruptedException {
        double[] wall = new double[STARTS];
        double[] busy = new double[STARTS];
        for (int i = 0; i < STARTS; i++) {
            List<String> command = new ArrayList<>(List.of(
                    Path.of(System.getProperty("java.home"), "bin", "java").toString()));
            command.addAll(List.of("-cp", System.getProperty("java.class.path"), ViewerTimes.class.getName()));
            command.addAll(List.of("--once", holder.toString()));
            long since = System.nanoTime();
            Process process = new ProcessBuilder(command)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            try (BufferedReader out =
                    new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
                String line = out.readLine();
                wall[i] = (System.nanoTime() - since) / 1e6;
                if (line == null || !line.startsWith("drawn ")) throw new IOException("not drawn: " + line);
                busy[i] = Long.parseLong(line.substring(6)) / 1e6;
            }
            process.waitFor(20, TimeUnit.SECONDS);
        }
        print("start to drawn: " + what, wall, busy);
    }

    private static void choosing(String what, Path holder) throws Exception {
        ViewerTimes times = opened(holder);
        List<String> spots =
                fx(() -> times.bench.faces().stream().map(f -> f.id()).toList());
        double[] wall = new double[MEASURED];
        double[] busy = new double[MEASURED];
        for (int i = -WARM_UP; i < MEASURED; i++) {
            String spot = spots.get(Math.floorMod(i * 7 + 3, spots.size()));
            fx(() -> {
                times.bench.choose(spots.get(0).equals(spot) ? spots.get(1) : spots.get(0), false);
                return times.draw();
            });
            long since = System.nanoTime();
            long worked = drawing();
            fx(() -> {
                times.bench.choose(spot, false);
                return times.draw();
            });
            if (i < 0) continue;
            wall[i] = (System.nanoTime() - since) / 1e6;
            busy[i] = (drawing() - worked) / 1e6;
        }
        print("choosing a spot: " + what, wall, busy);
        times.close();
    }

    private static void dragging(String what, Path holder, String scan) throws Exception {
        ViewerTimes times = opened(holder);
        fx(() -> {
            times.bench.chooseSpectrum(scan);
            return times.draw();
        });
        BenchData data = fx(() -> times.bench.bench().get().orElseThrow());
        if (data.measured().channels() != Holders.CHANNELS || data.components().size() != 4) {
            throw new IllegalStateException(data.measured().channels() + " channels, "
                    + data.components().size() + " components");
        }
        BenchData.WindowMark mark = data.windows().get(0);
        double[] wall = new double[MEASURED];
        double[] busy = new double[MEASURED];
        for (int i = -WARM_UP; i < MEASURED; i++) {
            double high = mark.highEv() - 0.005 * (i + WARM_UP + 1);
            long since = System.nanoTime();
            long worked = drawing();
            fx(() -> {
                times.bench.windows().move(mark.line(), mark.lowEv(), high, false);
                return true;
            });
            until(() -> times.bench.bench().get().orElseThrow().windows().get(0).highEv() == high);
            fx(times::draw);
            if (i < 0) continue;
            wall[i] = (System.nanoTime() - since) / 1e6;
            busy[i] = (drawing() - worked) / 1e6;
        }
        print("dragging a window end: " + what, wall, busy);
        times.close();
    }

    private static ViewerTimes opened(Path holder) throws Exception {
        CountDownLatch up = new CountDownLatch(1);
        try {
            Platform.startup(up::countDown);
        } catch (IllegalStateException e) {
            // Started before.
            up.countDown();
        }
        up.await();
        Platform.setImplicitExit(false);
        Words words = new Words(Locale.ROOT);
        Workbench workbench = Workbench.on(Platform::runLater, words, Clock.systemDefaultZone(), "bench");
        // As the program does it: the run is read while the window is being made.
        workbench.open(holder);
        ViewerTimes times = fx(() -> new ViewerTimes(workbench, words, new Stage()));
        times.first.get(60, TimeUnit.SECONDS);
        return times;
    }

    private boolean draw() {
        return scene.snapshot(null).getWidth() > 0;
    }

    private void close() throws Exception {
        fx(() -> {
            scene.getWindow().hide();
            bench.close();
            return true;
        });
    }

    private static <T> T fx(Callable<T> work) throws Exception {
        CompletableFuture<T> done = new CompletableFuture<>();
        Platform.runLater(() -> {
            try {
                done.complete(work.call());
            } catch (Exception | Error e) {
                done.completeExceptionally(e);
            }
        });
        return done.get(60, TimeUnit.SECONDS);
    }

    private static void until(BooleanSupplier condition) throws Exception {
        long end = System.nanoTime() + 10_000_000_000L;
        while (!fx(condition::getAsBoolean)) {
            if (System.nanoTime() > end) throw new IllegalStateException("it did not follow within ten seconds");
        }
    }

    /** Processor time of the screen's thread and of the one that draws for it. */
    private static long drawing() {
        long sum = 0;
        for (ThreadInfo info : THREADS.getThreadInfo(THREADS.getAllThreadIds())) {
            if (info == null) continue;
            boolean draws = info.getThreadName().equals("JavaFX Application Thread")
                    || info.getThreadName().startsWith("QuantumRenderer");
            if (draws) sum += THREADS.getThreadCpuTime(info.getThreadId());
        }
        return sum;
    }

    private static void print(String what, double[] wall, double[] busy) {
        Arrays.sort(wall);
        Arrays.sort(busy);
        System.out.printf(
                Locale.ROOT,
                "%-58s wall: median %6.1f ms, 95 %% %6.1f ms; processor: median %6.1f ms, 95 %% %6.1f ms%n",
                what,
                wall[wall.length / 2],
                wall[wall.length * 95 / 100],
                busy[busy.length / 2],
                busy[busy.length * 95 / 100]);
    }
}
