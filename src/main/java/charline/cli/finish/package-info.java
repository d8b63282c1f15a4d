/** Commands about finishes: the coats on the wood. */
package charline.cli.finish;
