package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The page of a log of 3,000 patches on 350 boards, in 256 MB of memory: every page comes, at first
 * too, and a window and a drift that are waited for come before what else was asked.
 */
class LargeLogJourneyTest {
  private static final int COPIES = 22;
  private static final int SHOPS = 16;
  private static final long LONGEST_MINUTES = 30;
  private static final String LATEX = "?family=latex&wood=pine&light=pulsed-1064";
  private static final Path TRIALS = Path.of("sample-trials").toAbsolutePath();

  private static final List<String> PAGES =
      List.of(
          "",
          "home/next",
          "record?like=LP1-01",
          "ask",
          "ask?q=clean%20latex&sort=dose&page=3",
          "ask?q=&family=latex&wood=oak",
          "patch/LP1-01",
          "patch/LP1-01/amend",
          "boards?q=7",
          "board?of=wall%20panel%20offcut%201%20of%203",
          "recent",
          "set-up",
          "rig?of=heron",
          "put-right/board?of=wall%20panel%20offcut%201%20of%203",
          "log",
          "log/check/found",
          "log/export/patches",
          "window",
          "window" + LATEX,
          "onset" + LATEX,
          "removal" + LATEX,
          "next" + LATEX,
          "quote" + LATEX + "&area=4",
          "sheet" + LATEX,
          "compare?family=latex&wood=pine&a=passes:1&b=passes:2",
          "plans",
          "finish?name=wall%20panel%20latex");

  @TempDir Path folder;
  private final HttpClient client = HttpClient.newHttpClient();

  /** The sample trials again and again, on boards of several shops. */
  private Path sheet() throws IOException {
    List<String> lines = new ArrayList<>();
    List<Path> sheets;
    try (Stream<Path> files = Files.list(TRIALS)) {
      sheets = files.filter(f -> f.toString().contains("-on-")).sorted().toList();
    }
    for (int copy = 1; copy <= COPIES; copy++) {
      for (Path sheet : sheets) {
        List<String> rows = Files.readAllLines(sheet);
        if (lines.isEmpty()) {
          lines.add(rows.get(0));
        }
        for (String row : rows.subList(1, rows.size())) {
          String[] cells = row.split(",", 6);
          lines.add(
              String.join(
                  ",",
                  cells[0].replace("-", copy + "-"),
                  cells[1],
                  cells[2],
                  cells[3] + " of " + (copy % SHOPS + 1),
                  cells[4],
                  cells[5]));
        }
      }
    }
    return Files.write(folder.resolve("large.csv"), lines);
  }

  private String page(BenchProcess bench, String address) throws Exception {
    HttpResponse<String> answer =
        client.send(
            HttpRequest.newBuilder(URI.create(bench.address() + address)).build(),
            BodyHandlers.ofString());
    assertThat(answer.statusCode()).as("%s: %s", address, answer.body()).isEqualTo(200);
    return answer.body();
  }

  @Test
  void every_page_of_a_large_log_comes_in_bounded_memory() throws Exception {
    Path file = folder.resolve("large.db");
    String said =
        BenchProcess.run(
            folder,
            "--log",
            file.toString(),
            "import",
            sheet().toString(),
            "--rigs",
            TRIALS.resolve("rigs.csv").toString(),
            "--power-checks",
            TRIALS.resolve("power-checks.csv").toString());
    assertThat(said).contains("3102 patches with 11748 readings, 352 new boards");
    try (BenchProcess bench = BenchProcess.serveWithin("256m", file)) {
      for (String address : PAGES) {
        page(bench, address);
      }
      long end = System.nanoTime() + LONGEST_MINUTES * 60_000_000_000L;
      for (String address : List.of("rig?of=heron", "window" + LATEX)) {
        while (page(bench, address).contains("data-renewing")) {
          assertThat(System.nanoTime()).as("%s is still computed", address).isLessThan(end);
          Thread.sleep(500);
        }
      }
      for (String address : PAGES) {
        page(bench, address);
      }
      assertThat(page(bench, "window" + LATEX)).contains("<p class=\"verdict\">");
      assertThat(page(bench, "ask?q=")).contains("1 to 50 of 3102");
      assertThat(Pattern.compile("<option").matcher(page(bench, "record?like=LP1-01")).results())
          .hasSizeGreaterThan(352);
    }
  }
}
