/**
 * The file of a log as a whole: its version and the steps that lead to the newest one, copies of it
 * and backups.
 *
 * <p>This package must know no table.
 */
package charline.log.upgrade;
