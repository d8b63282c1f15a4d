/** How well fitted risks agree with what was seen. */
package charline.stat.check;
