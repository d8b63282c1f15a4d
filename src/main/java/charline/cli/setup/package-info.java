/** Commands that set up the bench: rigs, boards and finishes. */
package charline.cli.setup;
