package charline.model.classical;

import charline.exposure.Emission;
import charline.quantity.Figures;
import charline.stat.linear.Design;
import charline.stat.linear.Vectors;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;

/**
 * The covariates that the trials can tell apart. A column that does not move, or moves with the
 * others only, would make the fit unsolvable or its numbers wild; it is left out, in words.
 *
 * @param names those that are in: dose, intensity, passes
 * @param values whole columns
 * @param movedAlong names of those that moved only together with others
 * @param notes a sentence for each that is out, and for a pair hard to tell apart
 */
record Columns(
    List<String> names, List<double[]> values, List<String> movedAlong, List<String> notes) {
  static final String DOSE = "ln dose (J/cm2)";
  static final String PASSES = "ln passes";
  static final String INTENSITY = " / F0";
  private static final String FLUENCE = "ln fluence / F0";
  private static final String IRRADIANCE = "ln irradiance / F0";

  /** Half a percent: no meter or hand tells less (common practice, no published source). */
  private static final double STILL = 0.005;

  private static final double NEARLY_TOGETHER = 0.98;

  static String intensity(Emission emission) {
    return emission == Emission.PULSED ? FLUENCE : IRRADIANCE;
  }

  /** A column's name as a person reads it. */
  static String plainIntercept(String name) {
    return name.equals(Design.INTERCEPT) ? "intercept" : name;
  }

  boolean have(String name) {
    return names.contains(name);
  }

  /**
   * Chooses columns; where two say the same, dose stays before passes, and passes before intensity.
   *
   * @param lnDose one per row
   * @param lnIntensity relative to F0, one per row
   * @param lnPasses one per row
   */
  static Columns of(Emission emission, double[] lnDose, double[] lnIntensity, double[] lnPasses) {
    String intensity = intensity(emission);
    List<String> names = new ArrayList<>();
    List<double[]> values = new ArrayList<>();
    List<String> along = new ArrayList<>();
    List<String> notes = new ArrayList<>();
    consider(DOSE, lnDose, names, values, along, notes);
    consider(PASSES, lnPasses, names, values, along, notes);
    consider(intensity, lnIntensity, names, values, along, notes);
    if (names.contains(PASSES) && names.contains(intensity)) { // shown as the model writes them
      int passes = names.indexOf(PASSES);
      names.add(names.remove(passes));
      values.add(values.remove(passes));
    }
    noteNearTwins(names, values, notes);
    return new Columns(List.copyOf(names), List.copyOf(values), along, List.copyOf(notes));
  }

  private static void consider(
      String name,
      double[] column,
      List<String> names,
      List<double[]> values,
      List<String> along,
      List<String> notes) {
    double[] rest = centred(column);
    if (Vectors.largest(rest) < STILL) {
      notes.add(
          "%s is left out: %s."
              .formatted(
                  name,
                  name.equals(PASSES)
                      ? "every row has the same number, %s".formatted(figure(Math.exp(column[0])))
                      : name.equals(DOSE)
                          ? "every patch had %s J/cm2 per pass"
                              .formatted(figure(Math.exp(column[0])))
                          : "it was the same on every patch"));
      return;
    }
    List<double[]> before = new ArrayList<>();
    for (double[] other : values) {
      double[] axis = centred(other);
      before.forEach(b -> takeOut(axis, b));
      takeOut(rest, axis);
      before.add(axis);
    }
    if (Vectors.largest(rest) < STILL) {
      along.add(name);
      notes.add(
          "%s is left out: in these trials it changed only together with %s, so its own effect is unknown; burn some patches where it alone changes."
              .formatted(name, String.join(" and ", names)));
      return;
    }
    names.add(name);
    values.add(column);
  }

  private static void noteNearTwins(List<String> names, List<double[]> values, List<String> notes) {
    for (int j = 0; j < names.size(); j++) {
      for (int k = 0; k < j; k++) {
        double[] a = centred(values.get(j));
        double[] b = centred(values.get(k));
        double correlation = Vectors.dot(a, b) / Math.sqrt(Vectors.dot(a, a) * Vectors.dot(b, b));
        if (Math.abs(correlation) > NEARLY_TOGETHER) {
          notes.add(
              "%s and %s changed nearly together (correlation %s): trust their joint effect, not each alone."
                  .formatted(names.get(k), names.get(j), figure(correlation)));
        }
      }
    }
  }

  private static double[] centred(double[] column) {
    double mean = 0;
    for (double value : column) {
      mean += value / column.length;
    }
    double[] result = column.clone();
    for (int i = 0; i < result.length; i++) {
      result[i] -= mean;
    }
    return result;
  }

  private static void takeOut(double[] from, double[] axis) {
    double share = Vectors.dot(from, axis) / Vectors.dot(axis, axis);
    for (int i = 0; i < from.length; i++) {
      from[i] -= share * axis[i];
    }
  }

  /** Three significant digits. */
  static String figure(double value) {
    return Figures.plain(new BigDecimal(value).round(new MathContext(3)).doubleValue());
  }
}
