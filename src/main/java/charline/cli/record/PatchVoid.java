package charline.cli.record;

import charline.cli.desk.Desk;
import charline.cli.desk.Work;
import charline.log.Logbook;
import charline.refusal.Refusal;
import charline.wording.Table;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code patch void}. */
@Command(
    name = "void",
    header = "Take patches out of every analysis.",
    description =
        "They stay in the log with the reason; nothing is ever deleted, and `charline patch amend` "
            + "can let one count again.",
    footer = {
      "",
      "Examples:",
      "  charline patch void P-0042 --why \"fired 30 mm/s on the wrong board\"",
      "  charline patch void 42 43 44 --why \"burned through a dirty window\""
    })
public final class PatchVoid extends Work {
  @Parameters(
      arity = "1..*",
      paramLabel = "CODE",
      description = "The patches: P-0042, 42 or last. All of them are void, or none.")
  private List<String> codes;

  @Option(names = "--why", paramLabel = "TEXT", required = true, description = "The reason.")
  private String why;

  @Option(
      names = "--by",
      paramLabel = "WHO",
      description = "Who takes them out. Default: $$CHARLINE_BY, else your login name.")
  private String by;

  public PatchVoid(Desk desk) {
    super(desk);
  }

  @Override
  public Integer call() {
    if (why.isBlank()) {
      throw Refusal.usage("--why: a patch is void for a reason; say it.");
    }
    try (Logbook log = desk.logToRead()) {
      List<String> voided =
          log.inTransaction(
              () -> {
                List<String> named =
                    codes.stream()
                        .map(c -> Codes.recorded(log, c).patch().code())
                        .distinct()
                        .toList();
                named.forEach(code -> log.voidPatch(code, desk.person(by), why.strip()));
                return named;
              });
      desk.out().println(Table.paragraph(sentence(voided)));
    }
    return DONE;
  }

  private String sentence(List<String> voided) {
    String all = String.join(", ", voided);
    return voided.size() == 1
        ? "%s is void: %s. It counts in no analysis and stays in the log."
            .formatted(all, why.strip())
        : "%s are void: %s. They count in no analysis and stay in the log."
            .formatted(all, why.strip());
  }
}
