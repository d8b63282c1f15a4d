package charline.cli.patch;

import charline.cli.command.CommandContext;
import charline.cli.command.TypedValues;
import charline.quantity.Measure.Quantity;
import charline.refusal.Refusal;
import charline.trial.Outcome;
import charline.trial.Reading;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.UUID;
import picocli.CommandLine.Option;

/** Options for a reading. */
final class ReadingOptions {
  private static final String MISSING_OUTCOME =
      "The outcome is missing: give --outcome clean, or tint, char and residue joined by +.";
  private static final String MISSING_PASSES =
      "The number of passes is missing: give --passes, counting all passes made so far.";

  @Option(
      names = "--passes",
      paramLabel = "COUNT",
      description = "Passes made on the patch so far, 1 or more.")
  private String passes;

  @Option(
      names = "--outcome",
      paramLabel = "MARKS",
      description =
          "Outcome after cooling and wiping: clean, or tint, char and residue joined by +.")
  private String outcome;

  @Option(
      names = "--soot",
      paramLabel = "yes|no",
      description = "Whether soot was wiped off. Soot that wipes off is not char.")
  private String soot;

  @Option(names = "--depth", paramLabel = "DEPTH", description = "Depth removed so far, in um.")
  private String depth;

  /**
   * Asks for what is missing.
   *
   * @param offeredPasses offered for an empty answer
   */
  void ask(CommandContext desk, Optional<Integer> offeredPasses) {
    askPasses(desk, offeredPasses);
    outcome =
        desk.need(
            outcome,
            MISSING_OUTCOME,
            "Outcome (clean, tint, char, residue)",
            Optional.empty(),
            Outcome::parse);
  }

  private void askPasses(CommandContext desk, Optional<Integer> offered) {
    passes =
        desk.need(
            passes,
            MISSING_PASSES,
            "Passes so far",
            offered.map(String::valueOf),
            text -> TypedValues.count("--passes", "passes", text));
  }

  /** Takes this many passes where the command line gives none. */
  void usePasses(int count) {
    if (passes == null) {
      passes = String.valueOf(count);
    }
  }

  boolean nothingGiven() {
    return passes == null && outcome == null && soot == null && depth == null;
  }

  /** The reading that the options describe. */
  Reading reading(UUID id, OffsetDateTime at, String by, Optional<String> note) {
    if (passes == null || outcome == null) {
      throw Refusal.usage(passes == null ? MISSING_PASSES : MISSING_OUTCOME);
    }
    return new Reading(
        id,
        TypedValues.count("--passes", "passes", passes),
        Outcome.parse(outcome),
        Optional.ofNullable(soot).map(text -> TypedValues.yes("--soot", text)),
        TypedValues.ifGiven("--depth", depth, Quantity.THICKNESS),
        at,
        Optional.of(by),
        note);
  }

  /**
   * A reading with whatever the options say put in its place.
   *
   * @param at when it was judged
   * @param by who judged it
   */
  Reading amended(Reading old, OffsetDateTime at, Optional<String> by, Optional<String> note) {
    return new Reading(
        old.id(),
        passes == null ? old.passes() : TypedValues.count("--passes", "passes", passes),
        outcome == null ? old.outcome() : Outcome.parse(outcome),
        soot == null ? old.soot() : Optional.of(TypedValues.yes("--soot", soot)),
        depth == null
            ? old.depthMicrometres()
            : TypedValues.ifGiven("--depth", depth, Quantity.THICKNESS),
        at,
        by,
        note.or(old::note));
  }
}
