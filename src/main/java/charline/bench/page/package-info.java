/** The pages: each group of addresses with the words it shows. */
package charline.bench.page;
