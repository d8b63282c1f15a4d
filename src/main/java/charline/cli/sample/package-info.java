/** Commands about results of samples: what coats were tested for. */
package charline.cli.sample;
