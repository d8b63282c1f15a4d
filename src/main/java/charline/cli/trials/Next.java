package charline.cli.trials;

import charline.answer.Answers;
import charline.answer.NextAnswer;
import charline.answer.PairsAnswer;
import charline.answer.PatchesWanted;
import charline.answer.Precautions;
import charline.answer.TrialQuestion;
import charline.cli.command.LogCommand;
import charline.cli.command.TypedValues;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.log.PlannedPatch;
import charline.paper.BenchList;
import charline.paper.PairBenchList;
import charline.paper.SheetStamp;
import charline.plan.NextPatches;
import charline.plan.Site;
import charline.wording.NextJson;
import charline.wording.NextText;
import charline.wording.PairEntries;
import charline.wording.PairsText;
import charline.wording.PlanEntries;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code next}. */
@Command(
    addMethodSubcommands = false,
    name = "next",
    header = "Choose the patches to burn next.",
    description =
        "Lists settings on the rig's own steps (power in %%, speed in mm/s), in the order to burn"
            + " them, each with its reason and its char risk. Dose and fluence go at most a quarter"
            + " above the highest burned without char. Exit code 1 means that nothing should be"
            + " burned.",
    footer = {
      "",
      "Examples:",
      "  charline next latex pine",
      "  charline next latex pine --count 3 --on piece",
      "  charline next latex pine --to bench-list.html",
      "  charline next latex pine --figure circle --compare figure=line --to pairs.html",
      "  charline next shellac oak --rig Heron --board boathouse-1 --board boathouse-2"
    })
public final class Next extends LogCommand {
  @Option(
      names = "--count",
      paramLabel = "COUNT",
      defaultValue = "6",
      description = "How many patches, 1 to 24. Default: 6.")
  private String count;

  @Option(
      names = "--on",
      paramLabel = "WHERE",
      defaultValue = "offcut",
      description =
          "offcut, or piece: on the client's piece, even the upper bound of each patch's char risk"
              + " keeps the limit. Default: offcut.")
  private String on;

  @Option(
      names = "--spare",
      description =
          "With --piece: no place of the piece may brown, so list control patches at the start"
              + " setting alone.")
  private boolean spare;

  @Option(
      names = "--board",
      paramLabel = "NAME",
      description =
          "A board at hand; may be repeated. Default: boards used so far, unused ones of the wood,"
              + " and new ones up to five; if you name them here, three are enough.")
  private List<String> boards = List.of();

  @Option(
      names = "--to",
      paramLabel = "FILE.html",
      description = "Write a bench list with boxes to tick, and reserve the codes in the log.")
  private Path to;

  @Option(names = "--replace", description = "Overwrite an existing file.")
  private boolean replace;

  @Option(
      names = "--by",
      paramLabel = "WHO",
      description = "Who plans it. Default: $$CHARLINE_BY, else your login name.")
  private String by;

  @Option(
      names = "--compare",
      paramLabel = "WAY",
      description =
          "Another way of working, such as figure=line or rig=otter: list pairs of patches, side by"
              + " side on one board, that tell it apart from the way asked about. --count is the"
              + " number of pairs.")
  private String other;

  @Mixin private QuestionOptions options;
  @Mixin private WorkOptions work;
  @Mixin private JobAreaOption job;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    int wanted = TypedValues.count("--count", "the number of patches", count);
    if (wanted > 24) {
      throw TypedValues.refused("--count", "ask for at most 24 patches, not %d.".formatted(wanted));
    }
    Site site = site();
    if (to != null) {
      PageFile.check(to, replace);
    }
    TrialQuestion question = work.of(options.question(), options, job.squareMetres(), "--job-area");
    try (Logbook log = desk.logToRead()) {
      Answers answers = Answers.of(log, desk.now(), desk.kept());
      TrialQuestion asked = question.about(options.about(log));
      Precautions known = answers.precautions(asked);
      if (known.barred()) {
        return NoBeamReply.print(desk, reply, asked, known);
      }
      PatchesWanted patches =
          new PatchesWanted(wanted, site, boards.stream().map(log::board).distinct().toList());
      if (other != null) {
        return pairs(log, answers.pairs(asked, otherWay().of(asked, log), patches));
      }
      NextAnswer answer = answers.next(asked, patches);
      NextPatches next = answer.next();
      List<String> codes =
          to == null || next.suggestions().isEmpty() ? List.of() : reserved(log, answer);
      reply.print(
          desk.out(), () -> NextJson.of(answer, codes), () -> new NextText(answer, codes).text());
      sayReserved(codes);
      return next.suggestions().isEmpty() ? NO : DONE;
    }
  }

  private TypedWay otherWay() {
    if (options.piece().isPresent()) {
      throw TypedValues.refused(
          "--compare", "ways are compared on offcuts, not on a piece; leave --piece out.");
    }
    return TypedWay.read("--compare", other);
  }

  private int pairs(Logbook log, PairsAnswer answer) {
    boolean none = answer.list().pairs().isEmpty();
    List<String> codes = List.of();
    if (to != null && !none) {
      SheetStamp stamp = PageFile.stamp(desk, by);
      codes =
          reserved(
              log,
              new PairEntries(answer, log::newId, desk.now(), desk.person(by)).all(),
              reserved -> new PairBenchList(answer, reserved, stamp).html());
    }
    PairsText words = new PairsText(answer, codes);
    reply.print(desk.out(), words::json, words::text);
    sayReserved(codes);
    return none ? NO : DONE;
  }

  private List<String> reserved(Logbook log, NextAnswer answer) {
    SheetStamp stamp = PageFile.stamp(desk, by);
    return reserved(
        log,
        new PlanEntries(answer, log::newId, desk.now(), desk.person(by)).all(),
        codes ->
            new BenchList(answer.stratum(), answer.next(), codes, stamp, answer.precautions())
                .html());
  }

  /** Codes and page come together: where the page cannot be written, no code is taken. */
  private List<String> reserved(
      Logbook log, List<PlannedPatch> plans, Function<List<String>, String> page) {
    return log.inTransaction(
        () -> {
          List<String> codes =
              log.planned().reserve(plans).stream().map(PlannedPatch::code).toList();
          PageFile.write(page.apply(codes), to);
          return codes;
        });
  }

  private void sayReserved(List<String> codes) {
    if (!codes.isEmpty() && !reply.json()) {
      desk.out()
          .println(
              "%s written: %s to %s are reserved; record each with `charline patch add --plan CODE`."
                  .formatted(to, codes.get(0), codes.get(codes.size() - 1)));
    }
  }

  private Site site() {
    if (spare) {
      if (options.piece().isEmpty()) {
        throw TypedValues.refused(
            "--spare", "it takes the piece that may not brown; add --piece BOARD.");
      }
      return Site.PIECE;
    }
    return switch (on.strip().toLowerCase(Locale.ROOT)) {
      case "offcut" -> Site.OFFCUT;
      case "piece" -> Site.PIECE;
      default ->
          throw TypedValues.refused(
              "--on", "the place must be offcut or piece, not \"%s\".".formatted(on.strip()));
    };
  }
}
