package charline.trial;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PlainTextTest {
  @Test
  void every_kind_of_line_end_becomes_one_line_feed() {
    assertThat(PlainText.of("dos\r\nold\rsoft\u000bpage\fnext\u0085line\u2028para\u2029end\n"))
        .isEqualTo("dos\nold\nsoft\npage\nnext\nline\npara\nend\n");
    assertThat(PlainText.of("a\r\rb\n\rc")).isEqualTo("a\n\nb\n\nc");
  }

  @Test
  void other_control_characters_become_blanks_and_all_else_stays() {
    assertThat(PlainText.of("nul\u0000bell\u0007del\u007fcsi\u009b."))
        .isEqualTo("nul bell del csi .");
    String plain = "tab\there, \u00e7a br\u00fble \u706b \ud83d\udd25, hard\u00a0blank\n";
    assertThat(PlainText.of(plain)).isSameAs(plain);
  }

  @Test
  void words_of_which_nothing_can_be_seen_are_none() {
    assertThat(PlainText.prose(Optional.of("\u0000\u000b "))).isEmpty();
    assertThat(PlainText.prose(Optional.of(" by the\u000bslip "))).contains(" by the\nslip ");
    assertThat(PlainText.answer(Optional.of("\u0007"))).isEmpty();
    assertThat(PlainText.answer(Optional.of("\u0000Runa\r"))).contains("Runa");
  }

  @Test
  void plain_text_is_what_stays_as_it_is() {
    Random random = new Random(20261130);
    char[] signs =
        "a \t\n\r\u0000\u0007\u000b\f\u001f\u007f\u0085\u009f\u00a0\u2027\u2028\u2029"
            .toCharArray();
    for (int i = 0; i < 20_000; i++) {
      StringBuilder text = new StringBuilder();
      for (int n = random.nextInt(6); n > 0; n--) {
        text.append(signs[random.nextInt(signs.length)]);
      }
      String plain = PlainText.of(text.toString());
      assertThat(plain.equals(text.toString())).isEqualTo(PlainText.isPlain(text.toString()));
      assertThat(PlainText.of(plain)).isEqualTo(plain);
      assertThat(plain).doesNotContainPattern("[\\x00-\\x08\\x0b-\\x1f\\x7f-\\x9f\\u2028\\u2029]");
    }
  }
}
