package spotline.viewer;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.stage.Stage;
import org.jspecify.annotations.Nullable;
import spotline.viewer.model.Words;
import spotline.viewer.model.Workbench;
import spotline.viewer.screen.WorkbenchWindow;

/** The viewer's window. Started by {@link ViewerLauncher}. */
public final class ViewerApplication extends Application {
    private final Words words = new Words(Locale.getDefault());
    private @Nullable Workbench bench;

    /** The run is read and treated while the window is being made. */
    @Override
    public void init() {
        Workbench workbench =
                Workbench.on(Platform::runLater, words, Clock.systemDefaultZone(), ViewerLauncher.version());
        getParameters().getUnnamed().stream().findFirst().map(Path::of).ifPresent(workbench::open);
        bench = workbench;
    }

    @Override
    public void start(Stage stage) {
        Path demo = Path.of("demo-spectra", "footbridge-bearing.json");
        WorkbenchWindow window = new WorkbenchWindow(
                Objects.requireNonNull(bench, "made before the window"),
                words,
                Files.isRegularFile(demo) ? Optional.of(demo) : Optional.empty(),
                title -> stage.setTitle(title + " \u2013 " + words.of("window.title")));
        stage.setTitle(words.of("window.title"));
        stage.setScene(new Scene(window.root(), 1280, 800));
        stage.setMinWidth(900);
        stage.setMinHeight(620);
        stage.show();
    }

    @Override
    public void stop() {
        if (bench != null) bench.close();
    }
}
