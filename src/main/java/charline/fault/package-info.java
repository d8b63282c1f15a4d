/**
 * What the program writes down about a fault of its own, so that its makers can mend it. Depends on
 * nothing.
 */
package charline.fault;
