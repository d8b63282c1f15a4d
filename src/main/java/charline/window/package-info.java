/**
 * The window: settings that lift the finish and leave the wood unburned, with the risk and the
 * confidence they were asked for, or a plain no.
 *
 * <p>This package must not know of the log, of files or of screens.
 */
package charline.window;
