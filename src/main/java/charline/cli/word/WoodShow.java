package charline.cli.word;

import charline.cli.render.ShowCommand;
import charline.log.Logbook;
import charline.log.OwnWords;
import charline.trial.WoodFacts;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code wood show}. */
@Command(
    addMethodSubcommands = false,
    name = "show",
    header = "Show what is known of a wood, with its source.",
    description =
        "Specific gravity is oven-dry mass over volume at 12 %% moisture, no unit. A wood that"
            + " somebody added comes with its changes.",
    footer = {"", "Example:", "  charline wood show \"european oak\""})
public final class WoodShow extends ShowCommand {
  @Parameters(paramLabel = "WOOD", arity = "1..*", description = "The wood, by any of its names.")
  private List<String> words;

  @Override
  protected Shown shown(Logbook log) {
    WoodFacts wood = log.reference().woodFacts(String.join(" ", words));
    Optional<OwnWords.Added> added = log.ownWords().find(OwnWords.Sort.WOOD, wood.name());
    return new Shown(
        () -> WoodView.json(wood, false, added.flatMap(OwnWords.Added::by).orElse(null)),
        () -> WoodView.text(wood),
        added.map(a -> log.ownWords().history(a.word())).orElse(List.of()));
  }
}
