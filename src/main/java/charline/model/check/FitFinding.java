package charline.model.check;

/**
 * One thing that a check found.
 *
 * @param severity how much it weighs
 * @param about what was checked, in two or three words
 * @param words one sentence for the person
 */
public record FitFinding(Severity severity, String about, String words) {}
