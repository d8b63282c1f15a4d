package charline.answer;

import charline.drift.Validity;
import charline.exposure.Spot;
import charline.trial.Knob;
import charline.window.TriedKnobs;
import charline.window.UntriedKnob;
import java.util.List;
import java.util.Optional;

/**
 * Whether a window applies to the rig as it is now.
 *
 * @param subject what the window is of
 * @param validity drift since the trials, and whether the rig burned any of them
 * @param untried knobs that the window keeps fixed where no trial had them
 * @param otherSpot spot of the rig's last patch, where it is not the window's and the question
 *     fixes none
 */
public record Applicability(
    TrialCase subject, Validity validity, List<UntriedKnob> untried, Optional<Spot> otherSpot) {
  public Applicability {
    untried = List.copyOf(untried);
  }

  /** Of a case, with what drift says of its rig. */
  public static Applicability of(TrialCase subject, Validity validity) {
    return new Applicability(
        subject,
        validity,
        TriedKnobs.of(subject.trials().patches()).untried(subject.bench()),
        subject.question().fixed().of(Knob.SPOT).isPresent()
            ? Optional.empty()
            : subject.bench().otherSpotOfLate(subject.trials().patches()));
  }
}
