package spotline.viewer.screen;

import javafx.scene.control.Button;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import spotline.viewer.model.Words;

/** Controls with their words: a key's text, and what its {@code .help} says. */
final class Controls {
    private Controls() {}

    static Button button(Words words, String id, String key, Runnable action) {
        Button button = new Button(words.of(key));
        button.setId(id);
        button.setAccessibleHelp(words.of(key + ".help"));
        button.setTooltip(new Tooltip(words.of(key + ".help")));
        button.setOnAction(e -> action.run());
        return button;
    }

    /** A line of text that says what belongs into it. */
    static TextField field(String prompt, String id) {
        TextField field = new TextField();
        field.setId(id);
        field.setPromptText(prompt);
        field.setAccessibleText(prompt);
        return field;
    }

    static ToggleButton toggle(Words words, String id, String key) {
        ToggleButton button = new ToggleButton(words.of(key));
        button.setId(id);
        button.setAccessibleHelp(words.of(key + ".help"));
        button.setTooltip(new Tooltip(words.of(key + ".help")));
        return button;
    }
}
