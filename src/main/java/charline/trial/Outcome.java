package charline.trial;

import charline.refusal.Refusal;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What was seen on a patch: clean, or any mix of tint, char and residue.
 *
 * @param marks at least one; {@link Mark#CLEAN} only alone
 */
public record Outcome(Set<Mark> marks) {
  /** What people say of a patch that does not tell which marks they saw. */
  private static final Set<String> VAGUE =
      Set.of("good", "fine", "worked", "works", "passed", "safe", "failed", "bad", "dirty");

  public Outcome {
    if (marks.isEmpty()) {
      throw Refusal.usage("An outcome must name clean, tint, char or residue; nothing was given.");
    }
    if (marks.contains(Mark.CLEAN) && marks.size() > 1) {
      throw Refusal.usage(
          "Clean must be the only mark of an outcome; it came with %s."
              .formatted(
                  marks.stream()
                      .filter(m -> m != Mark.CLEAN)
                      .map(Mark::word)
                      .collect(Collectors.joining("+"))));
    }
    marks = Collections.unmodifiableSet(EnumSet.copyOf(marks));
  }

  public static Outcome of(Mark first, Mark... rest) {
    return new Outcome(EnumSet.of(first, rest));
  }

  /**
   * Reads {@code clean}, {@code char}, {@code charred+residue}; comma and blank join as well as
   * plus. Cleared and ok, said alone, are clean; beside char, cleared adds nothing.
   *
   * @throws Refusal naming the word it does not know, or that may mean several marks
   */
  public static Outcome parse(String text) {
    Set<Mark> marks = EnumSet.noneOf(Mark.class);
    for (String word : text.strip().toLowerCase(Locale.ROOT).split("[+,\\s]+")) {
      if (word.isEmpty()) {
        continue;
      }
      if (word.equals("cleared") && text.strip().length() > word.length()) {
        continue; // "cleared+char": the finish is gone, and the char is named
      }
      marks.add(Mark.meant(word).orElseThrow(() -> unknown(word, text)));
    }
    return new Outcome(marks);
  }

  private static Refusal unknown(String word, String text) {
    return Refusal.usage(
        VAGUE.contains(word)
            ? "\"%s\" does not say what was seen; say clean, or tint, char and residue joined by +."
                .formatted(word)
            : "An outcome is clean, or tint, char and residue joined by +, not \"%s\"."
                .formatted(text));
  }

  /** True if the wood is charred. */
  public boolean charred() {
    return marks.contains(Mark.CHAR);
  }

  /**
   * True if the finish is gone.
   *
   * @param acceptTint count a tint in the grain as gone
   */
  public boolean cleared(boolean acceptTint) {
    return !marks.contains(Mark.RESIDUE) && (acceptTint || !marks.contains(Mark.TINT));
  }

  /** The form that {@link #parse} reads: marks in a fixed order joined by plus. */
  public String text() {
    return marks.stream().map(Mark::word).collect(Collectors.joining("+"));
  }
}
