package charline.model.classical;

/** The ablation law of a stratum, or why there is none. */
public sealed interface AblationOutcome permits AblationFit, NoAblation {}
