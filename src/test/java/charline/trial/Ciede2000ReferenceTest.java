package charline.trial;

import charline.reference.Expected;
import charline.reference.ReferenceCase;
import charline.reference.Tolerance;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Sharma, Wu and Dalal (2005), Table I: 34 pairs that catch the usual mistakes about hues. */
class Ciede2000ReferenceTest {

  @Test
  void agrees_with_the_published_pairs_in_either_order() {
    ReferenceCase reference = ReferenceCase.load("sharma-2005");
    Lab[] ones = colours(reference, "1");
    Lab[] others = colours(reference, "2");
    Expected expected = reference.fit("pairs").at("expected");

    for (double[] differences : new double[][] {between(ones, others), between(others, ones)}) {
      expected.check("delta_e_published", differences, Tolerance.asPrinted(4));
      expected.check("delta_e", differences, new Tolerance(0, 1e-9));
    }
    expected.nothingIsLeft();
  }

  private static Lab[] colours(ReferenceCase reference, String which) {
    double[] lightness = reference.numbers("L" + which);
    double[] redness = reference.numbers("a" + which);
    double[] yellowness = reference.numbers("b" + which);
    return IntStream.range(0, lightness.length)
        .mapToObj(i -> new Lab(lightness[i], redness[i], yellowness[i]))
        .toArray(Lab[]::new);
  }

  private static double[] between(Lab[] ones, Lab[] others) {
    return IntStream.range(0, ones.length)
        .mapToDouble(i -> Ciede2000.between(ones[i], others[i]))
        .toArray();
  }
}
