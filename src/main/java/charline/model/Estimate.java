package charline.model;

/**
 * A quantity as the posterior knows it.
 *
 * @param median 50 % quantile
 * @param low 5 % quantile
 * @param high 95 % quantile
 */
public record Estimate(double median, double low, double high) {}
