package charline.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

/**
 * The tabular CUSUM example of D. C. Montgomery, Introduction to Statistical Quality Control,
 * chapter 9: target 10, standard deviation 1, k = 1/2, h = 5; it signals at the 29th value with an
 * upper sum of 5.28, and the counter of 7 dates the shift to between the 22nd and 23rd. Data and
 * numbers from memory.
 */
class CusumReferenceTest {
  private static final double[] VALUES = {
    9.45, 7.99, 9.29, 11.66, 12.16, 10.18, 8.04, 11.46, 9.20, 10.34, 9.03, 11.47, 10.51, 9.40,
    10.08, 9.37, 10.62, 10.31, 8.52, 10.84, 10.90, 9.33, 12.29, 11.50, 10.60, 11.08, 10.38, 11.62,
    11.31, 10.52
  };

  private static List<Double> off(DoubleStream values) {
    return values.map(x -> x - 10).boxed().toList();
  }

  @Test
  void the_example_signals_where_the_book_says_and_dates_the_shift() {
    Cusum cusum = new Cusum(0.5, 5);
    List<Cusum.Sums> sums = cusum.sums(off(Arrays.stream(VALUES)));

    assertThat(sums.get(1).down()).isCloseTo(1.56, within(5e-3));
    assertThat(sums.get(4).up()).isCloseTo(2.82, within(5e-3));
    assertThat(sums.get(28).up()).isCloseTo(5.28, within(5e-3));
    assertThat(cusum.signal(sums)).hasValue(28);
    assertThat(cusum.since(sums, 28)).isEqualTo(22);
  }

  @Test
  void turned_round_it_signals_downwards() {
    Cusum cusum = new Cusum(0.5, 5);
    List<Cusum.Sums> sums = cusum.sums(off(Arrays.stream(VALUES).map(x -> 20 - x)));

    assertThat(cusum.signal(sums)).hasValue(28);
    assertThat(sums.get(28).down()).isCloseTo(5.28, within(5e-3));
    assertThat(cusum.since(sums, 28)).isEqualTo(22);
  }
}
