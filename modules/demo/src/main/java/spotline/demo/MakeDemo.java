package spotline.demo;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

/** Writes the demonstration folder: {@code MakeDemo DIRECTORY}. The same bytes come out every time. */
public final class MakeDemo {
    private MakeDemo() {}

    /** Errors: {@link IllegalArgumentException} without exactly one argument, {@link IOException} of the file system. */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length != 1) {
            throw new IllegalArgumentException("expected the folder to write, were " + arguments.length + " arguments");
        }
        write(Path.of(arguments[0]));
    }

    /** Writes every file of the folder; others in it are left alone. */
    public static void write(Path folder) throws IOException {
        Files.createDirectories(folder);
        for (Map.Entry<String, byte[]> file : DemoFolder.files().entrySet()) {
            Files.write(folder.resolve(file.getKey()), file.getValue());
        }
    }
}
