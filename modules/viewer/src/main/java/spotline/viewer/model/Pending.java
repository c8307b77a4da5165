package spotline.viewer.model;

import java.util.function.Function;
import spotline.run.document.Edit;

/**
 * An edit that moves a reported number by hand, or hides something, and waits for its reason.
 *
 * @param title what will be done, for a person
 * @param edit what to do, once there is a reason
 */
public record Pending(String title, Function<String, Edit> edit) {}
