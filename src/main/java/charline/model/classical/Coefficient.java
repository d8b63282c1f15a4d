package charline.model.classical;

/**
 * One coefficient of a fit.
 *
 * @param name the column with its scale, "ln dose (J/cm2)"
 * @param estimate change of the log odds per unit of the column
 * @param standardError of it
 * @param limits profile limits
 */
public record Coefficient(String name, double estimate, double standardError, Limits limits) {}
