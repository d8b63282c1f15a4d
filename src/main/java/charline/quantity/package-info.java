/** Numbers with a unit, as a person types and reads them. Knows nothing of beams, wood or files. */
package charline.quantity;
