package charline.cli.word;

import charline.cli.command.LogCommand;
import charline.cli.render.ListReply;
import charline.log.Logbook;
import charline.log.OwnWords;
import charline.trial.FamilyFacts;
import charline.wording.Json;
import java.util.List;
import java.util.Map;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code family list}. */
@Command(
    addMethodSubcommands = false,
    name = "list",
    header = "List the coating families that this log knows, with their cautions.",
    description =
        "The usual film is dry, in um and mil. Cautions are those of the family alone; others apply"
            + " to every beam, and to the wood.",
    footer = {"", "Examples:", "  charline family list", "  charline family list --own --json"})
public final class FamilyList extends LogCommand {
  @Option(names = "--own", description = "Only families that somebody added.")
  private boolean own;

  @Mixin private ListReply reply;

  @Override
  public Integer call() {
    reply.check();
    try (Logbook log = desk.logToRead()) {
      List<FamilyFacts> families =
          log.reference().families().stream().filter(f -> !own || f.like().isPresent()).toList();
      Map<String, String> people = log.ownWords().people(OwnWords.Sort.FAMILY);
      List<Json> rows =
          families.stream()
              .map(f -> FamilyView.json(log, f, reply.csv(), people.get(f.name())))
              .toList();
      reply.print(desk.out(), () -> rows, () -> FamilyView.table(log, families));
      return families.isEmpty() ? NO : DONE;
    }
  }
}
