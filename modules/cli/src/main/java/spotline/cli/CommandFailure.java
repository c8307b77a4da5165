package spotline.cli;

import java.io.IOException;
import java.io.PrintWriter;
import spotline.core.ReadException;

/** Turns what went wrong into one line for each fault. */
final class CommandFailure {
    private CommandFailure() {}

    static int report(Exception failure, PrintWriter err, boolean debug) {
        if (failure instanceof ReadException read) {
            line(err, read);
            for (ReadException other : read.others()) line(err, other);
        } else if (failure instanceof IOException io) {
            err.println("spotline: " + Main.oneLine(file(io)));
        } else {
            err.println("spotline: an internal fault stopped the command ("
                    + failure.getClass().getSimpleName() + ": " + Main.oneLine(String.valueOf(failure.getMessage()))
                    + "); --debug shows where");
        }
        if (debug) failure.printStackTrace(err);
        return 2;
    }

    static void line(PrintWriter err, ReadException fault) {
        err.println("spotline: " + Main.oneLine(String.valueOf(fault.getMessage())));
    }

    private static String file(IOException io) {
        if (io instanceof java.nio.file.AccessDeniedException) return io.getMessage() + ": may not be written";
        if (io instanceof java.nio.file.FileAlreadyExistsException) {
            return io.getMessage() + ": a file stands where a directory is wanted";
        }
        return String.valueOf(io.getMessage());
    }
}
