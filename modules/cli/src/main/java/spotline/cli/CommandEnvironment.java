package spotline.cli;

import java.io.PrintWriter;

/** What a command prints to. */
record CommandEnvironment(PrintWriter out, PrintWriter err, boolean terminal) {}
