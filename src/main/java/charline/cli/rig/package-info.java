/** Commands about rigs. */
package charline.cli.rig;
