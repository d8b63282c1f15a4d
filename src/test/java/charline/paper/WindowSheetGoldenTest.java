package charline.paper;

import static org.assertj.core.api.Assertions.assertThat;

import charline.window.JobRisk;
import charline.window.Recommendation;
import charline.window.Verdict;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Sheets stay as they are, byte for byte, until someone means to change them. */
class WindowSheetGoldenTest {
  private static final String REGENERATE = "charline.golden.write";

  @ParameterizedTest
  @EnumSource(Verdict.class)
  void a_sheet_of_every_verdict_is_unchanged(Verdict verdict) throws IOException {
    Recommendation recommendation = BoathousePapers.latexOnPine(verdict);
    String html =
        new WindowSheet(
                recommendation,
                BoathousePapers.LATEX,
                BoathousePapers.STAMP,
                JobRisk.of(recommendation, 4.5),
                BoathousePapers.next(recommendation),
                Optional.empty(),
                Optional.empty())
            .html();
    String name = verdict.word().replace(' ', '-') + ".html";
    if (Boolean.getBoolean(REGENERATE)) {
      Files.writeString(Path.of("src/test/resources/sheet", name), html);
    }
    assertThat(html)
        .as(
            "sheet/%s differs; if the change is meant, run mvn test -Dtest=WindowSheetGoldenTest"
                + " -D%s=true and look at the page before committing it",
            name, REGENERATE)
        .isEqualTo(Files.readString(Path.of("src/test/resources/sheet", name)));
  }
}
