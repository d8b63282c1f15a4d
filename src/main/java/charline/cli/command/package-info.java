/**
 * What every command works with: streams, clock, the log in use, a person to ask, and the reading
 * of what was typed.
 */
package charline.cli.command;
