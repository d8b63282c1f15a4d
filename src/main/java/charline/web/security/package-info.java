/**
 * Who may come in, and how an answer leaves. Knows HTTP and nothing of trials.
 *
 * <h2>Decisions</h2>
 *
 * <p>Paired devices outlive a restart in a private file beside the log that holds hashes of their
 * tokens: whoever reads it can let no device in. Rejected: tokens in memory alone, which sent every
 * phone back to pairing each morning.
 *
 * <p>Multipart forms are rejected unread: the server would write their parts to disk first. A file
 * is sent as the body alone, by a script that says so where it cannot run.
 */
package charline.web.security;
