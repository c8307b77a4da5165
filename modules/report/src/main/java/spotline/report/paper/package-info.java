/**
 * HTML pages of our own making as PDF: the same words, tables and drawings, laid out on paper with page numbers. What a page
 * says is decided where the page is written; nothing is added or left out here.
 */
@NullMarked
package spotline.report.paper;

import org.jspecify.annotations.NullMarked;
