package charline.model;

/** Draws of one event's posterior. */
public final class Posterior {}
