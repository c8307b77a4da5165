package spotline.viewer.model;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import spotline.core.ReadException;
import spotline.formats.Block;
import spotline.formats.SpectrumFile;
import spotline.formats.SpectrumFiles;
import spotline.formats.text.TextColumns;
import spotline.holder.SpectrumEntry;
import spotline.holder.SpotEntry;
import spotline.run.document.Edit;
import spotline.run.document.Edits;
import spotline.run.document.RunDocument;

/**
 * Spectrum files that belong to no spot yet: the analyst lays them on one. Nothing is copied: the record names a file where
 * it lies, and a project takes it in when it is saved.
 */
public final class LooseSpectra {
    /**
     * A file that waits for its spot.
     *
     * @param file where it lies
     * @param name as the holder run will name it: relative to its folder, or where it lies elsewhere
     * @param sentence what it holds, or why it does not fit
     * @param fits whether it can be laid on a spot
     */
    public record Loose(Path file, String name, String sentence, boolean fits) {}

    private final Workbench bench;
    private final ObjectProperty<List<Loose>> waiting = new SimpleObjectProperty<>(List.of());

    LooseSpectra(Workbench bench) {
        this.bench = bench;
    }

    /** Files that were chosen or dropped; they are looked at in the background. */
    public void offer(List<Path> files) {
        Optional<Opened> open = bench.opened();
        if (open.isEmpty()) {
            bench.fault().set(bench.words().of("laying.no-run"));
            return;
        }
        Opened now = open.get();
        RunDocument document = now.run().document();
        bench.inBackground(() -> {
            List<Loose> looked = files.stream()
                    .map(f -> looked(f, now, document, bench.words()))
                    .toList();
            bench.onScreen(() -> {
                if (bench.opened().filter(o -> o == now).isPresent()) add(looked);
            });
        });
    }

    private void add(List<Loose> looked) {
        List<Loose> all = new ArrayList<>(waiting.get());
        all.removeIf(w -> looked.stream().anyMatch(l -> l.file().equals(w.file())));
        all.addAll(looked);
        waiting.set(List.copyOf(all));
    }

    private static Loose looked(Path file, Opened run, RunDocument document, Words words) {
        Path folder = Optional.ofNullable(
                        run.file().toAbsolutePath().normalize().getParent())
                .orElse(Path.of("."));
        Path whole = file.toAbsolutePath().normalize();
        String name = name(whole, folder, run);
        String simple = String.valueOf(file.getFileName());
        try {
            SpectrumFile read = SpectrumFiles.open(file, name, Optional.<TextColumns>empty());
            String holds = holds(read, simple, document, words);
            boolean stays = run.session().isPresent() || !whole.startsWith(folder);
            String sentence = stays && told(read, document)
                    ? words.of("laying.stays", holds, String.valueOf(whole.getParent()))
                    : holds;
            return new Loose(whole, name, sentence, told(read, document));
        } catch (ReadException e) {
            return new Loose(whole, name, String.valueOf(e.getMessage()), false);
        }
    }

    /** Relative to the run's folder where that leads to the file; a project may hold another of that name. */
    private static String name(Path whole, Path folder, Opened run) {
        String absolute = slashed(whole);
        if (!whole.startsWith(folder)) return absolute;
        String relative = slashed(folder.relativize(whole));
        try {
            Path meant = run.inputs().path(relative);
            boolean same = meant.getFileSystem() == whole.getFileSystem()
                    && meant.toAbsolutePath().normalize().equals(whole);
            return same ? relative : absolute;
        } catch (ReadException e) {
            return absolute;
        }
    }

    private static String slashed(Path path) {
        return path.toString().replace('\\', '/');
    }

    /** Whether binding energies can be told. */
    private static boolean told(SpectrumFile file, RunDocument document) {
        return document.at("/instrument/excitation").isPresent()
                || file.blocks().stream()
                        .anyMatch(b -> b.set()
                                .acquisition()
                                .excitation()
                                .photonEnergyEv()
                                .isPresent());
    }

    private static String holds(SpectrumFile file, String name, RunDocument document, Words words) {
        if (!told(file, document)) return words.of("laying.no-energy", name);
        long other = file.blocks().stream()
                .map(b -> b.set().acquisition().technique())
                .filter(t -> !t.isEmpty() && !t.equals("XPS"))
                .count();
        if (other > 0)
            return words.of("laying.other", name, other, file.blocks().size());
        return words.of(
                "laying.fits",
                name,
                file.blocks().stream().map(LooseSpectra::label).collect(Collectors.joining(", ")));
    }

    private static String label(Block block) {
        String label = block.set().acquisition().label();
        return label.isEmpty() ? "#" + block.number() : label;
    }

    /** The file becomes a part of the spot's record, once there is a reason. */
    public void lay(Loose loose, String spot) {
        if (bench.living().isEmpty() || !loose.fits()) return;
        RunDocument document = bench.living().get().document();
        int index = document.indexOf(spot);
        SpotEntry entry = document.file().spots().get(index);
        String simple = String.valueOf(loose.file().getFileName());
        if (entry.spectra().stream().anyMatch(there -> same(there, loose))) {
            bench.fault().set(bench.words().of("laying.there", simple, spot));
            return;
        }
        String pointer = "/spots/" + index + "/spectra";
        ArrayNode spectra = JsonNodeFactory.instance.arrayNode();
        document.at(pointer).ifPresent(given -> given.forEach(spectra::add));
        spectra.addObject().put("file", loose.name());
        Edit edit = Edits.fact(
                document, bench.words().of("laying.edit", simple, spot), pointer, Optional.<JsonNode>of(spectra));
        bench.signing().propose(edit.title(), why -> {
            leave(loose);
            return edit;
        });
    }

    /** The same name, or the same bytes under another: a project has copies of its files. */
    private boolean same(SpectrumEntry there, Loose loose) {
        if (there.file().equals(loose.name())) return true;
        try {
            Path known = bench.opened().orElseThrow().inputs().path(there.file());
            return Files.isRegularFile(known) && Files.mismatch(known, loose.file()) < 0;
        } catch (ReadException | IOException e) {
            // What cannot be read is told of when the spot is treated.
            return false;
        }
    }

    /** Files that shall not be laid on a spot after all. */
    public void leave(Loose loose) {
        waiting.set(waiting.get().stream().filter(w -> !w.equals(loose)).toList());
    }

    public void leaveAll() {
        waiting.set(List.of());
    }

    public ObjectProperty<List<Loose>> waiting() {
        return waiting;
    }
}
