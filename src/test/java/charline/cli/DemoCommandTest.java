package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DemoCommandTest {
  @TempDir Path folder;

  @Test
  void the_demo_plays_the_job_and_names_what_it_wrote() {
    Path place = folder.resolve("demo");
    Shell shell = new Shell(folder).at("2026-11-01T09:00:00Z");

    Shell.Result result = shell.run("demo --to " + place);

    assertThat(result.code()).isZero();
    assertThat(result.err()).isEmpty();
    assertThat(result.out())
        .contains(
            "$ charline find clean latex over pine",
            "Settings that came out clean",
            "$ charline window --all",
            "START  ",
            "Written:\n  " + place.resolve("boathouse.db"));
    assertThat(place.resolve("latex-on-pine.html")).isNotEmptyFile();
    assertThat(folder.resolve("boathouse.db")).doesNotExist();
    assertThat(shell.run("demo --to " + place).code()).isEqualTo(2);
  }
}
