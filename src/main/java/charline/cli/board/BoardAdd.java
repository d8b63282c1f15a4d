package charline.cli.board;

import charline.cli.command.LogCommand;
import charline.cli.command.SureOption;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.record.Setup;
import charline.trial.Board;
import charline.trial.WoodForm;
import charline.wording.PrecautionText;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code board add}. */
@Command(
    addMethodSubcommands = false,
    name = "add",
    header = "Set up a board: one piece of wood to burn patches on.",
    description =
        "Boards differ, so patches on three or more boards tell you much more than the same number"
            + " on one.",
    footer = {
      "",
      "Example:",
      "  charline board add boathouse-1 --wood pine --form solid --moisture 9%% \\",
      "      --job boathouse"
    })
public final class BoardAdd extends LogCommand {
  @Parameters(paramLabel = "NAME", description = "Your name for the board.")
  private String name;

  @Option(
      names = "--wood",
      paramLabel = "WOOD",
      required = true,
      description = "The wood, such as pine or oak.")
  private String wood;

  @Option(
      names = "--form",
      paramLabel = "FORM",
      description = "solid, veneer, plywood or mdf. Default: what the wood is, as mdf; else solid.")
  private String form;

  @Mixin private BoardOptions more;

  @Option(names = "--by", paramLabel = "WHO", description = "Who sets it up.")
  private String by;

  @Mixin private SureOption sure;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    try (Logbook log = desk.logToWrite()) {
      String known = log.reference().wood(wood);
      Board board =
          new Board(
              log.newId(),
              name.strip(),
              known,
              form == null ? log.reference().usualForm(known) : WoodForm.ofWord(form),
              more.condition(),
              more.moisturePercent(),
              more.job());
      new Setup(log, sure, desk.person(by)).add(board);
      // Poison in the wood itself; what it does under the beam comes with every answer.
      List<String> cautions =
          log.reference().cautions(board).stream()
              .filter(caution -> caution.inShort().isPresent())
              .map(PrecautionText::inBrief)
              .toList();
      reply.say(
          desk.out(),
          () -> BoardView.json(board).put("cautions", cautions),
          "Board %s is set up: %s, %s.".formatted(board.name(), board.wood(), board.form().word()));
      if (!reply.json()) {
        cautions.forEach(this::say);
      }
    }
    return DONE;
  }
}
