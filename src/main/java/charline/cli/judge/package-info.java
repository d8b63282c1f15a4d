/** Commands that judge: burn onset, removal, the window and its sheet. */
package charline.cli.judge;
