package charline.cli.board;

import charline.cli.command.LogCommand;
import charline.cli.render.AmendOptions;
import charline.cli.render.AmendOptions.Amended;
import charline.log.Filter;
import charline.log.Logbook;
import charline.quantity.Figures;
import charline.record.Setup;
import charline.trial.Board;
import charline.trial.WoodForm;
import java.util.OptionalDouble;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code board amend}. */
@Command(
    addMethodSubcommands = false,
    name = "amend",
    header = "Correct the record of a board; the old values stay in the history.",
    description =
        "Values that you do not give stay unchanged. The patches on the board follow it: with"
            + " another wood, they count for that wood. The old name keeps finding it. Moisture is"
            + " in %%.",
    footer = {
      "",
      "Examples:",
      "  charline board amend boathouse-1 --wood oak --why \"planed a corner\"",
      "  charline board amend boathouse-1 --name \"door stile\" --why \"labelled anew\""
    })
public final class BoardAmend extends LogCommand {
  @Parameters(paramLabel = "NAME", description = "The board.")
  private String name;

  @Option(names = "--name", paramLabel = "NAME", description = "Its new name.")
  private String newName;

  @Option(names = "--wood", paramLabel = "WOOD", description = "The wood, such as pine or oak.")
  private String wood;

  @Option(names = "--form", paramLabel = "FORM", description = "solid, veneer, plywood or mdf.")
  private String form;

  @Mixin private BoardOptions more;

  @Option(names = "--bring-back", description = "Let a void board and its patches count again.")
  private boolean bringBack;

  @Mixin private AmendOptions options;

  @Override
  public Integer call() {
    return options.amend(desk, this::amended);
  }

  private Amended amended(Logbook log, Setup setup, String reason) {
    OptionalDouble percent = more.moisturePercent();
    Board old = log.board(name);
    Board amended =
        new Board(
            old.id(),
            newName == null ? old.name() : newName.strip(),
            wood == null ? old.wood() : log.reference().wood(wood),
            form == null ? old.form() : WoodForm.ofWord(form),
            more.condition().or(old::condition),
            percent.isPresent() ? percent : old.moisturePercent(),
            more.job().or(old::job));
    if (bringBack) {
      setup.bringBack(old, reason);
    }
    if (!bringBack || !amended.equals(old)) {
      setup.amend(old, amended, reason);
    }
    return new Amended(
        () -> BoardView.json(amended).put("void", log.voided(amended)),
        sentence(amended, log.patches(Filter.onBoard(amended.name())).size()));
  }

  private static String sentence(Board board, int patches) {
    return "Board %s now reads: %s, %s%s%s%s. %s affected."
        .formatted(
            board.name(),
            board.wood(),
            board.form().word(),
            board.condition().map(c -> ", " + c).orElse(""),
            BoardView.moisture(board).map(m -> ", moisture " + m).orElse(""),
            board.job().map(j -> ", job " + j).orElse(""),
            Figures.count(patches, "patch is", "patches are"));
  }
}
