/** How quick the program is, each figure against something that a person could use instead. */
package charline.timing;
