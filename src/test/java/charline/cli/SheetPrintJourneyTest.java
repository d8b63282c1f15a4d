package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Sheets printed by a real browser: one page of paper each, whatever the verdict. */
class SheetPrintJourneyTest {
  @TempDir Path folder;

  @TempDir static Path logs;
  private static Shell shell;

  @BeforeAll
  static void import_the_boathouse() throws IOException {
    shell = new Shell(logs);
    try (Stream<Path> sheets = Files.list(Path.of("sample-trials"))) {
      String names =
          sheets
              .map(Path::toString)
              .filter(s -> s.contains("-on-"))
              .sorted()
              .reduce("", (a, b) -> a + " " + b);
      shell.mustDo(
          "import"
              + names
              + " --rigs sample-trials/rigs.csv --power-checks sample-trials/power-checks.csv");
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"latex pine", "varnish ash", "clear-coat larch", "shellac oak", "alkyd pine"})
  void a_sheet_prints_on_one_page(String stratum) throws Exception {
    Path browser = onPath("chromium");
    Path reader = onPath("pdfinfo");
    Path html = folder.resolve("sheet.html");
    Path pdf = folder.resolve("sheet.pdf");
    shell.mustDo("sheet " + stratum + " --to " + html);

    run(
        browser.toString(),
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--user-data-dir=" + folder.resolve("browser"),
        "--no-pdf-header-footer",
        "--print-to-pdf=" + pdf,
        html.toUri().toString());
    assertThat(run(reader.toString(), pdf.toString())).containsPattern("Pages:\\s+1\n");
  }

  /** A tool on the path; without it the test is passed over, unless the machine must have it. */
  private static Path onPath(String tool) {
    Path found =
        Stream.of(System.getenv("PATH").split(":"))
            .map(folder -> Path.of(folder, tool))
            .filter(Files::isExecutable)
            .findFirst()
            .orElse(null);
    if (!"required".equals(System.getenv("CHARLINE_BROWSER"))) {
      assumeTrue(found != null, () -> tool + " is not on this machine.");
    }
    assertThat(found).as("%s must be on the path", tool).isNotNull();
    return found;
  }

  private static String run(String... command) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(List.of(command)).redirectErrorStream(true).start();
    String printed = new String(process.getInputStream().readAllBytes());
    assertThat(process.waitFor()).as(printed).isZero();
    return printed;
  }
}
