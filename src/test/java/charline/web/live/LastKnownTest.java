package charline.web.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Answers are computed once, and whoever waits for one has it before those that nobody asks for.
 */
class LastKnownTest {
  private final Deque<Runnable> waiting = new ArrayDeque<>();
  private final List<String> computed = new ArrayList<>();
  private String state = "as it was";

  /** The worker takes what was asked for last. */
  private final LastKnown<String, String> answers =
      new LastKnown<>(
          waiting::addFirst,
          8,
          () -> state,
          question -> {
            computed.add(question);
            return question + ", " + state;
          });

  private LastKnown.Known<String> ask(String question) {
    return answers.of(question, Duration.ZERO);
  }

  private void work() {
    while (!waiting.isEmpty()) {
      waiting.pop().run();
    }
  }

  @Test
  void an_answer_that_is_asked_for_again_is_computed_before_those_asked_for_since() {
    ask("drift");
    ask("window");
    ask("sheet");
    ask("drift");
    work();
    assertThat(computed).containsExactly("drift", "sheet", "window");
    assertThat(ask("drift"))
        .isEqualTo(new LastKnown.Known<>(Optional.of("drift, as it was"), false));
  }

  @Test
  void an_answer_of_an_older_log_is_known_until_the_newer_one_is_there_and_is_computed_once() {
    ask("window");
    work();
    state = "with a patch more";
    assertThat(ask("window"))
        .isEqualTo(new LastKnown.Known<>(Optional.of("window, as it was"), true));
    assertThat(ask("window").renewing()).isTrue();
    state = "with two patches more";
    assertThat(ask("window").value()).contains("window, as it was");
    work();
    assertThat(computed).containsExactly("window", "window");
    assertThat(ask("window"))
        .isEqualTo(new LastKnown.Known<>(Optional.of("window, with two patches more"), false));
  }
}
