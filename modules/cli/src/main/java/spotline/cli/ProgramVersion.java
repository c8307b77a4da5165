package spotline.cli;

import java.util.Optional;
import picocli.CommandLine.IVersionProvider;

/** The version this program was built as. */
final class ProgramVersion implements IVersionProvider {
    static String text() {
        return Optional.ofNullable(ProgramVersion.class.getPackage().getImplementationVersion())
                .orElse("development");
    }

    @Override
    public String[] getVersion() {
        return new String[] {"spotline " + text()};
    }
}
