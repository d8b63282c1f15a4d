package charline.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import charline.refusal.Refusal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class GivenNameTest {
  @ParameterizedTest
  @CsvSource({
    "a\u0007bc, control, 0007, 2",
    "door\u202Estile, unreadable or invisible, 202E, 5",
    "a\u200Bb, unreadable or invisible, 200B, 2",
    "a\u200Db, unreadable or invisible, 200D, 2",
    "a\uFEFFb, unreadable or invisible, FEFF, 2",
    "a\u00ADb, unreadable or invisible, 00AD, 2",
    "b\uFFFDrd, unreadable or invisible, FFFD, 2",
    "b\uD83Drd, unreadable or invisible, D83D, 2",
    "b\uDE00rd, unreadable or invisible, DE00, 2"
  })
  void a_name_with_a_character_that_nobody_sees_is_refused_with_its_place(
      String name, String sort, String code, int at) {
    assertThatThrownBy(() -> GivenName.checked("board", name))
        .isInstanceOf(Refusal.class)
        .hasMessage(
            "The name of a board must not contain %s characters, and this one has U+%s as its"
                + " character %d; type it again instead of pasting it.",
            sort, code, at);
  }

  /**
   * The third needs its joiner: "I go" in Persian, after Unicode Standard Annex 31, section 2.3.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "T\u00FCrf\u00FCllung links",
        "\u7AD9\u677F 2",
        "\u0645\u06CC\u200C\u0631\u0648\u0645",
        "plank \uD83D\uDE00"
      })
  void names_of_every_alphabet_pass(String name) {
    assertThat(GivenName.checked("board", name)).isEqualTo(name);
  }

  @Test
  void a_name_that_is_too_long_is_refused_with_its_length() {
    assertThatThrownBy(() -> GivenName.checked("board", "x".repeat(61)))
        .hasMessage("The name of a board must be 1 to 60 characters in one line, not 61.");
  }
}
