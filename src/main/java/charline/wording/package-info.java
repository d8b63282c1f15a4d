/** Answers as text and as JSON. Knows no option of the command line and no HTTP. */
package charline.wording;
