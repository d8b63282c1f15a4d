package charline.cli.judge;

import charline.cli.desk.Desk;
import charline.cli.desk.Typed;
import charline.cli.desk.Work;
import charline.cli.render.Json;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.model.Fitter;
import charline.model.Trials;
import charline.quantity.Invariant;
import charline.quantity.Measure.Quantity;
import charline.refusal.Refusal;
import charline.trial.Caution;
import charline.window.Asked;
import charline.window.JobRisk;
import charline.window.Recommendation;
import charline.window.Verdict;
import charline.window.WindowFinder;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code window}. */
@Command(
    name = "window",
    header = "Find the settings that clear the finish and leave the wood unburned.",
    description =
        "Gives the start setting and the ranges of power (%%), speed (mm/s) and passes that "
            + "keep your limits on a board not seen yet, or says plainly that there are none. "
            + "Only what was tried is offered. Exit code 1 means: no window.",
    footer = {
      "",
      "Examples:",
      "  charline window latex pine",
      "  charline window latex pine --risk 2%% --confidence 95%% --job-area 4.5m2",
      "  charline window latex pine --prior boathouse.prior",
      "  charline window latex larch --borrow --tone dark",
      "  charline window shellac any --rig Heron --at spot=0.6mm,rep=40kHz,width=60mm",
      "  charline window --all --json"
    })
public final class Window extends Work {
  @Option(names = "--all", description = "Every coating, wood and kind of light in the log.")
  private boolean all;

  @Mixin private AskedOptions limits;
  @Mixin private StratumOptions trials;
  @Mixin private BorrowOption borrowing;

  @Option(
      names = "--job-area",
      paramLabel = "AREA",
      description = "Area of a job, in m2: adds the char risk over all of it.")
  private String jobArea;

  @Option(
      names = "--prior",
      paramLabel = "FILE",
      description =
          "What to take for likely before any patch, in place of the usual. "
              + "`charline prior` prints such a file.")
  private Path priorFile;

  @Mixin private JsonReply reply;

  public Window(Desk desk) {
    super(desk);
  }

  @Override
  public Integer call() {
    Asked asked = limits.asked(trials.acceptTint());
    OptionalDouble area = Typed.ifGiven("--job-area", jobArea, Quantity.SURFACE);
    area.ifPresent(m2 -> Invariant.positive("Area of the job", m2, "m2"));
    if (all ? !trials.nothingNamed() : !trials.named()) {
      throw Refusal.usage(
          "Name a coating family and a wood, such as `charline window latex pine`, or give --all.");
    }
    try (Logbook log = desk.logToRead()) {
      return all ? overAll(log, asked, area) : one(log, asked, area);
    }
  }

  private int one(Logbook log, Asked asked, OptionalDouble area) {
    StratumOptions.Case chosen = trials.choose(log, desk);
    WindowFinder finder = finder(log).apply(chosen.trials());
    Recommendation found = finder.recommend(chosen.trials(), chosen.bench(), asked);
    PriorWords priors =
        new PriorWords(
            Optional.ofNullable(priorFile),
            found,
            finder.halfAsSure().recommend(chosen.trials(), chosen.bench(), asked));
    List<Caution> cautions = Cautions.of(log, found);
    Optional<String> offer = borrowing.offer(log, trials, chosen.trials());
    ValidityWords validity = ValidityWords.of(chosen);
    reply.print(
        desk.out(),
        () -> validity.json(WindowJson.of(found, job(found, area))).put("prior", priors.json()),
        () ->
            validity.text()
                + new WindowText(found, job(found, area), offer, priors, cautions).text());
    return found.verdict() == Verdict.WINDOW ? DONE : NO;
  }

  private int overAll(Logbook log, Asked asked, OptionalDouble area) {
    Function<Trials, WindowFinder> finder = finder(log);
    List<WindowList.Line> lines =
        trials.all(log, desk).parallelStream()
            .map(
                each ->
                    new WindowList.Line(
                        finder.apply(each.trials()).recommend(each.trials(), each.bench(), asked),
                        ValidityWords.of(each)))
            .toList();
    if (reply.json()) {
      List<Json> objects =
          lines.stream()
              .map(
                  each ->
                      each.validity().json(WindowJson.of(each.found(), job(each.found(), area))))
              .toList();
      desk.out().println(Json.text(objects));
    } else {
      desk.out().print(WindowList.text(lines));
    }
    return lines.stream().anyMatch(each -> each.found().verdict() == Verdict.WINDOW) ? DONE : NO;
  }

  /** What judges trials: with the priors of a file, and borrowing from other strata, as asked. */
  private Function<Trials, WindowFinder> finder(Logbook log) {
    Fitter fitter = Fitter.withDefaults();
    if (priorFile != null) {
      PriorFile priors = PriorFile.read(priorFile);
      fitter = fitter.with(priors.charring(), priors.clearing());
    }
    return borrowing.fitters(log, trials, fitter).andThen(WindowFinder::new);
  }

  private static Optional<JobRisk> job(Recommendation found, OptionalDouble area) {
    return area.isPresent() ? JobRisk.of(found, area.getAsDouble()) : Optional.empty();
  }
}
