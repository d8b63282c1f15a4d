package charline.cli.word;

import charline.cli.command.LogCommand;
import charline.cli.render.ChangesView;
import charline.cli.render.JsonReply;
import charline.log.Change;
import charline.log.Logbook;
import charline.log.OwnWords;
import charline.trial.WoodFacts;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code wood show}. */
@Command(
    name = "show",
    header = "Show what is known of a wood, with its source.",
    description =
        "Specific gravity is oven-dry mass over volume at 12 %% moisture, no unit. A wood that"
            + " somebody added comes with its changes.",
    footer = {"", "Example:", "  charline wood show \"european oak\""})
public final class WoodShow extends LogCommand {
  @Parameters(paramLabel = "WOOD", arity = "1..*", description = "The wood, by any of its names.")
  private List<String> words;

  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    try (Logbook log = desk.logToRead()) {
      WoodFacts wood = WoodView.of(log, log.reference().wood(String.join(" ", words)));
      Optional<OwnWords.Added> added = log.ownWords().find(OwnWords.Sort.WOOD, wood.name());
      List<Change> changes = added.map(a -> log.ownWords().history(a.word())).orElse(List.of());
      reply.print(
          desk.out(),
          () ->
              WoodView.json(wood, false, added.flatMap(OwnWords.Added::by).orElse(null))
                  .put("changes", ChangesView.json(changes)),
          () -> WoodView.text(wood) + ChangesView.text(changes));
    }
    return DONE;
  }
}
