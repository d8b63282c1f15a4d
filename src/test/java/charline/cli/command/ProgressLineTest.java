package charline.cli.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

class ProgressLineTest {
  private final ByteArrayOutputStream terminal = new ByteArrayOutputStream();
  private final ProgressLine line =
      new ProgressLine(new PrintStream(terminal, true, StandardCharsets.UTF_8), "charline import");

  private static long seconds(double number) {
    return (long) (number * TimeUnit.SECONDS.toNanos(1));
  }

  /** What a terminal shows after all that was printed: a return begins the line again. */
  private String shown() {
    char[] screen = " ".repeat(200).toCharArray();
    int at = 0;
    for (char c : terminal.toString(StandardCharsets.UTF_8).toCharArray()) {
      if (c == '\r') {
        at = 0;
      } else {
        screen[at++] = c;
      }
    }
    return new String(screen).strip();
  }

  @Test
  void nothing_is_shown_for_two_seconds() {
    line.at("Importing big.csv", 10, 1000);
    line.tick(seconds(1.9));
    assertThat(terminal.size()).isZero();
  }

  @Test
  void then_one_line_says_what_is_done_and_how_far_it_is() {
    line.tick(seconds(3));
    assertThat(shown()).isEqualTo("charline import: 3 s; Ctrl-C stops it and changes nothing");
    line.at("Importing big.csv", 120_000, 1_000_000);
    line.tick(seconds(4));
    assertThat(shown()).isEqualTo("Importing big.csv: 120,000 of 1,000,000 (12 %)");
    line.at("Importing b.csv", 9, 10);
    line.tick(seconds(5));
    assertThat(shown())
        .isEqualTo("Importing b.csv: 9 of 10 (90 %); Ctrl-C stops it and changes nothing");
  }

  @Test
  void it_is_gone_when_something_else_is_printed_and_comes_back_after_two_seconds() {
    line.tick(seconds(3));
    line.clear(seconds(3.5));
    assertThat(shown()).isEmpty();
    line.tick(seconds(5));
    assertThat(shown()).isEmpty();
    line.tick(seconds(6));
    assertThat(shown()).startsWith("charline import: 6 s");
  }

  @Test
  void a_long_line_is_cut_at_the_width_of_a_terminal() {
    line.at("Importing " + "x".repeat(100), 1, 2);
    line.tick(seconds(3));
    assertThat(shown()).hasSize(78).endsWith("...");
  }

  @Test
  void it_shows_nothing_while_somebody_is_asked_and_after_its_end() {
    line.pause(true);
    line.tick(System.nanoTime() + seconds(10));
    line.pause(false);
    line.tick(System.nanoTime() + seconds(10));
    assertThat(shown()).startsWith("charline import");
    line.close();
    assertThat(shown()).isEmpty();
    line.tick(System.nanoTime() + seconds(20));
    assertThat(shown()).isEmpty();
  }
}
