/** Fitted models kept at hand while the log grows. Knows no HTTP. */
package charline.web.live;
