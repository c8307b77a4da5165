/**
 * What the screens show, worked out from a run without a node or a pixel: pictures in millimetres and electronvolts, rows
 * and sentences. Everything here is tested without a screen.
 */
@NullMarked
package spotline.viewer.model;

import org.jspecify.annotations.NullMarked;
