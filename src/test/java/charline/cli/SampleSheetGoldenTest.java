package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The sample sheet in reports/ is what the program writes from the sample trials, byte for byte.
 */
class SampleSheetGoldenTest {
  private static final Path KEPT = Path.of("reports/sample-sheet.html");

  @TempDir Path folder;

  @Test
  void the_sample_sheet_is_the_one_in_reports() throws IOException {
    Path sheet = folder.resolve("sheet.html");
    new Shell(folder)
        .at("2026-10-20T09:00:00Z")
        .mustDo(
            "import sample-trials/latex-on-pine.csv --rigs sample-trials/rigs.csv"
                + " --power-checks sample-trials/power-checks.csv")
        .mustDo("sheet latex pine --to " + sheet);
    String html = Files.readString(sheet);
    if (Boolean.getBoolean("charline.golden.write")) {
      Files.writeString(KEPT, html);
    }
    assertThat(html)
        .as(
            "%s differs; if the change is meant, run mvn test -Dtest=SampleSheetGoldenTest"
                + " -Dcharline.golden.write=true, print the page anew and look at it",
            KEPT)
        .isEqualTo(Files.readString(KEPT));
  }
}
