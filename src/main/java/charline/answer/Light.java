package charline.answer;

import charline.exposure.Emission;
import charline.trial.Rig;
import charline.trial.Stratum;

/**
 * A kind of light. Trials with different light are never pooled.
 *
 * @param emission pulsed or continuous
 * @param wavelengthNanometres wavelength, rounded to whole nm
 */
public record Light(Emission emission, int wavelengthNanometres) {
  /** The light that a rig gives. */
  public static Light of(Rig rig) {
    return new Light(rig.emission(), (int) Math.round(rig.wavelengthNanometres()));
  }

  /** The light that trials were burned with. */
  public static Light of(Stratum stratum) {
    return new Light(stratum.emission(), stratum.wavelengthNanometres());
  }

  /** {@code pulsed-1064}, as an address names it. */
  public String code() {
    return emission.word() + "-" + wavelengthNanometres;
  }
}
