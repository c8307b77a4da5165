/**
 * The holder run as a document that is edited: its one value, edits of it as data, the history of edits, and the run that
 * follows them. No files and no clock here, and threads in {@link spotline.run.document.LivingRun} alone.
 */
@org.jspecify.annotations.NullMarked
package spotline.run.document;
