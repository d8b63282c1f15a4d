package charline.cli.setup;

import charline.cli.desk.Desk;
import charline.cli.desk.Sure;
import charline.cli.desk.Typed;
import charline.cli.desk.Work;
import charline.log.Logbook;
import charline.quantity.Invariant;
import charline.quantity.Measure.Quantity;
import charline.trial.Board;
import charline.trial.Plausibility.Knob;
import charline.trial.WoodForm;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code board add}. */
@Command(
    name = "add",
    header = "Set up a board: one piece of wood to burn patches on.",
    description =
        "Boards differ, so patches on three boards or more say much more than the same "
            + "number on one.",
    footer = {
      "",
      "Example:",
      "  charline board add boathouse-1 --wood pine --form solid --moisture 9%% \\",
      "      --job boathouse"
    })
public final class BoardAdd extends Work {
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
      defaultValue = "solid",
      description = "solid, veneer, plywood or mdf. Default: solid.")
  private String form;

  @Option(names = "--condition", paramLabel = "TEXT", description = "In your words.")
  private String condition;

  @Option(
      names = "--moisture",
      paramLabel = "SHARE",
      description = "What the moisture meter shows, in %%.")
  private String moisture;

  @Option(names = "--job", paramLabel = "TEXT", description = "The job that it belongs to.")
  private String job;

  @Option(names = "--by", paramLabel = "WHO", description = "Who sets it up.")
  private String by;

  @Mixin private Sure sure;

  public BoardAdd(Desk desk) {
    super(desk);
  }

  @Override
  public Integer call() {
    OptionalDouble percent = Typed.ifGiven("--moisture", moisture, Quantity.SHARE);
    percent.ifPresent(value -> Invariant.within("Moisture", value, 0, 100, "%"));
    percent.ifPresent(value -> sure.require(Knob.MOISTURE.doubts(value)));
    try (Logbook log = desk.logToWrite()) {
      Board board =
          new Board(
              log.newId(),
              Names.checked("board", name),
              log.wood(wood),
              WoodForm.ofWord(form),
              Optional.ofNullable(condition),
              percent,
              Optional.ofNullable(job));
      log.add(board, desk.person(by));
      desk.out()
          .println(
              "Board %s is set up: %s, %s."
                  .formatted(board.name(), board.wood(), board.form().word()));
    }
    return DONE;
  }
}
