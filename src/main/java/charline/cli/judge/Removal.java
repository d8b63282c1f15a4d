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
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code removal}. */
@Command(
    name = "removal",
    header = "Show the removal model: how many passes clear the finish.",
    description =
        "Counts first, then the parameters with 90 %% intervals, the dose in J/cm2 that "
            + "clears as often as not, passes to clear, um per pass where the coats are known, "
            + "and net area rates in cm2/min.",
    footer = {
      "",
      "Example:",
      "  charline removal latex pine",
      "  charline removal latex pine --classical firth"
    })
public final class Removal extends Work {
  @Mixin private StratumOptions trials;
  @Mixin private BorrowOption borrowing;
  @Mixin private ClassicalOptions classical;
  @Mixin private JsonReply reply;

  public Removal(Desk desk) {
    super(desk);
  }

  @Override
  public Integer call() {
    boolean asClassical = classical.asked();
    try (Logbook log = desk.logToRead()) {
      StratumOptions.Case judged = trials.choose(log, desk);
      if (asClassical) {
        return classical.answer(judged, Event.CLEARING, reply, desk);
      }
      Fitter fitter = borrowing.fitters(log, trials, Fitter.withDefaults()).apply(judged.trials());
      ModelFit fit = fitter.fit(judged.trials(), Event.CLEARING);
      FitChecks checks = new FitChecker(fitter).check(judged.trials(), fit);
      List<RemovalRates.Rate> rates = RemovalRates.of(judged.trials(), fit);
      reply.print(
          desk.out(),
          () ->
              ModelJson.of(judged, fit, checks)
                  .put("coat", CoatText.json(fit))
                  .put("coat_um", RemovalRates.thickness(judged.trials()))
                  .put("rates", RemovalRates.json(rates))
                  .put("ablation_law", AblationText.json(judged.trials())),
          () ->
              new ModelText(judged, fit, checks).text()
                  + "\n"
                  + RemovalRates.text(rates)
                  + AblationText.of(judged.trials()));
      return checks.fail() ? DATA : DONE;
    }
  }
}
