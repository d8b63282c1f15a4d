package charline.cli.word;

import charline.cli.command.LogCommand;
import charline.cli.render.ChangesView;
import charline.cli.render.JsonReply;
import charline.log.Change;
import charline.log.Logbook;
import charline.log.OwnWords;
import charline.trial.FamilyFacts;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code family show}. */
@Command(
    name = "show",
    header = "Show what is known of a coating family, with its cautions and source.",
    description =
        "Other names, the usual film in um and mil, how to know it, how it behaves, and its"
            + " cautions in full.",
    footer = {"", "Example:", "  charline family show \"bed liner\""})
public final class FamilyShow extends LogCommand {
  @Parameters(
      paramLabel = "FAMILY",
      arity = "1..*",
      description = "The family, by any of its names.")
  private List<String> words;

  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    try (Logbook log = desk.logToRead()) {
      String name = log.reference().family(String.join(" ", words));
      FamilyFacts family =
          log.reference().families().stream()
              .filter(f -> f.name().equals(name))
              .findAny()
              .orElseThrow();
      Optional<OwnWords.Added> added = log.ownWords().find(OwnWords.Sort.FAMILY, name);
      List<Change> changes = added.map(a -> log.ownWords().history(a.word())).orElse(List.of());
      reply.print(
          desk.out(),
          () ->
              FamilyView.json(log, family, false, added.flatMap(OwnWords.Added::by).orElse(null))
                  .put("changes", ChangesView.json(changes)),
          () -> FamilyView.text(log, family) + ChangesView.text(changes));
    }
    return DONE;
  }
}
