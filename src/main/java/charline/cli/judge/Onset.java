package charline.cli.judge;

import charline.cli.desk.Desk;
import charline.cli.desk.Work;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.model.Event;
import charline.model.Fitter;
import charline.model.ModelFit;
import charline.model.check.FitChecker;
import charline.model.check.FitChecks;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code onset}. */
@Command(
    name = "onset",
    header = "Show the burn-onset model: how much dose chars the wood.",
    description =
        "Counts first, then the parameters with 90 %% intervals, the dose in J/cm2 that "
            + "chars as often as not, and checks of the fit.",
    footer = {
      "",
      "Example:",
      "  charline onset latex pine",
      "  charline onset latex pine --classical firth"
    })
public final class Onset extends Work {
  @Mixin private StratumOptions trials;
  @Mixin private BorrowOption borrowing;
  @Mixin private ClassicalOptions classical;
  @Mixin private JsonReply reply;

  public Onset(Desk desk) {
    super(desk);
  }

  @Override
  public Integer call() {
    boolean asClassical = classical.asked();
    try (Logbook log = desk.logToRead()) {
      StratumOptions.Case judged = trials.choose(log, desk);
      if (asClassical) {
        return classical.answer(judged, Event.CHAR, reply, desk);
      }
      Fitter fitter = borrowing.fitters(log, trials, Fitter.withDefaults()).apply(judged.trials());
      ModelFit fit = fitter.fit(judged.trials(), Event.CHAR);
      FitChecks checks = new FitChecker(fitter).check(judged.trials(), fit);
      reply.print(
          desk.out(),
          () -> ModelJson.of(judged, fit, checks),
          () -> new ModelText(judged, fit, checks).text());
      return checks.fail() ? DATA : DONE;
    }
  }
}
