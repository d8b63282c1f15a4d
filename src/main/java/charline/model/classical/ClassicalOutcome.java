package charline.model.classical;

import charline.model.Event;
import java.util.List;
import java.util.Optional;

/** What became of a classical fit. */
public sealed interface ClassicalOutcome permits ClassicalFit, NoClassicalFit {
  Event event();

  Method method();

  /** Counts of rows and what they are, in a sentence. */
  String rows();

  /** A sentence for every column that was left out or cannot be separated from another. */
  List<String> notes();

  /** What separation means here, where outcomes are separated. */
  Optional<Separating> separation();
}
