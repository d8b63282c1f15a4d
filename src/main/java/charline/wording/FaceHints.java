package charline.wording;

import charline.trial.Stratum;
import java.util.List;
import java.util.Optional;

/**
 * How a person does on the face that they sit at what an answer suggests, one sentence each. Paper
 * has no such face.
 */
public interface FaceHints {
  /** Says nothing of how. */
  FaceHints NONE = new FaceHints() {};

  /** How other trials are made to lend. */
  default Optional<String> borrow() {
    return Optional.empty();
  }

  /** How trials on other woods are counted too. */
  default Optional<String> pool(List<String> woods) {
    return Optional.empty();
  }

  /** How patches are chosen that confirm settings on another rig. */
  default Optional<String> confirm(Stratum stratum, String rig) {
    return Optional.empty();
  }

  /** How an answer for another spot is asked for, in mm. */
  default Optional<String> forSpot(double millimetres) {
    return Optional.empty();
  }

  /** A sentence with its hint, if there is one. */
  static String with(String sentence, Optional<String> hint) {
    return hint.map(words -> sentence + " " + words).orElse(sentence);
  }
}
