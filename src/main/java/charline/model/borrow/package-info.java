/** Strata with few patches borrow from the log's others. Knows no files, windows or commands. */
package charline.model.borrow;
