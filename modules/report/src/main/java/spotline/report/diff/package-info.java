/** What differs between two results, and between two sets of settings. Nothing is read or written here. */
@org.jspecify.annotations.NullMarked
package spotline.report.diff;
