package spotline.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

@Command(
        name = "spotline",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class,
        description =
                "From a loaded holder of samples and its photoelectron spectra to a composition table per sample.",
        synopsisSubcommandLabel = "COMMAND",
        footer = {
            "",
            "Example: spotline run holder.json --out results",
            "",
            "X-ray, high-voltage, vacuum, cryogen, hot-stage and powder hazards are for trained people under local rules.",
            "This program certifies no safety and no compliance."
        })
final class SpotlineCommand implements Runnable {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Override
    public void run() {
        throw new ParameterException(new CommandLine(spec), "no command was given");
    }
}
