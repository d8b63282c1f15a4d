package charline.pooling;

import charline.shops.Law;
import charline.window.Forecast;
import charline.window.Recommendation;
import charline.window.Requirements;
import java.util.Locale;

/**
 * What one answer promised and what the truth makes of it.
 *
 * @param scene which kind of world or true shift
 * @param number of the world, from 0
 * @param patches how many the answer rests on
 * @param way how it was asked
 * @param window whether there was a window
 * @param charBroken whether the true char risk at its hottest corner is above the limit
 * @param clearingBroken whether the true clearing chance at its coldest corner is below the target
 */
record Told(
    String scene,
    int number,
    int patches,
    String way,
    boolean window,
    boolean charBroken,
    boolean clearingBroken) {

  static Told of(
      String scene, int number, String way, Recommendation answer, Law charring, Law clearing) {
    Requirements asked = answer.asked();
    return new Told(
        scene,
        number,
        answer.evidence().patches(),
        way,
        answer.chosen().isPresent(),
        answer.chosen().map(b -> chance(charring, b.hotCorner()) > asked.charRisk()).orElse(false),
        answer
            .chosen()
            .map(b -> chance(clearing, b.coldCorner()) < asked.clearChance())
            .orElse(false));
  }

  private static double chance(Law truth, Forecast at) {
    return truth.newBoardChance(at.doseJoulesPerCm2(), at.intensity(), at.passes());
  }

  static Told parse(String line) {
    String[] cells = line.split(",");
    return new Told(
        cells[0],
        Integer.parseInt(cells[1]),
        Integer.parseInt(cells[2]),
        cells[3],
        Boolean.parseBoolean(cells[4]),
        Boolean.parseBoolean(cells[5]),
        Boolean.parseBoolean(cells[6]));
  }

  String line() {
    return String.format(
        Locale.ROOT,
        "%s,%d,%d,%s,%b,%b,%b",
        scene,
        number,
        patches,
        way,
        window,
        charBroken,
        clearingBroken);
  }
}
