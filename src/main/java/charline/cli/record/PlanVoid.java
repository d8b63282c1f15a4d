package charline.cli.record;

import charline.cli.desk.Desk;
import charline.cli.desk.Work;
import charline.log.Logbook;
import charline.log.PlannedPatch;
import charline.refusal.Refusal;
import charline.wording.Table;
import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code plan void}. */
@Command(
    name = "void",
    header = "Give up patches that are planned and will not be burned.",
    description =
        "They stay in the log with the reason, and their codes stay taken: they may stand on a "
            + "list or on tape already.",
    footer = {
      "",
      "Examples:",
      "  charline plan void P-0051 --why \"the offcut is used up\"",
      "  charline plan void 51 52 53 --why \"window stands at 60 %%\""
    })
public final class PlanVoid extends Work {
  @Parameters(
      arity = "1..*",
      paramLabel = "CODE",
      description = "The planned patches: P-0051 or 51. All of them are given up, or none.")
  private List<String> codes;

  @Option(names = "--why", paramLabel = "TEXT", required = true, description = "The reason.")
  private String why;

  @Option(
      names = "--by",
      paramLabel = "WHO",
      description = "Who gives them up. Default: $$CHARLINE_BY, else your login name.")
  private String by;

  public PlanVoid(Desk desk) {
    super(desk);
  }

  @Override
  public Integer call() {
    if (why.isBlank()) {
      throw Refusal.usage("--why: a plan is given up for a reason; say it.");
    }
    try (Logbook log = desk.logToRead()) {
      List<PlannedPatch> given = log.voidPlans(codes, desk.person(by), why.strip());
      desk.out().println(Table.paragraph(sentence(given)));
    }
    return DONE;
  }

  private String sentence(List<PlannedPatch> given) {
    String all = given.stream().map(PlannedPatch::code).collect(Collectors.joining(", "));
    return given.size() == 1
        ? "%s is given up: %s. Its code stays taken; strike it out on the list and off the tape."
            .formatted(all, why.strip())
        : "%s are given up: %s. Their codes stay taken; strike them out on the list and off the tape."
            .formatted(all, why.strip());
  }
}
