/**
 * Documents as files: the project, its journal and its lock, and what it takes for none of it ever to be lost. Results come
 * and go as bytes; what is in them is the caller's business.
 */
@org.jspecify.annotations.NullMarked
package spotline.run.project;
