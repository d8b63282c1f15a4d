/**
 * What strata of a log tell each other: always how much boards differ, and all the rest where a
 * question borrows.
 *
 * <p>This package must not know of files, windows or commands.
 */
package charline.model.borrow;
