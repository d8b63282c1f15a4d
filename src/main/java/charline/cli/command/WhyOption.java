package charline.cli.command;

import charline.refusal.Refusal;
import java.util.function.BooleanSupplier;
import picocli.CommandLine.Option;

/** The reason for a change to a record, and who makes it. */
public final class WhyOption {
  @Option(
      names = "--why",
      paramLabel = "TEXT",
      description =
          "The reason. Needed where something is void from then on; for what was recorded in the"
              + " last ten minutes, slip is written down.")
  private String why;

  @Option(
      names = "--by",
      paramLabel = "WHO",
      description = "Who changes it. Default: $$CHARLINE_BY, else your login name.")
  private String by;

  /** The reason, trimmed; null if none was given. */
  public String reasonIfAny() {
    return why == null ? null : reason("a record is amended");
  }

  /**
   * The reason, trimmed, where there must be one.
   *
   * @param change what needs one, such as "a record is amended"
   */
  public String reason(String change) {
    if (why == null || why.isBlank()) {
      throw Refusal.usage("--why: %s only with a reason; give one.".formatted(change));
    }
    return why.strip();
  }

  /**
   * The reason, which may be left out where all of it was recorded only minutes ago.
   *
   * @param change what needs one otherwise
   * @param fresh whether it was; asked where no reason is given
   */
  public String reason(String change, BooleanSupplier fresh) {
    return why == null && fresh.getAsBoolean() ? "slip" : reason(change);
  }

  /** Who changes it. */
  public String person(CommandContext desk) {
    return desk.person(by);
  }
}
