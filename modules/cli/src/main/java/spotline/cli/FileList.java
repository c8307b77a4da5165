package spotline.cli;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.formats.FileNames;

/** Every regular file below a folder, sorted by name; links to folders are not followed. */
record FileList(List<Path> files, List<ReadException> unreadable) {
    FileList {
        files = List.copyOf(files);
        unreadable = List.copyOf(unreadable);
    }

    static FileList below(Path folder) throws IOException {
        List<Path> files = new ArrayList<>();
        List<ReadException> unreadable = new ArrayList<>();
        Files.walkFileTree(folder, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
                if (Files.isRegularFile(file)) files.add(file);
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFileFailed(Path file, IOException failure) {
                unreadable.add(new ReadException(
                        Place.file(FileNames.text(file)), "the folder could not be read", "a readable folder"));
                return FileVisitResult.CONTINUE;
            }
        });
        files.sort(Comparator.comparing(FileNames::text));
        return new FileList(files, unreadable);
    }
}
