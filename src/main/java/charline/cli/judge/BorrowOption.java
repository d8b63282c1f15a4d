package charline.cli.judge;

import charline.log.Logbook;
import charline.model.Fitter;
import charline.model.Lending;
import charline.model.Trials;
import java.util.function.Function;
import picocli.CommandLine.Option;

/** Whether trials with few patches borrow from the log's others. */
final class BorrowOption {
  @Option(
      names = "--borrow",
      description =
          "Let the log's other trials under the same light lend what they know, first those of"
              + " the same coating and, for char, of the same wood. Where the trials asked about"
              + " are unlike them, little is borrowed. Default: every stratum for itself.")
  private boolean borrow;

  /** What fits trials: a fitter as it is, or one that borrows from the log's other strata. */
  Function<Trials, Fitter> fitters(Logbook log, StratumOptions trials, Fitter fitter) {
    return borrow ? new Lending(fitter, trials.everyStratum(log))::fitterFor : each -> fitter;
  }
}
