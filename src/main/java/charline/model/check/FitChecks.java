package charline.model.check;

import charline.model.Contradictions;
import charline.model.Event;
import java.util.List;

/**
 * How well one event's model fits its trials.
 *
 * <p>False alarms, from 720 simulated strata of 6 to 48 patches on 1 to 5 boards that follow the
 * model with board spreads up to 0.5: a patch is named in 1.4 % of strata, and in 0.1 % either
 * model is called failing for any reason. The limits look lax for that reason: a posterior that was
 * moved by the very trials it is checked against is surprised less often than its tail
 * probabilities say (Bayarri and Berger 2000, JASA 95:1127-1142). Of powers mistyped as a tenth on
 * a patch that cleared, 35 to 68 % make the model fail, and hardly ever is another patch blamed.
 *
 * @param event char or clearing
 * @param findings what fails first, then what is worth a look, then what is fine
 * @param patches each against the model fitted to the others, in the order of the trials
 * @param doses counts by class of dose
 * @param boards counts by board
 * @param ways counts by rig, figure and place, where the trials differ in them
 * @param calibration given against seen, chances rising
 * @param shifts boards against each other
 * @param contradictions hotter patches against cooler ones
 * @param logScore sum over patches of ln of the chance that the others gave to what was seen
 */
public record FitChecks(
    Event event,
    List<FitFinding> findings,
    List<PatchCheck> patches,
    List<CountCheck> doses,
    List<CountCheck> boards,
    List<CountCheck> ways,
    List<CalibrationBin> calibration,
    List<BoardCheck> shifts,
    Contradictions contradictions,
    double logScore) {
  /** Adjusted tail probability below which a patch is reported. */
  static final double SURPRISING = 0.05;

  /** Adjusted tail probability of a patch below which the model fails. */
  static final double IMPOSSIBLE = 0.02;

  /** Adjusted tail probability of a count at which it is worth a look. */
  static final double COUNT_LOOK = 0.05;

  /** Adjusted tail probability of a count at which the model fails. */
  static final double COUNT_FAILS = 0.005;

  /**
   * Posterior chance of lying further out than the prior expects, from which a board is reported.
   */
  static final double STANDS_OFF = 0.5;

  public FitChecks {
    findings = List.copyOf(findings);
    patches = List.copyOf(patches);
    doses = List.copyOf(doses);
    boards = List.copyOf(boards);
    ways = List.copyOf(ways);
    calibration = List.copyOf(calibration);
    shifts = List.copyOf(shifts);
  }

  FitChecks with(List<FitFinding> found) {
    return new FitChecks(
        event, found, patches, doses, boards, ways, calibration, shifts, contradictions, logScore);
  }

  /** True if the model must not be trusted. */
  public boolean fail() {
    return worst() == Severity.FAILS;
  }

  /** The gravest severity among the findings. */
  public Severity worst() {
    return findings.stream()
        .map(FitFinding::severity)
        .max(Severity::compareTo)
        .orElse(Severity.FINE);
  }

  /** Patches that are doubtful without making the model fail. */
  public List<FitFinding> doubtfulPatches() {
    return findings.stream()
        .filter(f -> f.severity() == Severity.LOOK && f.topic() == FitFinding.Topic.PATCH)
        .toList();
  }

  /** The findings of one severity. */
  public List<FitFinding> findings(Severity severity) {
    return findings.stream().filter(f -> f.severity() == severity).toList();
  }
}
