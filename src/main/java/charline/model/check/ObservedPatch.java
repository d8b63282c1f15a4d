package charline.model.check;

import charline.model.Event;
import charline.model.Trials;
import charline.trial.Patch;
import charline.trial.Reading;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * One patch as it was watched for an event: every reading up to the one that showed it. Each
 * reading asks whether the event came since the one before, so whatever rule made the person stop,
 * the chance of each answer given the past is the model's (as for survival in steps, Brown 1975,
 * Biometrics 31:863-872).
 *
 * @param code the patch's short code
 * @param board index of the board, from 0
 * @param lnDose natural logarithm of the dose per pass in J/cm²
 * @param lnIntensity natural logarithm of fluence or irradiance
 * @param passes at each reading, rising
 * @param seen whether the last of these readings showed the event
 * @param wayStep values of the shifts, from those of the way that the model is for
 */
record ObservedPatch(
    String code,
    int board,
    double lnDose,
    double lnIntensity,
    int[] passes,
    boolean seen,
    double[] wayStep) {
  /** A patch where all are made in one way. */
  ObservedPatch(
      String code, int board, double lnDose, double lnIntensity, int[] passes, boolean seen) {
    this(code, board, lnDose, lnIntensity, passes, seen, new double[0]);
  }

  static List<ObservedPatch> all(Trials trials, Event event) {
    Map<UUID, Integer> boards = new LinkedHashMap<>();
    List<ObservedPatch> all = new ArrayList<>();
    List<double[]> waySteps = trials.waySteps(event);
    for (Patch patch : trials.patches()) {
      int board = boards.computeIfAbsent(patch.board().id(), id -> boards.size());
      all.add(of(patch, board, event, trials, waySteps.get(all.size())));
    }
    return all;
  }

  private static ObservedPatch of(
      Patch patch, int board, Event event, Trials trials, double[] wayStep) {
    List<Integer> passes = new ArrayList<>();
    boolean seen = false;
    for (Reading reading : patch.readings()) {
      passes.add(reading.passes());
      seen = event.shownBy(reading.outcome(), trials.acceptTint());
      if (seen) {
        break;
      }
    }
    return new ObservedPatch(
        patch.code(),
        board,
        Math.log(patch.exposure().doseJoulesPerCm2()),
        Math.log(patch.exposure().intensity()),
        passes.stream().mapToInt(Integer::intValue).toArray(),
        seen,
        wayStep);
  }

  int readings() {
    return passes.length;
  }

  boolean seenAt(int reading) {
    return seen && reading == passes.length - 1;
  }
}
