/** Hours of a job, from its window. Knows no files, pages or commands. */
package charline.quote;
