package charline.cli.word;

import charline.cli.command.LogCommand;
import charline.cli.render.ListReply;
import charline.log.Logbook;
import charline.log.OwnWords;
import charline.trial.WoodFacts;
import charline.wording.Json;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code wood list}. */
@Command(
    addMethodSubcommands = false,
    name = "list",
    header = "List the woods that this log knows, with their other names.",
    description =
        "SG is the specific gravity: oven-dry mass over volume at 12 %% moisture, no unit; it is"
            + " left out where no published number was read. A generic wood lists its species.",
    footer = {
      "",
      "Examples:",
      "  charline wood list oak",
      "  charline wood list --own",
      "  charline wood list --csv"
    })
public final class WoodList extends LogCommand {
  @Parameters(
      paramLabel = "WOOD",
      arity = "0..*",
      description = "A generic wood, such as oak. Default: all.")
  private List<String> words = List.of();

  @Option(names = "--own", description = "Only woods that somebody added.")
  private boolean own;

  @Mixin private ListReply reply;

  @Override
  public Integer call() {
    reply.check();
    try (Logbook log = desk.logToRead()) {
      Optional<Set<String>> wanted =
          words.isEmpty()
              ? Optional.empty()
              : Optional.of(log.reference().kindsOf(log.reference().wood(String.join(" ", words))));
      List<WoodFacts> woods =
          log.reference().woods().stream()
              .filter(w -> wanted.isEmpty() || wanted.get().contains(w.name()))
              .filter(w -> !own || w.like().isPresent())
              .toList();
      Map<String, String> people = log.ownWords().people(OwnWords.Sort.WOOD);
      List<Json> rows =
          woods.stream().map(w -> WoodView.json(w, reply.csv(), people.get(w.name()))).toList();
      reply.print(desk.out(), () -> rows, () -> WoodView.table(woods));
      return woods.isEmpty() ? NO : DONE;
    }
  }
}
