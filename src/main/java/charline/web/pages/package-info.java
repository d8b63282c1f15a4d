/** The pages: each group of addresses with the words it shows. */
package charline.web.pages;
