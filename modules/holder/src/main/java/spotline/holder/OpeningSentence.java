package spotline.holder;

import static java.util.Objects.requireNonNull;

import java.util.Optional;

/**
 * The analyst's judgement of the sentence that an owner's page may begin with: the program offers it, a person accepts it.
 *
 * @param by who accepted or declined it
 */
public record OpeningSentence(boolean accepted, Optional<String> by) {
    public OpeningSentence {
        requireNonNull(by, "by");
    }
}
