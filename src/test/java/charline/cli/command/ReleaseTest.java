package charline.cli.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReleaseTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "none",
      value = {
        "2026-10-20 | of 2026-10-20, 1 month old",
        "2026-11-20 | of 2026-11-20, new",
        "2025-12-30 | of 2025-12-30, 10 months old",
        "2025-04-15 | of 2025-04-15, 19 months old; update it, or install a newer charline"
      })
  void the_age_of_the_java_is_told(String released, String words) {
    assertThat(Release.java(released, LocalDate.parse("2026-11-29")))
        .matches("Java \\d+\\.\\d+\\.\\d+ .*")
        .endsWith(" " + words);
  }

  @ParameterizedTest
  @CsvSource({"''", "unknown"})
  void a_java_that_does_not_tell_its_date_is_named_by_its_version(String released) {
    assertThat(Release.java(released, LocalDate.parse("2026-11-29")))
        .matches("Java \\d+\\.\\d+\\.\\d+");
  }
}
