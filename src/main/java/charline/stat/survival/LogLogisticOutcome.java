package charline.stat.survival;

/** What became of a fit of times: numbers, or the reason why there are none. */
public sealed interface LogLogisticOutcome
    permits LogLogisticFit, LogLogisticOutcome.NoLogLogisticFit {
  /**
   * No finite estimate exists, or none was reached.
   *
   * @param message one sentence: what was found and what to do
   */
  record NoLogLogisticFit(String message) implements LogLogisticOutcome {

    static NoLogLogisticFit running(double[] direction, CensoredTimes times) {
      int known = times.count();
      if (times.count(CensoredTimes.Kind.RIGHT) == known) {
        return new NoLogLogisticFit(
            "Some event must have been seen, but all %d times are open-ended; look longer."
                .formatted(known));
      }
      if (times.count(CensoredTimes.Kind.LEFT) == known) {
        return new NoLogLogisticFit(
            "Some look must have come before the event, but all %d events were there at the first look; look earlier."
                .formatted(known));
      }
      return new NoLogLogisticFit(
          direction[direction.length - 1] > 1e-9
              ? "Times must scatter about the line, but a line runs through every interval and the"
                  + " scale would shrink to 0; look more often or add times."
              : "Times must overlap along every covariate, but they are separated and a coefficient"
                  + " would run to infinity; add times or leave a covariate out.");
    }
  }
}
