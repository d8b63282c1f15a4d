package charline.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.exposure.Emission;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/**
 * The usual priors of char against eight doses, 7.8 to 75 J/cm², over which beech under a
 * continuous 10.6 µm laser ran from apparently unaffected to totally dark: Vidholdova, Reinprecht
 * and Igaz 2017, BioResources 12(2):4177-4186, abstract.
 */
class PublishedCharDosesReferenceTest {
  private static final double UNAFFECTED = 7.8;
  private static final double DARK = 75;

  @Test
  void continuous_light_begins_at_their_middle_and_one_spread_reaches_both_ends() {
    Prior.Normal tau = Prior.usual(Event.CHAR, Emission.CONTINUOUS).tau();
    double middle = Math.sqrt(UNAFFECTED * DARK);
    assertThat(Math.exp(tau.mean())).isCloseTo(middle, within(0.5));
    assertThat(Math.exp(tau.mean() - tau.sd())).isBetween(0.8 * UNAFFECTED, UNAFFECTED);
    assertThat(Math.exp(tau.mean() + tau.sd())).isBetween(DARK, 1.2 * DARK);
  }

  @Test
  void pulsed_light_has_them_inside_one_spread() {
    Prior.Normal tau = Prior.usual(Event.CHAR, Emission.PULSED).tau();
    assertThat(Math.exp(tau.mean())).isBetween(UNAFFECTED, DARK);
    assertThat(Math.exp(tau.mean() - tau.sd())).isLessThan(UNAFFECTED);
    assertThat(Math.exp(tau.mean() + tau.sd())).isGreaterThan(DARK);
  }

  /**
   * Energy for each cm³ of paint lifted, published as 0.3 mm³/J (Brygo and others 2006, Appl. Surf.
   * Sci. 252:2131-2138) and as 14 µm by 0.9 J/cm² (Appl. Opt. 34:4409, 1995).
   */
  @Test
  void clearing_a_coat_begins_between_the_published_energies() {
    for (double um : new double[] {25, 50, 100, 150}) {
      double dose =
          Math.exp(
              Prior.usual(Event.CLEARING, Emission.PULSED)
                  .forCoats(OptionalDouble.of(Math.log(um)))
                  .tau()
                  .mean());
      double least = um * 0.9 / 14;
      double most = 0.1 * um / 0.3;
      assertThat(dose).isBetween(least, most);
    }
  }
}
