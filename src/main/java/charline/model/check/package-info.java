/**
 * Whether a fitted model fits: counts against what it predicts, every patch against a model that
 * never saw it, boards against each other, and what the trials cannot tell at all.
 *
 * <p>This package must not know of the log, of windows or of screens.
 */
package charline.model.check;
