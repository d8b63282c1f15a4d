package charline.paper;

import static org.assertj.core.api.Assertions.assertThat;

import charline.window.Range;
import java.util.Random;
import org.junit.jupiter.api.Test;

class KnobFiguresTest {
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
