/**
 * The bench page: everything of the main job in a browser, served from the same jar, for a phone or
 * tablet at arm's length.
 *
 * <p>Subpackages: {@code security} lets requests in or not and knows nothing of trials; {@code
 * entry} turns what was tapped into records of the log; {@code live} keeps fitted models at hand;
 * {@code pages} answers requests with pages. This package must not know SQL, nor compute anything
 * that another package could.
 *
 * <h2>Decisions</h2>
 *
 * <p>There is no service worker. Browsers allow one on encrypted pages only, and a shop's network
 * has no certificates; entries wait in the browser's storage and go out with the next page that
 * loads. Rejected: certificates to be installed on every phone.
 *
 * <p>A half-entered patch is kept by the device and offered back, with its photo: a battery dies at
 * the bench, and a tab with it. What a device keeps of its own goes through {@code storage.js}.
 *
 * <p>A page stays loaded: {@code navigate.js} fetches the next one into it, so that a hand that is
 * out of reach of the server can go on recording. A script therefore does its work in {@code
 * whenShown(id, start)} of {@code page.js}, never once for all. A link to a file has {@code
 * download}, a form that sends or fetches one {@code data-plain}; a part that takes long is a
 * {@code data-part} with the address of a template without a frame.
 *
 * <p>No page waits for an answer that takes seconds: {@link charline.web.live.LiveAnswers} gives
 * the last known one at once, the page marks it with {@code data-renewing}, and {@code renew.js}
 * shows the newest when it is there.
 *
 * <p>A large log is read once per change: pages find and count in what {@link
 * charline.web.live.LogSnapshot} holds, and only the rows of a page are put into words. What a
 * person waits for has a bound, and so has memory: of fits and answers those asked for last are
 * kept, and 3,000 patches on 350 boards are served within 256 MB. Rejected: counting and sorting in
 * SQL, which knows neither dose nor what a question computes, and reads the rows all the same.
 *
 * <p>Every size and colour is a token of {@code tokens.css}; surfaces and states are in {@code
 * bench.css}, what is tapped and typed in {@code controls.css}. A template is one component.
 */
package charline.web;
