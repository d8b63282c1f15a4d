package charline.wording;

import charline.answer.Applicability;
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

  /** How patches are chosen that try a rig or knobs that no trial had. */
  default Optional<String> tryOut(Applicability answer) {
    return Optional.empty();
  }

  /** How an answer for one piece is asked for, so that its control patches count. */
  default Optional<String> forPiece() {
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
