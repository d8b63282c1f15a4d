/**
 * The bench page: everything of the main job in a browser, served from the same jar, for a phone or
 * tablet at arm's length.
 *
 * <p>Subpackages: {@code door} lets requests in or not and knows nothing of trials; {@code entry}
 * turns what was tapped into records of the log; {@code live} keeps fitted models at hand; {@code
 * page} answers requests with pages. This package must not know SQL, nor compute anything that
 * another package could.
 */
package charline.web;
