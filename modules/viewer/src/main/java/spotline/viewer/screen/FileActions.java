package spotline.viewer.screen;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.prefs.BackingStoreException;
import java.util.prefs.Preferences;
import javafx.scene.Node;
import javafx.scene.control.MenuButton;
import javafx.scene.control.MenuItem;
import javafx.scene.control.Tooltip;
import javafx.stage.FileChooser;
import javafx.stage.Window;
import spotline.report.text.Shown;
import spotline.run.RunResult;
import spotline.viewer.model.Words;
import spotline.viewer.model.Workbench;

/** Opening, saving and exporting by name. */
final class FileActions {
    private static final int MOST_RECENT = 8;

    private final Workbench bench;
    private final Words words;
    private final Supplier<Window> window;
    private final Supplier<Node> table;
    private final java.util.function.Function<RunResult, Map<String, byte[]>> results;
    private final Preferences recent =
            Preferences.userNodeForPackage(FileActions.class).node("recent");
    private final MenuButton menu;

    FileActions(
            Workbench bench,
            Words words,
            Supplier<Window> window,
            Supplier<Node> table,
            java.util.function.Function<RunResult, Map<String, byte[]>> results) {
        this.bench = bench;
        this.words = words;
        this.window = window;
        this.table = table;
        this.results = results;
        menu = new MenuButton(words.of("file.recent"));
        menu.setId("recent");
        menu.setTooltip(new Tooltip(words.of("file.recent.help")));
        fill();
        bench.file().addListener((o, was, is) -> is.ifPresent(this::remember));
    }

    MenuButton recentMenu() {
        return menu;
    }

    void open() {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(words.of("file.open.help"));
        chooser.getExtensionFilters()
                .add(new FileChooser.ExtensionFilter(words.of("file.holder-run"), "*.json", "*.spotline"));
        File file = chooser.showOpenDialog(window.get());
        if (file != null) bench.open(file.toPath());
    }

    /** Spectra to be laid on spots of the run that is open. */
    void openSpectra() {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(words.of("file.spectra.help"));
        List<File> chosen = chooser.showOpenMultipleDialog(window.get());
        if (chosen != null) took(chosen);
    }

    /** A holder run or a project is opened; whatever else waits for its spot. */
    void took(List<File> files) {
        Optional<File> run = files.stream()
                .filter(f -> f.getName().endsWith(".json") || f.getName().endsWith(".spotline"))
                .findFirst();
        if (run.isPresent()) bench.open(run.get().toPath());
        else bench.loose().offer(files.stream().map(File::toPath).toList());
    }

    void save() {
        Optional<Path> now = bench.file().get();
        if (now.isEmpty()) return;
        if (String.valueOf(now.get().getFileName()).endsWith(".spotline")) {
            saveTo(now.get());
            return;
        }
        FileChooser chooser = new FileChooser();
        chooser.setTitle(words.of("file.save.help"));
        chooser.getExtensionFilters().add(new FileChooser.ExtensionFilter(words.of("file.project"), "*.spotline"));
        String name = String.valueOf(now.get().getFileName()).replaceFirst("\\.json$", "");
        chooser.setInitialFileName(name + ".spotline");
        File file = chooser.showSaveDialog(window.get());
        if (file != null) saveTo(file.toPath());
    }

    void saveTo(Path target) {
        bench.save(target, bench.result().get().map(results).orElse(Map.of()));
    }

    MenuButton exportMenu() {
        MenuButton export = new MenuButton(words.of("table.export"));
        export.setId("export");
        export.setTooltip(new Tooltip(words.of("table.export.help")));
        for (String kind : List.of("csv", "xlsx", "png")) {
            MenuItem item = new MenuItem(words.of("table." + kind));
            item.setOnAction(e -> chooseExport(kind));
            export.getItems().add(item);
        }
        export.disableProperty()
                .bind(javafx.beans.binding.Bindings.createBooleanBinding(
                        () -> bench.result().get().isEmpty(), bench.result()));
        return export;
    }

    private void chooseExport(String kind) {
        FileChooser chooser = new FileChooser();
        chooser.setInitialFileName("composition." + kind);
        File file = chooser.showSaveDialog(window.get());
        if (file != null) exportTo(file.toPath());
    }

    /** Writes the table as the kind of file that the name asks for; a fault becomes the workbench's. */
    void exportTo(Path file) {
        if (bench.result().get().isEmpty()) return;
        try {
            TableExport.write(bench.result().get().get(), words, results, table.get(), file);
            bench.past().reported();
        } catch (IOException e) {
            bench.fault().set(String.valueOf(e.getMessage()));
        }
    }

    private void remember(Path file) {
        List<String> all = new ArrayList<>(remembered());
        String name = file.toAbsolutePath().normalize().toString();
        if (name.length() > Preferences.MAX_VALUE_LENGTH) return;
        all.remove(name);
        all.add(0, name);
        for (int i = 0; i < MOST_RECENT; i++) {
            if (i < all.size()) recent.put(String.valueOf(i), all.get(i));
            else recent.remove(String.valueOf(i));
        }
        fill();
    }

    private List<String> remembered() {
        List<String> all = new ArrayList<>();
        try {
            if (!recent.nodeExists("")) return all;
        } catch (BackingStoreException e) {
            return all;
        }
        for (int i = 0; i < MOST_RECENT; i++) {
            String name = recent.get(String.valueOf(i), "");
            if (!name.isEmpty()) all.add(name);
        }
        return all;
    }

    private void fill() {
        menu.getItems().clear();
        for (String name : remembered()) {
            Path path = Path.of(name);
            if (!Files.isRegularFile(path)) continue;
            MenuItem item = new MenuItem(Shown.label(String.valueOf(path.getFileName())));
            item.setOnAction(e -> bench.open(path));
            menu.getItems().add(item);
        }
        menu.setDisable(menu.getItems().isEmpty());
    }
}
