package charline.sample;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;

class BoathouseTrialsTest {
  private static final Path FOLDER = Path.of("sample-trials");

  @Test
  void the_sheets_at_the_top_of_the_project_are_what_the_generator_writes() throws IOException {
    Map<String, String> sheets = BoathouseTrials.sheets();
    for (Map.Entry<String, String> sheet : sheets.entrySet()) {
      assertThat(Files.readAllBytes(FOLDER.resolve(sheet.getKey())))
          .as(sheet.getKey())
          .isEqualTo(sheet.getValue().getBytes(java.nio.charset.StandardCharsets.UTF_8));
    }
  }

  @Test
  void no_sheet_lies_about_without_a_scenario() throws IOException {
    try (var files = Files.list(FOLDER)) {
      assertThat(files.map(f -> f.getFileName().toString()).filter(f -> f.contains("-on-")))
          .containsExactlyInAnyOrderElementsOf(BoathouseTrials.sheets().keySet());
    }
  }

  @Test
  void every_first_patch_is_in_the_lower_third_of_the_doses_tried() {
    for (SampleScenario s : BoathouseScenarios.all()) {
      String[] first =
          BoathouseTrials.sheets().get(s.file()).lines().skip(1).findFirst().get().split(",");
      double dose = s.rig().dose(Double.parseDouble(first[8]), Double.parseDouble(first[16]));
      double share = Math.log(dose / s.lowest()) / Math.log(s.highest() / s.lowest());
      assertThat(share).as(s.file()).isLessThan(1.0 / 3);
    }
  }
}
