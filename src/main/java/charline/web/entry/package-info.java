/** What was tapped at the bench, read, checked and recorded once. Knows no HTTP. */
package charline.web.entry;
