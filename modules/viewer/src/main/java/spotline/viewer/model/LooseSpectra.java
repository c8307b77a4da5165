package spotline.viewer.model;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
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

/** Spectrum files that belong to no spot yet: the analyst lays them on one. */
public final class LooseSpectra {
    /**
     * A file that waits for its spot.
     *
     * @param name as the holder run will name it
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
        Optional<Path> run = bench.file().get();
        if (run.isEmpty() || bench.living().isEmpty()) {
            bench.fault().set(bench.words().of("laying.no-run"));
            return;
        }
        if (String.valueOf(run.get().getFileName()).endsWith(".spotline")) {
            bench.fault().set(bench.words().of("laying.project"));
            return;
        }
        RunDocument document = bench.living().get().document();
        bench.inBackground(() -> {
            List<Loose> looked = files.stream()
                    .map(f -> looked(f, run.get(), document, bench.words()))
                    .toList();
            bench.onScreen(() -> {
                if (bench.file().get().equals(run)) add(looked);
            });
        });
    }

    private void add(List<Loose> looked) {
        List<Loose> all = new ArrayList<>(waiting.get());
        all.removeIf(w -> looked.stream().anyMatch(l -> l.file().equals(w.file())));
        all.addAll(looked);
        waiting.set(List.copyOf(all));
    }

    private static Loose looked(Path file, Path run, RunDocument document, Words words) {
        Path folder = Optional.ofNullable(run.toAbsolutePath().normalize().getParent())
                .orElse(Path.of("."));
        Path absolute = file.toAbsolutePath().normalize();
        String simple = String.valueOf(file.getFileName());
        if (!absolute.startsWith(folder)) {
            return new Loose(file, simple, words.of("laying.outside", simple, folder), false);
        }
        String name = folder.relativize(absolute).toString().replace('\\', '/');
        try {
            SpectrumFile read = SpectrumFiles.open(file, name, Optional.<TextColumns>empty());
            return new Loose(file, name, holds(read, name, document, words), told(read, document));
        } catch (ReadException e) {
            return new Loose(file, name, String.valueOf(e.getMessage()), false);
        }
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
        for (SpectrumEntry there : entry.spectra()) {
            if (!there.file().equals(loose.name())) continue;
            bench.fault().set(bench.words().of("laying.there", loose.name(), spot));
            return;
        }
        String pointer = "/spots/" + index + "/spectra";
        ArrayNode spectra = JsonNodeFactory.instance.arrayNode();
        document.at(pointer).ifPresent(given -> given.forEach(spectra::add));
        spectra.addObject().put("file", loose.name());
        Edit edit = Edits.fact(
                document, bench.words().of("laying.edit", loose.name(), spot), pointer, Optional.<JsonNode>of(spectra));
        bench.signing().propose(edit.title(), why -> {
            leave(loose);
            return edit;
        });
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
