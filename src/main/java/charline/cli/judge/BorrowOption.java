package charline.cli.judge;

import charline.log.Logbook;
import charline.model.Fitter;
import charline.model.Lending;
import charline.model.Trials;
import charline.quantity.Figures;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import picocli.CommandLine.Option;

/** Whether trials with few patches borrow from the log's others. */
final class BorrowOption {
  /** With as many patches as this, borrowing hardly moves an answer (reports/pooling.md). */
  private static final int ENOUGH_OF_ITS_OWN = 18;

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

  /** Says that others could lend, where few patches were taken alone. */
  Optional<String> offer(Logbook log, StratumOptions trials, Trials own) {
    if (borrow || own.patches().size() >= ENOUGH_OF_ITS_OWN) {
      return Optional.empty();
    }
    List<Trials> others =
        trials.everyStratum(log).stream()
            .filter(t -> Lending.mayLend(t.stratum(), own.stratum()))
            .toList();
    int patches = others.stream().mapToInt(t -> t.patches().size()).sum();
    return others.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "Taken alone: nothing was borrowed from the log's other trials under this light (%s, %s); --borrow lets them lend what they know."
                .formatted(
                    Figures.count(others.size(), "stratum", "strata"),
                    Figures.count(patches, "patch", "patches")));
  }
}
