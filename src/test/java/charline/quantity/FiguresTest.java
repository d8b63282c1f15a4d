package charline.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FiguresTest {
  @ParameterizedTest
  @CsvSource({
    "9.0909090909, 9.09",
    "10, 10",
    "1.0610329, 1.06",
    "0.00123456, 0.00123",
    "298415.5, 298416",
    "0, 0",
    "NaN, -",
    "-4.5551, -4.56",
    "99.96, 100"
  })
  void numbers_have_three_digits(double value, String text) {
    assertThat(Figures.three(value)).isEqualTo(text);
  }

  @ParameterizedTest
  @CsvSource({
    "0, under 0.1 %",
    "0.0004, under 0.1 %",
    "0.0123, 1.2 %",
    "0.0444, 4.4 %",
    "0.05, 5 %",
    "0.0996, 10 %",
    "0.4251, 43 %",
    "0.99, 99 %",
    "0.9961, 99.6 %",
    "0.9995, over 99.9 %",
    "1, over 99.9 %",
    "NaN, not known"
  })
  void a_chance_is_in_whole_percents_finer_near_the_ends_and_never_certain(
      double share, String text) {
    assertThat(Figures.percent(share)).isEqualTo(text);
  }

  @ParameterizedTest
  @CsvSource({
    "0.0321, 3.3 %",
    "0.03, 3 %",
    "0.07, 7 %",
    "0.612, 62 %",
    "0.99999, 100 %",
    "0.0001, 0.1 %"
  })
  void an_upper_bound_is_rounded_up(double share, String text) {
    assertThat(Figures.atMost(share)).isEqualTo(text);
  }

  @ParameterizedTest
  @CsvSource({
    "0.94728, 94 %",
    "0.95, 95 %",
    "0.618, 61 %",
    "0.9999, 99.9 %",
    "0.0319, 3.1 %",
    "0.0001, 0 %"
  })
  void a_lower_bound_is_rounded_down(double share, String text) {
    assertThat(Figures.atLeast(share)).isEqualTo(text);
  }

  @Test
  void every_bound_of_any_size_stays_true() {
    Random random = new Random(20260413);
    for (int i = 0; i < 5000; i++) {
      double value = Math.exp(24 * random.nextDouble() - 12);
      BigDecimal exact = BigDecimal.valueOf(value);
      assertThat(new BigDecimal(Figures.threeUp(value))).isGreaterThanOrEqualTo(exact);
      assertThat(new BigDecimal(Figures.threeDown(value))).isLessThanOrEqualTo(exact);
      assertThat(new BigDecimal(Figures.decimalsUp(value, 1))).isGreaterThanOrEqualTo(exact);
      assertThat(new BigDecimal(Figures.decimalsDown(value, 1))).isLessThanOrEqualTo(exact);
      double share = random.nextBoolean() ? random.nextDouble() : Math.pow(random.nextDouble(), 9);
      BigDecimal percent = BigDecimal.valueOf(share).movePointRight(2);
      assertThat(percent(Figures.atMost(share))).isGreaterThanOrEqualTo(percent);
      assertThat(percent(Figures.atLeast(share))).isLessThanOrEqualTo(percent);
    }
  }

  private static BigDecimal percent(String text) {
    return new BigDecimal(text.replace(" %", ""));
  }

  @Test
  void a_range_that_must_not_be_left_is_rounded_inward_and_keeps_some_room() {
    assertThat(Figures.inward(12.34, 18.27)).isEqualTo("12.4 to 18.2");
    assertThat(Figures.inward(40, 45)).isEqualTo("40 to 45");
    assertThat(Figures.inward(12.341, 12.349)).isEqualTo("12.341 to 12.349");
    Random random = new Random(20260413);
    for (int i = 0; i < 5000; i++) {
      double low = Math.exp(16 * random.nextDouble() - 4);
      double high = low * (1 + Math.exp(-20 * random.nextDouble()));
      String[] ends = Figures.inward(low, high).split(" to ");
      assertThat(new BigDecimal(ends[0]))
          .isGreaterThanOrEqualTo(BigDecimal.valueOf(low))
          .isLessThanOrEqualTo(new BigDecimal(ends[1]));
      assertThat(new BigDecimal(ends[1])).isLessThanOrEqualTo(BigDecimal.valueOf(high));
    }
  }

  @Test
  void what_was_asked_reads_as_it_was_asked() {
    assertThat(Figures.share(0.07)).isEqualTo("7 %");
    assertThat(Figures.share(0.05)).isEqualTo("5 %");
    assertThat(Figures.share(0.975)).isEqualTo("97.5 %");
  }

  @Test
  void a_ratio_may_pass_one() {
    assertThat(Figures.ratio(1.052)).isEqualTo("105 %");
    assertThat(Figures.ratio(0.925)).isEqualTo("93 %");
    assertThat(Figures.ratio(0.0123)).isEqualTo("1.2 %");
  }

  @Test
  void numbers_carry_no_exponent_and_no_local_comma() {
    Locale usual = Locale.getDefault();
    try {
      Locale.setDefault(Locale.GERMANY);
      assertThat(Figures.significant(1234.5, 2)).isEqualTo("1200");
      assertThat(Figures.significant(0.0123456, 3)).isEqualTo("0.0123");
      assertThat(Figures.digits(0.5996, 3)).isEqualTo("0.6");
      assertThat(Figures.decimals(11.25, 1)).isEqualTo("11.3");
      assertThat(Figures.shortest(1e7)).isEqualTo("10000000");
      assertThat(Figures.shortest(0.6)).isEqualTo("0.6");
      assertThat(Figures.shortest(Double.NaN)).isEqualTo("not known");
      assertThat(Figures.plain(12.5)).isEqualTo("12.5");
    } finally {
      Locale.setDefault(usual);
    }
  }

  @Test
  void a_wide_spread_is_a_factor() {
    assertThat(Figures.within(Math.log(1.38))).isEqualTo("38 %");
    assertThat(Figures.within(Math.log(3.21))).isEqualTo("a factor 3.2");
  }

  @Test
  void a_share_is_said_in_small_numbers_to_the_nearest() {
    assertThat(Figures.part(0.025)).isEqualTo("1 in 40");
    assertThat(Figures.part(0.0237)).isEqualTo("1 in 42");
    assertThat(Figures.part(0.21)).isEqualTo("2 in 10");
    assertThat(Figures.part(0.5)).isEqualTo("5 in 10");
    assertThat(Figures.part(0.95)).isEqualTo("19 in 20");
    assertThat(Figures.part(0.9841)).isEqualTo("62 in 63");
    assertThat(Figures.part(0.0001)).isEqualTo("under 1 in 1000");
    assertThat(Figures.part(0.9999)).isEqualTo("over 999 in 1000");
    assertThat(Figures.part(Double.NaN)).isEqualTo(Figures.UNKNOWN);
  }

  @Test
  void a_share_in_small_numbers_is_never_better_than_it_is() {
    assertThat(Figures.partAtMost(0.025)).isEqualTo("1 in 40");
    assertThat(Figures.partAtMost(0.0237)).isEqualTo("1 in 42");
    assertThat(Figures.partAtMost(0.00735)).isEqualTo("1 in 130");
    assertThat(Figures.partAtMost(0.1)).isEqualTo("1 in 10");
    assertThat(Figures.partAtMost(0.21)).isEqualTo("3 in 10");
    assertThat(Figures.partAtMost(0.95)).isEqualTo("19 in 20");
    assertThat(Figures.partAtMost(0.9999)).isEqualTo(Figures.ALL);
    assertThat(Figures.partAtMost(0)).isEqualTo("1 in 1000");
    assertThat(Figures.partAtLeast(0.95)).isEqualTo("19 in 20");
    assertThat(Figures.partAtLeast(0.94)).isEqualTo("15 in 16");
    assertThat(Figures.partAtLeast(0.89)).isEqualTo("8 in 10");
    assertThat(Figures.partAtLeast(0.03)).isEqualTo("1 in 34");
    assertThat(Figures.partAtLeast(1)).isEqualTo("999 in 1000");
    assertThat(Figures.partAtLeast(0.0001)).isEqualTo(Figures.NONE);
    Random random = new Random(4);
    for (int k = 0; k < 100_000; k++) {
      double share = k % 2 == 0 ? random.nextDouble() : Math.pow(10, -5 * random.nextDouble());
      share = k % 4 == 1 ? 1 - share : share;
      assertThat(part(Figures.partAtMost(share))).isGreaterThanOrEqualTo(share);
      assertThat(part(Figures.partAtLeast(share))).isLessThanOrEqualTo(share);
    }
  }

  private static double part(String words) {
    if (words.equals(Figures.ALL) || words.equals(Figures.NONE)) {
      return words.equals(Figures.ALL) ? 1 : 0;
    }
    String[] parts = words.split(" in ");
    return Double.parseDouble(parts[0]) / Double.parseDouble(parts[1]);
  }
}
