package charline.plan;

import charline.exposure.Settings;
import java.util.OptionalInt;

/**
 * One patch to burn.
 *
 * @param number its place in the list, from 1
 * @param purpose why
 * @param motive why, finer
 * @param place on what
 * @param setting power and speed
 * @param settings everything dialled in
 * @param passes read after every pass up to this one, but never past the first brown
 * @param charRiskMean chance of char by the last pass on a new board, averaged over the posterior
 * @param charRiskUpper one-sided upper bound of that chance at the asked confidence
 * @param clearChanceMean chance that the finish is gone by the last pass
 * @param gain what it is expected to do to the window
 * @param onlyAfter number of the patch that must have stayed without char before; empty where the
 *     trials so far permit it
 */
public record Suggestion(
    int number,
    Purpose purpose,
    Motive motive,
    Place place,
    DialSetting setting,
    Settings settings,
    int passes,
    double charRiskMean,
    double charRiskUpper,
    double clearChanceMean,
    Gain gain,
    OptionalInt onlyAfter) {
  Suggestion on(Place other) {
    return with(number, other, onlyAfter);
  }

  Suggestion at(int position, OptionalInt licence) {
    return with(position, place, licence);
  }

  private Suggestion with(int position, Place other, OptionalInt licence) {
    return new Suggestion(
        position,
        purpose,
        motive,
        other,
        setting,
        settings,
        passes,
        charRiskMean,
        charRiskUpper,
        clearChanceMean,
        gain,
        licence);
  }
}
