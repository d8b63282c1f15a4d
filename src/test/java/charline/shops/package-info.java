/**
 * Simulated shops: trials drawn from known laws, judged by the window finder, and the promises it
 * makes held against the laws they were drawn from. {@link charline.shops.Validation} runs them all
 * and writes {@code reports/validation.md}.
 */
package charline.shops;
