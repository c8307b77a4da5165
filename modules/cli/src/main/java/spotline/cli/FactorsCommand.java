package spotline.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import spotline.analysis.quantify.ListedFactors;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.core.Work;
import spotline.reference.ReferenceData;
import spotline.report.WholeFile;
import spotline.run.FactorFile;
import spotline.run.HolderRun;
import spotline.run.HolderRunLoader;
import spotline.run.RunPipeline;
import spotline.run.findings.RuleBook;

/** Writes the sensitivity factors that a holder run's own reference spots give, as a file that a treatment can name. */
@Command(
        name = "factors",
        mixinStandardHelpOptions = true,
        description = "Writes the sensitivity factors of a holder run's reference spots (quantify.factors of kind"
                + " reference-spots) as a table that other holder runs can use.",
        footer = {"", "Example: spotline factors reference-holder.json --out our-factors.csv"})
final class FactorsCommand implements Callable<Integer> {
    private final CommandEnvironment environment;

    @Parameters(paramLabel = "HOLDER.json", description = "the holder run, or a project")
    @SuppressWarnings("NullAway.Init")
    private Path holder;

    @Option(
            names = "--out",
            paramLabel = "FILE.csv",
            required = true,
            description = "table to write; numbered where the run asks for several materials")
    @SuppressWarnings("NullAway.Init")
    private Path out;

    @Mixin
    private final TreatmentOptions options = new TreatmentOptions();

    FactorsCommand(CommandEnvironment environment) {
        this.environment = environment;
    }

    @Override
    public Integer call() throws Exception {
        List<ListedFactors> sets;
        try (ProgressLine progress = new ProgressLine(environment);
                RunInput input = RunInput.open(holder, options)) {
            ReferenceData reference = ReferenceData.shipped();
            HolderRun run = new HolderRunLoader(reference).load(input.source(), progress);
            sets = sets(run, new RunPipeline(reference, ProgramVersion.text(), RuleBook.standard()), progress);
        }
        if (sets.isEmpty()) {
            throw new ReadException(
                    Place.file(holder.toString()),
                    "no treatment with factors of reference spots",
                    "quantify.factors of kind \"reference-spots\" in the treatment of a spot, family or the holder");
        }
        String name = out.getFileName().toString();
        int dot = name.lastIndexOf('.');
        for (int i = 0; i < sets.size(); i++) {
            Path file = out;
            if (sets.size() > 1) {
                String stem = dot < 0 ? name : name.substring(0, dot);
                file = out.resolveSibling(stem + "-" + (i + 1) + (dot < 0 ? "" : name.substring(dot)));
            }
            WholeFile.write(file, FactorFile.text(sets.get(i)).getBytes(StandardCharsets.UTF_8));
            environment
                    .out()
                    .println("Factors: " + file + ", " + sets.get(i).factors().size() + " lines, "
                            + TerminalText.clean(sets.get(i).set().name()));
        }
        return 0;
    }

    private List<ListedFactors> sets(HolderRun run, RunPipeline pipeline, Work work) throws ReadException {
        try {
            return pipeline.referenceFactors(run, work);
        } catch (IllegalArgumentException e) {
            throw new ReadException(
                    Place.file(holder.toString()),
                    "reference spots whose factors cannot be had (" + e.getMessage() + ")",
                    "spots that show a material of stated composition");
        }
    }
}
