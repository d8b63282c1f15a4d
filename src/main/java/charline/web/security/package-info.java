/** Who may come in, and how an answer leaves. Knows HTTP and nothing of trials. */
package charline.web.security;
