package charline.model.borrow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.exposure.Emission;
import charline.model.BorrowedPrior;
import charline.model.Event;
import charline.model.Fitter;
import charline.model.HalfNormalSpread;
import charline.model.Lender;
import charline.model.ModelFit;
import charline.model.Prior;
import charline.model.Trials;
import charline.model.way.Trait;
import charline.pooling.Yard;
import charline.shops.Law;
import charline.shops.ShopBench;
import charline.trial.Coat;
import charline.trial.Stratum;
import charline.trial.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Borrowing from the log's other strata, on simulated trials whose truth is known. */
class BorrowingPropertyTest {
  private static final Law CHARRING = ShopBench.law(3.2, 0.45, 0.55, 0.2, 0.15);
  private static final Law CLEARING = ShopBench.law(2.1, 0.7, 0.75, 0.2, 0.15);

  private static Trials burn(
      String family, String wood, double step, int patches, Optional<Tone> tone, long seed) {
    Coat coat = new Coat(family, tone, OptionalDouble.empty());
    return Yard.burn(
        new Yard.Job(
            family,
            wood,
            CHARRING.moved(step),
            CLEARING.moved(step),
            Map.of(Trait.TONE, Math.log(3)),
            patches,
            3),
        (patch, board) -> coat,
        new Random(seed));
  }

  private static Trials burn(String family, String wood, double step, int patches, long seed) {
    return burn(family, wood, step, patches, Optional.empty(), seed);
  }

  private static List<Trials> fiveOthers() {
    return List.of(
        burn("latex", "pine", 0.1, 18, 1),
        burn("latex", "oak", -0.1, 18, 2),
        burn("latex", "ash", 0, 18, 3),
        burn("alkyd", "larch", 0.1, 18, 4),
        burn("varnish", "larch", -0.1, 18, 5));
  }

  private static Fitter borrowing(Trials wanted, List<Trials> others) {
    Fitter fitter = Fitter.withDefaults();
    return fitter.borrowing(new Borrowing(fitter, others).loansFor(wanted));
  }

  private static BorrowedPrior loan(Trials wanted, List<Trials> others, Event event) {
    return new Borrowing(Fitter.withDefaults(), others).loan(wanted, event).orElseThrow();
  }

  @ParameterizedTest
  @EnumSource(Event.class)
  void others_that_agree_lend_a_narrow_prior_and_one_alone_a_wide_one(Event event) {
    Trials wanted = burn("latex", "larch", 0, 4, 9);
    double usual = Prior.usual(event, Emission.PULSED).tau().sd();
    BorrowedPrior many = loan(wanted, fiveOthers(), event);
    BorrowedPrior one = loan(wanted, fiveOthers().subList(0, 1), event);
    assertThat(many.prior().tau().sd()).isLessThan(usual / 3);
    assertThat(one.prior().tau().sd()).isBetween(usual / 2, usual);
    assertThat(many.prior().omega()).isEqualTo(Prior.usual(event, Emission.PULSED).omega());
  }

  @Test
  void same_coating_and_for_char_same_wood_lend_first() {
    Trials wanted = burn("latex", "larch", 0, 4, 9);
    assertThat(loan(wanted, fiveOthers(), Event.CLEARING).lenders())
        .extracting(lender -> lender.stratum().family() + " " + lender.stratum().wood())
        .containsExactly("latex ash", "latex oak", "latex pine", "alkyd larch", "varnish larch");
    assertThat(loan(wanted, fiveOthers(), Event.CHAR).lenders()).allMatch(Lender::near);
    assertThat(loan(wanted, fiveOthers(), Event.CLEARING).lenders())
        .filteredOn(Lender::near)
        .hasSize(3);
  }

  @Test
  void near_ones_move_the_prior_more_than_far_ones() {
    Trials wanted = burn("latex", "larch", 0, 4, 9);
    Trials low = burn("latex", "pine", -0.6, 18, 1);
    Trials high = burn("alkyd", "pine", 0.6, 18, 2);
    double near = loan(wanted, List.of(low, high), Event.CLEARING).prior().tau().mean();
    Trials same = burn("alkyd", "pine", -0.6, 18, 1);
    Trials other = burn("latex", "pine", 0.6, 18, 2);
    double far = loan(wanted, List.of(same, other), Event.CLEARING).prior().tau().mean();
    assertThat(near).isLessThan(far - 0.1);
  }

