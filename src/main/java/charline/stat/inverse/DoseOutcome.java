package charline.stat.inverse;

/** The dose at a risk, or the reason why there is none. */
public sealed interface DoseOutcome permits Dose, NoDose {}
