/**
 * Completion in bash, zsh and fish. Commands, options and fixed words stand in the script that a
 * person installs; names are read from the log when they are asked for, without the rest of the
 * program being loaded. This package must not know what a command does.
 */
package charline.cli.completion;
