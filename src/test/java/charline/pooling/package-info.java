/**
 * Simulated logs: what mixed coats and borrowing from other trials do when the truth is known. Its
 * main writes {@code reports/pooling.md}.
 */
package charline.pooling;
