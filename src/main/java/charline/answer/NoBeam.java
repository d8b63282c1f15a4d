package charline.answer;

import charline.trial.Sample;
import java.util.List;
import java.util.Optional;

/** Why the beam stays off: no patch list, window, quote or sheet is given. */
public sealed interface NoBeam {
  /** What it is about, a word of the log. */
  String substance();

  /**
   * Heat makes poison of it, whatever a sample says.
   *
   * @param finishes whose coats it is; empty where only the coating family was asked about
   */
  record Never(String substance, List<String> finishes) implements NoBeam {
    public Never {
      finishes = List.copyOf(finishes);
    }
  }

  /**
   * A sample found it.
   *
   * @param finish the finish
   * @param sample the result
   * @param means what to know and do
   */
  record Found(String substance, String finish, Sample sample, String means) implements NoBeam {}

  /**
   * No sample says yet that the coat is free of it.
   *
   * @param finishes to be sampled; empty where none is set up
   * @param inconclusive a test that said neither, if there was one
   */
  record Unsampled(String substance, List<String> finishes, Optional<Sample> inconclusive)
      implements NoBeam {
    public Unsampled {
      finishes = List.copyOf(finishes);
    }
  }
}
