package charline.log.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FormulaGuardPropertyTest {
  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '"',
      textBlock =
          """
          =1+1,        '=1+1
          +49 31,      '+49 31
          -,           '-
          @home,       '@home
          '=already,   ''=already
          'quoted,     'quoted
          plain = 1,   plain = 1
          """)
  void text_that_could_run_gets_an_apostrophe(String text, String cell) {
    assertThat(FormulaGuard.guard(text)).isEqualTo(cell);
  }

  @Test
  void every_text_comes_back() {
    Random random = new Random(41);
    char[] letters = "'=+-@\ta 1\n".toCharArray();
    for (int i = 0; i < 20_000; i++) {
      StringBuilder text = new StringBuilder();
      for (int n = random.nextInt(6); n > 0; n--) {
        text.append(letters[random.nextInt(letters.length)]);
      }
      String cell = FormulaGuard.guard(text.toString());
      assertThat(FormulaGuard.undo(cell)).isEqualTo(text.toString());
      assertThat(cell).doesNotMatch("(?s)[=+\\-@\\t].*");
    }
  }
}
