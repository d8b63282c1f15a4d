package charline.cli.log;

import charline.cli.command.LogCommand;
import charline.cli.render.JsonReply;
import charline.log.Finding;
import charline.log.Logbook;
import charline.quantity.Figures;
import charline.wording.Json;
import charline.wording.Table;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code check}. */
@Command(
    addMethodSubcommands = false,
    name = "check",
    header = "Check the log for damage and likely typos.",
    description =
        "Reads the whole file: pages, indexes, rules, references, schema versions and photos. Then"
            + " lists values that may be mistyped, such as a hand speed of 3000 mm/s. It changes"
            + " nothing. Exit codes: 0 no damage, 1 no damage but doubtful values, 3 damage.",
    footer = {"", "Example:", "  charline check"})
public final class Check extends LogCommand {
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    try (Logbook log = desk.logToCheck()) {
      List<Finding> findings = log.check(desk.progress());
      boolean broken = findings.stream().anyMatch(f -> f.kind() == Finding.Kind.FAULT);
      reply.print(
          desk.out(),
          () ->
              new Json()
                  .put("log", log.file().toString())
                  .put("sound", !broken)
                  .put("findings", findings.stream().map(Check::json).toList()),
          () -> text(log, findings, broken));
      return broken ? DATA : findings.isEmpty() ? DONE : NO;
    }
  }

  private static Json json(Finding finding) {
    return new Json()
        .put("kind", finding.kind().name().toLowerCase(Locale.ROOT))
        .put("text", finding.text());
  }

  private static String text(Logbook log, List<Finding> findings, boolean broken) {
    StringBuilder text = new StringBuilder();
    for (Finding finding : findings) {
      text.append(Table.paragraph(finding.text())).append('\n');
    }
    return text.append(Table.paragraph(verdict(log, findings.size(), broken)))
        .append('\n')
        .toString();
  }

  private static String verdict(Logbook log, int findings, boolean broken) {
    if (broken) {
      return "%s is damaged. Make a copy of it, then go back to the latest backup; `charline export` may still save its patches."
          .formatted(log.file());
    }
    String doubts =
        findings == 0
            ? "nothing looks mistyped"
            : Figures.count(findings, "value looks", "values look") + " mistyped";
    return "%s is undamaged: %s; %s.".formatted(log.file(), LogContents.of(log).words(), doubts);
  }
}