  @Test
  void a_borrower_knows_more_where_it_is_like_the_others() {
    double alone = 0;
    double borrowed = 0;
    for (int seed = 0; seed < 6; seed++) {
      Trials wanted = burn("latex", "larch", 0, 6, 100 + seed);
      ModelFit own = Fitter.withDefaults().fit(wanted, Event.CLEARING);
      ModelFit fit = borrowing(wanted, fiveOthers()).fit(wanted, Event.CLEARING);
      alone += own.tau().high() - own.tau().low();
      borrowed += fit.tau().high() - fit.tau().low();
      assertThat(fit.borrowed().orElseThrow().weight()).isGreaterThan(Borrowing.SHARE);
    }
    assertThat(borrowed).isLessThan(0.9 * alone);
  }

  /** Five times the dose: what the others say is far off, and the trials must win. */
  @ParameterizedTest
  @EnumSource(Event.class)
  void a_borrower_unlike_the_others_is_left_to_itself(Event event) {
    Trials wanted = burn("latex", "larch", -Math.log(5), 12, 77);
    ModelFit own = Fitter.withDefaults().fit(wanted, event);
    ModelFit fit = borrowing(wanted, fiveOthers()).fit(wanted, event);
    assertThat(fit.borrowed().orElseThrow().weight()).isLessThan(0.05);
    double width = own.tau().high() - own.tau().low();
    assertThat(fit.tau().median()).isCloseTo(own.tau().median(), within(0.1 * width));
    assertThat(fit.tau().high()).isCloseTo(own.tau().high(), within(0.15 * width));
  }

  @Test
  void other_light_and_trials_that_saw_nothing_lend_nothing() {
    Trials wanted = burn("latex", "larch", 0, 4, 9);
    Trials pine = burn("latex", "pine", 0, 18, 1);
    Trials elsewhere =
        new Trials(new Stratum("latex", "pine", Emission.CONTINUOUS, 1080), pine.patches(), false);
    Trials never = burn("latex", "oak", 5, 18, 2);
    Borrowing lending = new Borrowing(Fitter.withDefaults(), List.of(wanted, elsewhere, never));
    assertThat(lending.loan(wanted, Event.CHAR)).isEmpty();
    assertThat(lending.loansFor(wanted)).isEmpty();
  }

  @Test
  void a_lender_of_another_tone_is_stepped_to_the_tone_asked_for() {
    Trials dark = burn("latex", "larch", 0, 4, Optional.of(Tone.DARK), 9);
    Trials pale = burn("latex", "larch", 0, 4, Optional.of(Tone.PALE), 9);
    List<Trials> others = List.of(burn("latex", "pine", 0, 18, Optional.of(Tone.DARK), 1));
    Prior.Normal same = loan(dark, others, Event.CLEARING).prior().tau();
    Prior.Normal paler = loan(pale, others, Event.CLEARING).prior().tau();
    assertThat(paler.mean() - same.mean()).isBetween(0.5, Math.log(3));
    assertThat(paler.sd()).isGreaterThan(same.sd());
    assertThat(loan(pale, others, Event.CHAR).prior())
        .isEqualTo(loan(dark, others, Event.CHAR).prior());
  }

  /** Without trials the integral of the density is that of the prior, which is known. */
  @ParameterizedTest
  @EnumSource(Event.class)
  void without_trials_the_weight_stays_the_share(Event event) {
    Prior usual = Prior.usual(event, Emission.PULSED);
    Prior lent =
        new Prior(
            new Prior.Normal(2, 0.3),
            new Prior.Weight(0.1, 0.5, usual.phi().least()),
            new Prior.Weight(0.7, 0.2, 0),
            new Prior.Normal(-1.5, 0.3),
            new HalfNormalSpread(0.2));
    Fitter fitter =
        Fitter.withDefaults()
            .borrowing(
                Map.of(
                    event,
                    new BorrowedPrior(
                        lent,
                        0.3,
                        new ArrayList<>(
                            List.of(
                                new Lender(burn("latex", "pine", 0, 1, 1).stratum(), 1, true))))));
    ModelFit fit = fitter.fit(List.of(), 0, event, usual);
    assertThat(fit.borrowed().orElseThrow().weight()).isCloseTo(0.3, within(0.02));
  }
}
