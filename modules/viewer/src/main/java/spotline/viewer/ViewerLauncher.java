package spotline.viewer;

import java.nio.file.Path;
import java.util.Optional;
import javafx.application.Application;

/** Starts the window. Knows the screen, so that whoever calls it need not. */
public final class ViewerLauncher {
    private ViewerLauncher() {}

    /**
     * Shows the window and returns when it was closed. Once in a program's life.
     *
     * @param holderRun opened at once; an empty window otherwise
     */
    public static void open(Optional<Path> holderRun) {
        Application.launch(
                ViewerApplication.class,
                holderRun.map(p -> new String[] {p.toString()}).orElse(new String[0]));
    }

    static String version() {
        String version = ViewerLauncher.class.getPackage().getImplementationVersion();
        return version == null ? "development" : version;
    }
}
