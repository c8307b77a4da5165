package spotline.viewer.model;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** Every text of the viewer, from the resource bundle. */
public final class Words {
    private final ResourceBundle bundle;
    private final Locale locale;

    /** Errors: {@link java.util.MissingResourceException} when the program is incomplete. */
    public Words(Locale locale) {
        this.locale = locale;
        bundle = ResourceBundle.getBundle("spotline.viewer.words", locale);
    }

    /** An identifier that the engine's files use, as a person reads it: {@code "not-needed"}. */
    public String word(String identifier) {
        return bundle.getString("word." + identifier);
    }

    public String of(String key, Object... arguments) {
        String text = bundle.getString(key);
        return arguments.length == 0 ? text : new MessageFormat(text, locale).format(arguments);
    }
}
