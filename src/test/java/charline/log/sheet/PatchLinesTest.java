package charline.log.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Which line of a code is its last, told against a plain count of codes. */
class PatchLinesTest {
  @Test
  void the_last_line_of_each_code_is_told_in_any_order() {
    Random random = new Random(31);
    for (int codes : new int[] {1, 7, 900, 40_000}) {
      PatchLines lines = new PatchLines();
      List<String> all = new ArrayList<>();
      Map<String, Integer> left = new HashMap<>();
      for (int i = 0; i < 2 * codes; i++) {
        // In a row, as sheets are written, and far apart.
        String code = "B-" + (random.nextBoolean() ? i / 3 : random.nextInt(codes));
        all.add(random.nextBoolean() ? code : code.toLowerCase());
        left.merge(PatchLines.key(code), 1, Integer::sum);
        lines.add(all.get(i));
        lines.add("");
      }
      PatchLines.Left first = lines.left();
      PatchLines.Left again = lines.left();
      for (String code : all) {
        String key = PatchLines.key(code);
        boolean last = left.merge(key, -1, Integer::sum) == 0;
        assertThat(first.takeLast(key)).isEqualTo(last);
        assertThat(again.takeLast(key)).as("counted anew").isEqualTo(last);
      }
    }
  }
}
