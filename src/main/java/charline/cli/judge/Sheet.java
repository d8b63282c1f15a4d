package charline.cli.judge;

import charline.cli.desk.Desk;
import charline.cli.desk.Release;
import charline.cli.desk.Typed;
import charline.cli.desk.Work;
import charline.log.Logbook;
import charline.model.Fitter;
import charline.paper.Paper;
import charline.paper.SheetStamp;
import charline.paper.WindowSheet;
import charline.quantity.Invariant;
import charline.quantity.Measure.Quantity;
import charline.trial.Caution;
import charline.window.Asked;
import charline.window.JobRisk;
import charline.window.Recommendation;
import charline.window.WindowFinder;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code sheet}. */
@Command(
    name = "sheet",
    header = "Write the one-page window sheet for the bench and the client's file.",
    description =
        "An HTML page that loads nothing and prints on one page: start setting, ranges of "
            + "power (%%) and speed (mm/s), map, evidence and cautions. A verdict without a window "
            + "gets a sheet too.",
    footer = {"", "Example:", "  charline sheet latex pine --to latex-pine.html --job-area 4.5m2"})
public final class Sheet extends Work {
  @Option(names = "--to", paramLabel = "FILE.html", required = true, description = "File to write.")
  private Path to;

  @Option(names = "--replace", description = "Write over a file that is there already.")
  private boolean replace;

  @Option(
      names = "--paper",
      paramLabel = "SIZE",
      defaultValue = "any",
      description = "a4, letter, or any. Default: any, whatever the printer holds.")
  private String paper;

  @Mixin private AskedOptions limits;
  @Mixin private StratumOptions trials;
  @Mixin private BorrowOption borrowing;

  @Option(
      names = "--job-area",
      paramLabel = "AREA",
      description = "Area of a job, in m2: adds the char risk over all of it.")
  private String jobArea;

  @Option(
      names = "--by",
      paramLabel = "WHO",
      description = "Who prints it. Default: $$CHARLINE_BY, else your login name.")
  private String by;

  public Sheet(Desk desk) {
    super(desk);
  }

  @Override
  public Integer call() {
    Paper size = paper();
    PageFile.check(to, replace);
    Asked asked = limits.asked(trials.acceptTint());
    OptionalDouble area = Typed.ifGiven("--job-area", jobArea, Quantity.SURFACE);
    area.ifPresent(m2 -> Invariant.positive("Area of the job", m2, "m2"));
    try (Logbook log = desk.logToRead()) {
      StratumOptions.Case chosen = trials.choose(log, desk);
      Recommendation found =
          new WindowFinder(
                  borrowing.fitters(log, trials, Fitter.withDefaults()).apply(chosen.trials()))
              .recommend(chosen.trials(), chosen.bench(), asked);
      Optional<JobRisk> job =
          area.isPresent() ? JobRisk.of(found, area.getAsDouble()) : Optional.empty();
      List<Caution> cautions = new ArrayList<>(ValidityWords.of(chosen).caution());
      cautions.addAll(Cautions.of(log, found));
      SheetStamp stamp =
          new SheetStamp(
              String.valueOf(desk.logFile().getFileName()),
              Release.version(),
              desk.now(),
              Optional.of(desk.person(by)));
      PageFile.write(new WindowSheet(found, cautions, stamp, job).html(size), to);
      desk.out()
          .println(
              "%s written: %s, verdict %s."
                  .formatted(to, found.stratum().words(), found.verdict().word()));
    }
    return DONE;
  }

  private Paper paper() {
    return switch (paper.strip().toLowerCase(Locale.ROOT)) {
      case "any" -> Paper.ANY;
      case "a4" -> Paper.A4;
      case "letter" -> Paper.LETTER;
      default ->
          throw Typed.refused(
              "--paper", "the size must be a4, letter or any, not \"%s\".".formatted(paper));
    };
  }
}
