package charline.cli.word;

import charline.cli.render.ShowCommand;
import charline.log.Logbook;
import charline.log.OwnWords;
import charline.trial.FamilyFacts;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code family show}. */
@Command(
    addMethodSubcommands = false,
    name = "show",
    header = "Show what is known of a coating family, with its cautions and source.",
    description =
        "Other names, the usual film in um and mil, how to know it, how it behaves, and its"
            + " cautions in full.",
    footer = {"", "Example:", "  charline family show \"bed liner\""})
public final class FamilyShow extends ShowCommand {
  @Parameters(
      paramLabel = "FAMILY",
      arity = "1..*",
      description = "The family, by any of its names.")
  private List<String> words;

  @Override
  protected Shown shown(Logbook log) {
    FamilyFacts family = log.reference().familyFacts(String.join(" ", words));
    Optional<OwnWords.Added> added = log.ownWords().find(OwnWords.Sort.FAMILY, family.name());
    return new Shown(
        () -> FamilyView.json(log, family, false, added.flatMap(OwnWords.Added::by).orElse(null)),
        () -> FamilyView.text(log, family),
        added.map(a -> log.ownWords().history(a.word())).orElse(List.of()));
  }
}
