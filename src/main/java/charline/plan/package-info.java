/**
 * What to do next with wood and time: which patches to burn, whether the rig still is what it was,
 * and what the job will cost.
 *
 * <p>This package must not know of the log, of files or of screens.
 */
package charline.plan;
