/**
 * Joining another log into this one: what is new comes in, what both amended is a conflict until a
 * person decides it.
 *
 * <p>This package must know no command and no screen.
 */
package charline.log.merge;
