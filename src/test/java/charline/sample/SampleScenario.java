package charline.sample;

import charline.shops.Law;
import java.time.LocalDate;
import java.util.List;

/**
 * One invented trial sheet of the boathouse.
 *
 * @param file name of the sheet
 * @param prefix of its patch codes
 * @param seed of everything drawn for it
 * @param rig which burned it
 * @param boards boards, each with its moisture in %
 * @param wood log's word
 * @param form solid or plywood
 * @param finish name of the stack
 * @param coats the stack, outermost first, as the column coats has it
 * @param family log's word
 * @param tone of the outermost coat
 * @param repetitionKilohertz as set, 0 for a continuous rig
 * @param powers percent settings used
 * @param hands hand speeds used, mm/s
 * @param lowest lowest dose per pass tried, J/cm2
 * @param highest highest dose per pass tried, J/cm2
 * @param patches how many
 * @param mostPasses after which a patch is left
 * @param days on which it was burned
 * @param intensity F0 in the unit of the rig's intensity
 * @param charring truth of char
 * @param clearing truth of clearing
 * @param tint chance that a patch about to clear shows a tint rather than residue
 * @param depthLaw pulse depth in um per log fluence and threshold in J/cm2 where depth was
 *     measured, else null
 */
record SampleScenario(
    String file,
    String prefix,
    long seed,
    SampleRig rig,
    List<SampleBoard> boards,
    String wood,
    String form,
    String finish,
    String coats,
    String family,
    String tone,
    double repetitionKilohertz,
    double[] powers,
    double[] hands,
    double lowest,
    double highest,
    int patches,
    int mostPasses,
    List<LocalDate> days,
    double intensity,
    Law charring,
    Law clearing,
    double tint,
    DepthLaw depthLaw) {
  /** A board and its meter reading. */
  record SampleBoard(String name, double moisture) {}

  /** Depth per pulse is {@code slope ln(F / threshold)}, up to the film where it is thickest. */
  record DepthLaw(double slopeMicrometres, double thresholdJoulesPerCm2, double filmMicrometres) {}

  /** A rig as its line in rigs.csv has it, with metered over nominal power. */
  record SampleRig(
      String name,
      double ratedWatts,
      double spotMillimetres,
      double widthMillimetres,
      double metered) {
    /** Dose of one pass in J/cm2. */
    double dose(double percent, double hand) {
      return delivered(percent) / (widthMillimetres * hand) * 100;
    }

    /** Mean fluence in J/cm2, or mean irradiance in W/cm2 where there are no pulses. */
    double intensity(double percent, double kilohertz) {
      double area = Math.PI * spotMillimetres * spotMillimetres / 400;
      return delivered(percent) / area / (kilohertz == 0 ? 1 : kilohertz * 1000);
    }

    private double delivered(double percent) {
      return ratedWatts * percent / 100 * metered;
    }
  }
}
