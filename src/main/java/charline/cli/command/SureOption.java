package charline.cli.command;

import charline.record.Assurance;
import charline.refusal.Refusal;
import charline.trial.Plausibility.Doubt;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import picocli.CommandLine.Option;

/** Confirms that an unlikely value is meant. */
public final class SureOption implements Assurance {
  /** What to do to insist. */
  public static final String HINT = "add --sure";

  @Option(names = "--sure", description = "Record it even if a value looks mistyped.")
  private boolean sure;

  public boolean given() {
    return sure;
  }

  /** What to do to insist; empty if the person does. */
  public Optional<String> hint() {
    return sure ? Optional.empty() : Optional.of(HINT);
  }

  @Override
  public void require(List<Doubt> doubts) {
    if (!sure && !doubts.isEmpty()) {
      throw Refusal.usage(
          doubts.stream().map(d -> d.sentence(HINT)).collect(Collectors.joining(" ")));
    }
  }
}
