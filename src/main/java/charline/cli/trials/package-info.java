/** Questions about trials: the window and its sheet, next patches, hours, models and priors. */
package charline.cli.trials;
