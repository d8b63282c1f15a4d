package charline.wording;

import static charline.quantity.Figures.plain;

import charline.answer.Applicability;
import charline.drift.Validity;
import charline.exposure.Spot;
import charline.trial.Caution;
import charline.window.RigSetup;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Whether a window may be used, as the command line says it.
 *
 * @param validity what was decided
 * @param untriedRig what to do on a rig that is new to the trials; empty where it is not
 * @param untriedKnobs what to do where knobs stand outside the trials; empty where none does
 * @param otherSpot says so where the rig's last patch had another spot than the window, and nobody
 *     said which; else empty
 * @param lastSpotMillimetres that other spot
 * @param answer what it says in words
 */
public record ApplicabilityText(
    Validity validity,
    Optional<String> untriedRig,
    Optional<String> untriedKnobs,
    Optional<String> otherSpot,
    OptionalDouble lastSpotMillimetres,
    Applicability answer) {
  private static final String IF_CHANGED = " If you have changed the lens or the stand-off since,";

  public static ApplicabilityText of(Applicability answer) {
    Validity validity = answer.validity();
    RigSetup bench = answer.subject().bench();
    String rig = bench.rig().name();
    Optional<Spot> other = answer.otherSpot();
    return new ApplicabilityText(
        validity,
        validity.untried()
            ? Optional.of(
                "Rig %s has burned none of these trials: charline converts dose and intensity to its knobs, within what was tried. Confirm the settings first with patches burned on it."
                    .formatted(rig))
            : Optional.empty(),
        answer.untried().isEmpty()
            ? Optional.empty()
            : Optional.of(
                "No trial had %s, and the trials do not show what that changes. Try it first."
                    .formatted(UntriedText.of(answer.untried()))),
        other.map(
            last ->
                "The last patch on rig %s had a spot of %s mm, but this answer is for %s mm, as in most patches."
                    .formatted(
                        rig,
                        plain(last.diameterMillimetres()),
                        plain(bench.spot().diameterMillimetres()))),
        other
            .map(last -> OptionalDouble.of(last.diameterMillimetres()))
            .orElse(OptionalDouble.empty()),
        answer);
  }

  /**
   * "not valid", "untried", "other spot" or several in a list of windows, empty where it may be
   * used.
   */
  String mark() {
    List<String> marks = new ArrayList<>();
    validity.drifted().ifPresent(why -> marks.add("not valid"));
    if (untriedRig.isPresent() || untriedKnobs.isPresent()) {
      marks.add("untried");
    }
    otherSpot.ifPresent(why -> marks.add("other spot"));
    return String.join(", ", marks);
  }

  /**
   * Lines that stand before a window, none where it may be used.
   *
   * @param hints how what they suggest is done on this face
   */
  public String text(FaceHints hints) {
    StringBuilder text = new StringBuilder();
    DriftText.drifted(validity)
        .ifPresent(why -> text.append(Table.paragraph("NOT VALID: " + why)).append('\n'));
    Stream.of(untriedRig, untriedKnobs)
        .flatMap(Optional::stream)
        .map(why -> FaceHints.with("UNTRIED: " + why, hints.tryOut(answer)))
        .forEach(words -> text.append(Table.paragraph(words)).append('\n'));
    otherSpot
        .map(
            why ->
                FaceHints.with(
                    "OTHER SPOT: " + why + IF_CHANGED + " this answer does not apply.",
                    hints.forSpot(lastSpotMillimetres.getAsDouble())))
        .ifPresent(words -> text.append(Table.paragraph(words)).append('\n'));
    return text.toString();
  }

  /** What a person must know of it on paper or a page, beside a drift. */
  public List<Caution> reservations() {
    List<Caution> all = new ArrayList<>();
    untriedRig.ifPresent(why -> all.add(new Caution("Untried on this rig", why, DriftText.SOURCE)));
    untriedKnobs.ifPresent(why -> all.add(new Caution("Untried setting", why, DriftText.SOURCE)));
    otherSpot.ifPresent(
        why ->
            all.add(
                new Caution(
                    "Spot changed",
                    why + IF_CHANGED + " this answer does not apply.",
                    DriftText.SOURCE)));
    return all;
  }

  public Json json(Json window) {
    return window
        .put("valid", validity.drifted().isEmpty())
        .put("drift", DriftText.drifted(validity))
        .put("untried_on_rig", validity.untried())
        .put("last_spot_mm", lastSpotMillimetres);
  }
}
