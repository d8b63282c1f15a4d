package charline.paper;

import static org.assertj.core.api.Assertions.assertThat;

import charline.window.Range;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

class FiguresTest {
  @Test
  void bounds_are_rounded_to_the_side_on_which_they_stay_true() {
    assertThat(Figures.atMost(0.0321)).isEqualTo("3.3 %");
    assertThat(Figures.atMost(0.03)).isEqualTo("3.0 %");
    assertThat(Figures.atLeast(0.9399)).isEqualTo("93.9 %");
    assertThat(Figures.atLeast(0.9999)).isEqualTo("99.9 %");
    assertThat(Figures.atMost(0.99999)).isEqualTo("100 %");
    assertThat(Figures.atLeast(0.0001)).isEqualTo("0 %");
    assertThat(Figures.atMost(0.612)).isEqualTo("62 %");
    assertThat(Figures.atLeast(0.618)).isEqualTo("61 %");
  }

  @Test
  void a_chance_is_never_called_none_or_certain() {
    assertThat(Figures.chance(0)).isEqualTo("under 0.1 %");
    assertThat(Figures.chance(1e-9)).isEqualTo("under 0.1 %");
    assertThat(Figures.chance(1 - 1e-9)).isEqualTo("over 99.9 %");
    assertThat(Figures.chance(0.4251)).isEqualTo("43 %");
    assertThat(Figures.chance(0.0444)).isEqualTo("4.4 %");
  }

  @Test
  void what_was_asked_reads_as_it_was_asked() {
    assertThat(Figures.share(0.07)).isEqualTo("7 %");
    assertThat(Figures.share(0.05)).isEqualTo("5 %");
    assertThat(Figures.share(0.975)).isEqualTo("97.5 %");
  }

  @Test
  void numbers_carry_no_exponent_and_no_local_comma() {
    Locale usual = Locale.getDefault();
    try {
      Locale.setDefault(Locale.GERMANY);
      assertThat(Figures.significant(1234.5, 2)).isEqualTo("1200");
      assertThat(Figures.significant(0.0123456, 3)).isEqualTo("0.0123");
      assertThat(Figures.decimals(11.25, 1)).isEqualTo("11.3");
      assertThat(Figures.shortest(1e7)).isEqualTo("10000000");
      assertThat(Figures.shortest(0.6)).isEqualTo("0.6");
      assertThat(Figures.shortest(Double.NaN)).isEqualTo("not known");
    } finally {
      Locale.setDefault(usual);
    }
  }

  @Test
  void a_printed_range_never_reaches_outside_the_range_and_holds_its_start() {
    Random random = new Random(20260413);
    for (int i = 0; i < 2000; i++) {
      double low = Math.exp(8 * random.nextDouble() - 1);
      double high = low * (1 + Math.exp(-6 * random.nextDouble()));
      double start = low + (high - low) * random.nextDouble();
      KnobFigures figures = KnobFigures.significant(new Range(low, high), start);
      double printedLow = Double.parseDouble(figures.low());
      double printedHigh = Double.parseDouble(figures.high());

      assertThat(printedLow).isGreaterThanOrEqualTo(low);
      assertThat(printedHigh).isLessThanOrEqualTo(high);
      assertThat(Double.parseDouble(figures.start())).isBetween(printedLow, printedHigh);
    }
  }

  @Test
  void a_range_is_no_finer_than_it_has_to_be() {
    assertThat(KnobFigures.whole(new Range(37.6, 46.3), 41.7))
        .isEqualTo(new KnobFigures("42", "38", "46"));
    assertThat(KnobFigures.whole(new Range(41.62, 41.91), 41.7))
        .isEqualTo(new KnobFigures("41.7", "41.7", "41.9"));
    assertThat(KnobFigures.significant(new Range(6130, 7080), 6520))
        .isEqualTo(new KnobFigures("6500", "6200", "7000"));
    assertThat(KnobFigures.whole(new Range(40, 40), 40))
        .isEqualTo(new KnobFigures("40", "40", "40"));
  }
}
