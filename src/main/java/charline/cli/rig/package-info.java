/** Commands about rigs: lasers with head and lens, and their power checks. */
package charline.cli.rig;
