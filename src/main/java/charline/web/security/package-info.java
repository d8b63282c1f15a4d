/**
 * Who may come in, and how an answer leaves. Knows HTTP and nothing of trials.
 *
 * <h2>Decisions</h2>
 *
 * <p>Paired devices are forgotten at a restart, because their tokens are in memory alone. Rejected:
 * secrets in a file beside the log.
 *
 * <p>Multipart forms are rejected unread. The page needs none, and the server would write their
 * parts to disk first.
 */
package charline.web.security;
