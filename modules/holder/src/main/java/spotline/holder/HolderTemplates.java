package spotline.holder;

import java.util.List;
import java.util.Locale;

/** The holder templates that ship with the program, and the lab's own. */
public final class HolderTemplates {
    /** Names of the shipped templates. */
    public static final List<String> SHIPPED =
            List.of("flat-bar", "stub-end-bar", "temperature-stage", "cold-stub-bar", "rotating-stage");

    private HolderTemplates() {}

    /** Whether a template is named by a file of the lab's own. */
    public static boolean namesFile(String template) {
        return template.toLowerCase(Locale.ROOT).endsWith(".json");
    }
}
