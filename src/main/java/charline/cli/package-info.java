/**
 * The program's face: commands, help, exit codes. Together with its subpackages the only place that
 * prints.
 *
 * <p>A command reads its options, makes its calls, prints one view and returns a code. This package
 * must not know how anything is computed or kept.
 */
package charline.cli;
