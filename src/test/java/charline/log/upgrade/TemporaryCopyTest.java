package charline.log.upgrade;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class TemporaryCopyTest {
  @Test
  void a_copy_that_a_killed_program_left_goes_when_the_next_one_is_made_and_one_in_use_stays()
      throws IOException {
    Path left = Files.createTempDirectory("charline-log-");
    Files.createFile(left.resolve("in-use"));
    Files.writeString(left.resolve("log.db"), "left");
    try (TemporaryCopy used = TemporaryCopy.place()) {
      Files.writeString(used.file(), "used");
      assertThat(left).doesNotExist();
      try (TemporaryCopy other = TemporaryCopy.place()) {
        assertThat(used.file()).hasContent("used");
        assertThat(other.file()).doesNotExist();
      }
    }
  }

  @Test
  void nothing_is_left_when_it_is_closed() throws IOException {
    Path file;
    try (TemporaryCopy copy = TemporaryCopy.place()) {
      file = Files.writeString(copy.file(), "log");
    }
    assertThat(file.getParent()).doesNotExist();
  }
}
