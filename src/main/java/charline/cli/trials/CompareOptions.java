package charline.cli.trials;

import charline.answer.TrialQuestion;
import charline.cli.command.TypedValues;
import charline.log.Logbook;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import picocli.CommandLine.Option;

/**
 * Two ways of working: an option that is given twice tells them apart, the first way first; one
 * that is given once is true of both.
 */
final class CompareOptions {
  private static final String TWICE = " Give it twice to compare.";

  @Option(names = "--rig", paramLabel = "NAME", description = "Rig." + TWICE)
  private List<String> rigs = List.of();

  @Option(names = "--figure", paramLabel = "FIGURE", description = "Scan figure." + TWICE)
  private List<String> figures = List.of();

  @Option(
      names = "--light",
      paramLabel = "LIGHT",
      description = "pulsed or cw, where both were tried on the same stock." + TWICE)
  private List<String> lights = List.of();

  @Option(
      names = "--passes",
      paramLabel = "COUNT",
      description = "Passes in all. Default: those of a window, else 2." + TWICE)
  private List<String> passes = List.of();

  @Option(names = "--tone", paramLabel = "TONE", description = "pale, mid or dark." + TWICE)
  private List<String> tones = List.of();

  @Option(
      names = "--place",
      paramLabel = "PLACE",
      description = "face, arris, end grain, moulding or knot. Default: face." + TWICE)
  private List<String> places = List.of();

  @Option(
      names = "--rest",
      paramLabel = "TIME",
      description = "Rest between passes, in s; under 10 s the wood stays hot." + TWICE)
  private List<String> rests = List.of();

  @Option(names = "--wetted", paramLabel = "YES/NO", description = "yes or no." + TWICE)
  private List<String> wetted = List.of();

  /** Refuses options that compare nothing, or three things. */
  void check() {
    List<String> names =
        List.of(
            "--rig", "--figure", "--light", "--passes", "--tone", "--place", "--rest", "--wetted");
    List<List<String>> all = List.of(rigs, figures, lights, passes, tones, places, rests, wetted);
    for (int k = 0; k < all.size(); k++) {
      if (all.get(k).size() > 2) {
        throw TypedValues.refused(
            names.get(k), "two ways are compared, not %d.".formatted(all.get(k).size()));
      }
    }
    if (all.stream().noneMatch(given -> given.size() == 2 && !given.get(0).equals(given.get(1)))) {
      throw TypedValues.refused(
          "--figure",
          "nothing differs between the two ways; give one option twice, such as --figure line"
              + " --figure circle.");
    }
  }

  /**
   * The question about one of the two.
   *
   * @param side 0 for the first, 1 for the second
   */
  TrialQuestion question(TrialQuestion stock, int side, Logbook log) {
    Map<String, String> values = new HashMap<>();
    put(values, "rig", rigs, side);
    put(values, "figure", figures, side);
    put(values, "light", lights, side);
    put(values, "tone", tones, side);
    put(values, "place", places, side);
    put(values, "rest", rests, side);
    put(values, "wetted", wetted, side);
    return new TypedWay(values).of(stock, log);
  }

  private static void put(Map<String, String> values, String word, List<String> given, int side) {
    of(given, side).ifPresent(value -> values.put(word, value.strip()));
  }

  /** Passes of one of the two, if they were said. */
  OptionalInt passes(int side) {
    Optional<String> typed = of(passes, side);
    return typed.isPresent()
        ? OptionalInt.of(TypedValues.count("--passes", "the number of passes", typed.get()))
        : OptionalInt.empty();
  }

  private static Optional<String> of(List<String> given, int side) {
    return given.isEmpty()
        ? Optional.empty()
        : Optional.of(given.get(Math.min(side, given.size() - 1)));
  }
}
