/**
 * Fitted models kept at hand while the log grows. Knows no HTTP.
 *
 * <h2>Decisions</h2>
 *
 * <p>The risk of a dialled setting comes from posteriors that are fitted once per change of their
 * patches, in the background. The page answers within some 10 ms at 30 as at 3,000 patches, with
 * the models from before a new patch until the new ones are ready, and says so. Rejected: fitting
 * on request, ten seconds at 3,000 patches.
 */
package charline.web.live;
