package charline.cli;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

/** Commands that need no log, since a rehearsal takes its log from the environment. */
class RehearsalTest {
  @Test
  void commands_that_do_their_work_pass() {
    assertThatCode(() -> Rehearsal.rehearse(new String[] {"--version", "window --help"}))
        .doesNotThrowAnyException();
  }

  @Test
  void a_command_that_fails_ends_the_rehearsal_and_is_named() {
    assertThatThrownBy(() -> Rehearsal.rehearse(new String[] {"--version", "windov latex"}))
        .isInstanceOf(IllegalStateException.class)
        .hasMessage("`windov latex` ended with 2.");
  }
}
