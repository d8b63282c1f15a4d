package charline.trial;

import static charline.quantity.Figures.plain;

import charline.exposure.PowerCurve;
import charline.exposure.Pulses;
import charline.trial.Plausibility.Doubt;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What makes a power check look mistyped: what the rig gave before, and what it is rated for. */
public final class MeteredPlausibility {
  /**
   * A rig changes by less than this from check to check, or somebody asks why (common practice).
   */
  private static final double MOST_CHANGE = 1.2;

  private static final double LEAST_TURNED_DOWN = 0.5;

  /**
   * Outside these shares of the nominal power a slip is likelier than a laser (common practice, no
   * published source). A source that is turned down gives less than its share, so low settings may
   * be further from nominal.
   */
  private static final double LEAST_OF_NOMINAL = 0.7;

  private static final double MOST_OF_NOMINAL = 1.2;

  private static final double TURNED_DOWN_PERCENT = 70;

  private MeteredPlausibility() {}

  /**
   * Doubts about a metered power that is far from what the rig should give: by the checks before it
   * where there are any that say something of its setting, else by the rating. Power that falls
   * while the setting rises on one day is doubted too.
   *
   * @param rig with its checks; the one in question need not be among them
   */
  public static List<Doubt> about(PowerCheck check, Rig rig) {
    List<Doubt> doubts = new ArrayList<>(aboutPulses(check));
    Rig before =
        rig.withChecks(rig.checks().stream().filter(c -> !c.id().equals(check.id())).toList());
    List<PowerCheck> known = before.checksFor(pulses(check, rig), check.at());
    Optional<Doubt> falling = falling(check, known);
    falling.ifPresent(doubts::add);
    Expected expected = expected(check, known, rig.ratedWatts());
    if (falling.isEmpty() && !expected.allows(check.meteredWatts())) {
      doubts.add(
          new Doubt(
              Knob.METERED,
              "%s W at %s %% is %s %% of what %s should give%s"
                  .formatted(
                      plain(check.meteredWatts()),
                      plain(check.percent()),
                      plain(Math.round(1000 * check.meteredWatts() / expected.watts()) / 10.0),
                      rig.name(),
                      expected.since()),
              "check both numbers"));
    }
    return List.copyOf(doubts);
  }

  private static List<Doubt> aboutPulses(PowerCheck check) {
    List<Doubt> doubts = new ArrayList<>();
    check.repetitionKilohertz().ifPresent(rate -> doubts.addAll(Knob.RATE.doubts(rate)));
    check.pulseNanoseconds().ifPresent(pulse -> doubts.addAll(Knob.PULSE.doubts(pulse)));
    return doubts;
  }

  /** The pulses that a check was made with, as far as they are known. */
  private static Optional<Pulses> pulses(PowerCheck check, Rig rig) {
    OptionalDouble rate = rig.repetitionOf(check);
    return rate.isPresent()
        ? Optional.of(new Pulses(rate.getAsDouble(), rig.pulseOf(check)))
        : Optional.empty();
  }

  /**
   * What a check should show.
   *
   * @param watts in W
   * @param least share of it that passes
   * @param most share of it that passes
   * @param since what it rests on, as the end of a sentence
   */
  private record Expected(double watts, double least, double most, String since) {
    boolean allows(double metered) {
      return metered >= least * watts * (1 - 1e-9) && metered <= most * watts * (1 + 1e-9);
    }
  }

  private static Expected expected(PowerCheck check, List<PowerCheck> known, double ratedWatts) {
    double percent = check.percent();
    Optional<PowerCurve> metered =
        Optional.of(known)
            .filter(checks -> !checks.isEmpty())
            .map(PowerCheck::curve)
            .filter(curve -> curve.covers(percent));
    if (metered.isPresent()) {
      return new Expected(
          metered.get().watts(percent),
          1 / MOST_CHANGE,
          MOST_CHANGE,
          ", as metered on " + known.get(known.size() - 1).at().toLocalDate());
    }
    return new Expected(
        ratedWatts * percent / 100,
        percent < TURNED_DOWN_PERCENT ? LEAST_TURNED_DOWN : LEAST_OF_NOMINAL,
        MOST_OF_NOMINAL,
        "");
  }

  /** A doubt about less power at a higher setting, on one day. */
  private static Optional<Doubt> falling(PowerCheck check, List<PowerCheck> known) {
    return known.stream()
        .filter(c -> c.at().toLocalDate().equals(check.at().toLocalDate()))
        .filter(
            c -> (c.percent() - check.percent()) * (c.meteredWatts() - check.meteredWatts()) <= 0)
        .filter(c -> c.percent() != check.percent())
        .findFirst()
        .map(c -> c.percent() < check.percent() ? List.of(c, check) : List.of(check, c))
        .map(
            pair ->
                new Doubt(
                    Knob.METERED,
                    "Power must rise with the setting, and %s W at %s %% is not more than %s W at %s %%"
                        .formatted(
                            plain(pair.get(1).meteredWatts()),
                            plain(pair.get(1).percent()),
                            plain(pair.get(0).meteredWatts()),
                            plain(pair.get(0).percent())),
                    "check both numbers"));
  }
}
