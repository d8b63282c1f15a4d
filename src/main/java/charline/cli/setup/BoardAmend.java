package charline.cli.setup;

import charline.cli.desk.Desk;
import charline.cli.desk.Sure;
import charline.cli.desk.Typed;
import charline.cli.desk.Work;
import charline.log.Filter;
import charline.log.Logbook;
import charline.quantity.Invariant;
import charline.quantity.Measure.Quantity;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Plausibility.Knob;
import charline.trial.WoodForm;
import charline.wording.Figures;
import charline.wording.Table;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code board amend}. */
@Command(
    name = "amend",
    header = "Put right what is recorded of a board; the old values stay in the history.",
    description =
        "What you do not give stays as it is. The patches on the board go with it: with another "
            + "wood they count among those of that wood. Moisture is in %%.",
    footer = {
      "",
      "Examples:",
      "  charline board amend boathouse-1 --wood oak --why \"planed a corner\"",
      "  charline board amend boathouse-1 --name \"door stile\" --why \"labelled anew\""
    })
public final class BoardAmend extends Work {
  @Parameters(paramLabel = "NAME", description = "The board.")
  private String name;

  @Option(names = "--why", paramLabel = "TEXT", required = true, description = "The reason.")
  private String why;

  @Option(names = "--name", paramLabel = "NAME", description = "What it is called from now on.")
  private String newName;

  @Option(names = "--wood", paramLabel = "WOOD", description = "The wood, such as pine or oak.")
  private String wood;

  @Option(names = "--form", paramLabel = "FORM", description = "solid, veneer, plywood or mdf.")
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

  @Option(names = "--by", paramLabel = "WHO", description = "Who puts it right.")
  private String by;

  @Mixin private Sure sure;

  public BoardAmend(Desk desk) {
    super(desk);
  }

  @Override
  public Integer call() {
    if (why.isBlank()) {
      throw Refusal.usage("--why: a record is amended for a reason; say it.");
    }
    OptionalDouble percent = Typed.ifGiven("--moisture", moisture, Quantity.SHARE);
    percent.ifPresent(value -> Invariant.within("Moisture", value, 0, 100, "%"));
    percent.ifPresent(value -> sure.require(Knob.MOISTURE.doubts(value)));
    try (Logbook log = desk.logToRead()) {
      Board old = log.board(name);
      Board amended =
          new Board(
              old.id(),
              newName == null ? old.name() : Names.checked("board", newName),
              wood == null ? old.wood() : log.wood(wood),
              form == null ? old.form() : WoodForm.ofWord(form),
              Optional.ofNullable(condition).or(old::condition),
              percent.isPresent() ? percent : old.moisturePercent(),
              Optional.ofNullable(job).or(old::job));
      if (amended.equals(old)) {
        throw Refusal.usage("Nothing in %s would change; say what to amend.".formatted(old.name()));
      }
      log.amend(amended, desk.person(by), why.strip());
      desk.out().println(Table.paragraph(sentence(amended, patches(log, amended))));
    }
    return DONE;
  }

  private static int patches(Logbook log, Board board) {
    Optional<OffsetDateTime> always = Optional.empty();
    return log.patches(
            new Filter(
                Set.of(),
                Set.of(),
                Set.of(),
                always,
                always,
                Set.of(),
                Set.of(board.name()),
                Set.of(),
                Set.of(),
                Set.of()))
        .size();
  }

  private static String sentence(Board board, int patches) {
    return "Board %s now reads: %s, %s%s%s%s. %s with it."
        .formatted(
            board.name(),
            board.wood(),
            board.form().word(),
            board.condition().map(c -> ", " + c).orElse(""),
            BoardView.moisture(board).map(m -> ", moisture " + m).orElse(""),
            board.job().map(j -> ", job " + j).orElse(""),
            Figures.count(patches, "patch goes", "patches go"));
  }
}
