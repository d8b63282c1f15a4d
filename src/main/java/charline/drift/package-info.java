/**
 * Whether a rig still does what it did: control patches and power checks over time. Knows no files,
 * pages or commands.
 *
 * <h2>Decisions</h2>
 *
 * <p>Drift is judged coat by coat, each against its own first three control patches. Rejected:
 * subtracting what the removal model gives as the difference of coats; with three patches of a coat
 * that is mostly prior, and its error looks like drift.
 *
 * <p>Upkeep begins a new run of the cumulative sums, but the first control patches stay what is
 * compared with. Rejected: comparing a run with its own first patches; a rig that came back weaker
 * from the service would show no drift, and the windows of before would still be used.
 */
package charline.drift;
