package spotline.cli;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.management.JMException;
import javax.management.ObjectName;

/**
 * Asks the virtual machine, through its management interface, to go without its optimising compiler, which in a run of
 * seconds takes more of the processors than it gives back. An option would do the same, but a jar cannot ask for one.
 *
 * <p>Errors: none. A machine that does not know the request goes on as before.
 */
final class ShortRun {
    private static final String DIRECTIVE = "[{ match: [\"*.*\"], c2: { Exclude: true } }]\n";

    private ShortRun() {}

    /** Asks beside the caller: the management interface itself takes a while to start. */
    static void begin() {
        Thread asking = new Thread(ShortRun::ask, "short run");
        asking.setDaemon(true);
        asking.start();
    }

    /** Whether the machine took it. */
    static boolean ask() {
        try {
            Path file = Files.createTempFile("spotline", ".json");
            try {
                Files.writeString(file, DIRECTIVE);
                ManagementFactory.getPlatformMBeanServer()
                        .invoke(
                                new ObjectName("com.sun.management:type=DiagnosticCommand"),
                                "compilerDirectivesAdd",
                                new Object[] {new String[] {"\"" + file + "\""}},
                                new String[] {String[].class.getName()});
            } finally {
                Files.deleteIfExists(file);
            }
            return true;
        } catch (JMException | IOException | RuntimeException | LinkageError e) {
            // It only takes longer.
            return false;
        }
    }
}
