/**
 * The bench page: everything of the main job in a browser, served from the same jar, for a phone or
 * tablet at arm's length.
 *
 * <p>Subpackages: {@code door} lets requests in or not and knows nothing of trials; {@code entry}
 * turns what was tapped into records of the log; {@code live} keeps fitted models at hand; {@code
 * page} answers requests with pages. This package must not know SQL, nor compute anything that
 * another package could.
 *
 * <h2>Decisions</h2>
 *
 * <p>There is no service worker. Browsers allow one on encrypted pages only, and a shop's network
 * has no certificates; entries wait in the browser's storage and go out with the next page that
 * loads. Rejected: certificates to be installed on every phone.
 *
 * <p>A half-entered patch is kept by the tab, not by the device, so that yesterday's half patch
 * does not come up in a new one.
 */
package charline.web;
