package spotline.cli;

import java.io.PrintWriter;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;
import spotline.core.Finding;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.core.Severity;
import spotline.formats.FileNames;
import spotline.holder.HolderPlan;
import spotline.holder.HolderRunFile;
import spotline.holder.HolderRunReader;
import spotline.holder.HolderTemplates;
import spotline.holder.check.PlanCheck;
import spotline.report.table.FindingsCsv;
import spotline.run.TreatmentStack;

/**
 * {@code plan check FILE} without any option: whoever mounts samples asks for it again after each change, so it starts
 * without the command line's own machinery, which takes longer than the check. Any other wording goes the usual way.
 */
final class DirectPlanCheck {
    private DirectPlanCheck() {}

    static boolean asked(String... args) {
        return args.length == 3
                && args[0].equals("plan")
                && args[1].equals("check")
                && !args[2].startsWith("-")
                && !args[2].startsWith("@");
    }

    /** @return the exit status */
    static int run(String file, PrintWriter out, PrintWriter err) {
        try {
            return print(FileNames.path(file), FindingsCsv::text, out);
        } catch (InvalidPathException e) {
            err.println("spotline: " + e.getMessage());
            return 2;
        } catch (ReadException | RuntimeException e) {
            return CommandFailure.report(e, err, false);
        }
    }

    static int print(Path holder, Function<List<Finding>, String> form, PrintWriter out) throws ReadException {
        HolderRunFile file;
        try {
            file = HolderRunReader.read(holder);
        } catch (ReadException e) {
            throw unlessProject(holder, e);
        }
        TreatmentStack.requireSound(file, holder.toString());
        List<Finding> findings = PlanCheck.ofLoad(HolderPlan.of(file), HolderTemplates.of(file, holder));
        out.print(form.apply(findings));
        for (Finding f : findings) if (f.severity() == Severity.STOP) return 1;
        return 0;
    }

    /** A project is no holder run to look at before loading: it was treated, and its holder was loaded, long ago. */
    static ReadException unlessProject(Path holder, ReadException otherwise) {
        if (!RunInput.isProject(holder)) return otherwise;
        return new ReadException(
                Place.file(holder.toString()),
                "a project",
                "the holder run that it was made from; run treats projects");
    }
}
