package charline.shops;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.window.Verdict;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.xml.sax.InputSource;

class ResultsTest {
  @TempDir Path folder;

  private static Judged judged(int number, double charRisk) {
    return new Judged(
        "usual",
        number,
        Verdict.WINDOW,
        Optional.of(new Judged.Kept(charRisk, 0.95)),
        Optional.of(new Judged.Kept(0.06, 0.8)),
        Optional.empty(),
        Optional.of(
            new Judged.Piece(
                Optional.of(new Judged.Kept(charRisk, 0.93)),
                Optional.empty(),
                Optional.of(new Judged.Kept(0.03, 0.94)),
                Optional.of(new Judged.Kept(0.01, 0.91)),
                2,
                5,
                8)),
        List.of(
            new Judged.Probe(true, 0.03, 0.5, false), new Judged.Probe(false, 0.97, 0.25, true)),
        0.5);
  }

  @Test
  void a_line_reads_back_as_it_was() {
    Judged one = judged(3, 0.02);
    assertThat(Judged.read(one.line())).contains(one);
    assertThat(Judged.read(one.line().substring(0, one.line().length() - 5))).isEmpty();
  }

  @Test
  void a_run_cut_short_goes_on_where_it_stopped() throws IOException {
    Results first = Results.in(folder);
    first.add(judged(0, 0.02));
    first.add(judged(1, 0.02));
    Path file;
    try (Stream<Path> files = Files.list(folder)) {
      file = files.findAny().orElseThrow();
    }
    Files.writeString(file, "usual,2,WINDOW,0.0", StandardOpenOption.APPEND);

    Results again = Results.in(folder);
    assertThat(again.has(Scenario.usual(), 1)).isTrue();
    assertThat(again.has(Scenario.usual(), 2)).isFalse();
    again.add(judged(2, 0.02));
    assertThat(Results.in(folder).of(Scenario.usual(), 0, 5)).hasSize(3);
  }

  /** 0 of 20: the upper bound is 1 - 0.05^(1/20); Clopper and Pearson 1934. */
  @Test
  void shares_have_exact_bounds() {
    assertThat(new Share(0, 20).upper()).isCloseTo(1 - Math.pow(0.05, 0.05), within(1e-9));
    assertThat(new Share(20, 20).lower()).isCloseTo(Math.pow(0.05, 0.05), within(1e-9));
    assertThat(new Share(3, 40).words()).isEqualTo("3 of 40 (2 to 18 %)");
    assertThat(new Share(0, 0).words()).isEqualTo("none");
    assertThat(new Share(9, 30).surelyAbove(0.1)).isTrue();
    assertThat(new Share(6, 30).surelyAbove(0.1)).isFalse();
  }

  @Test
  void the_report_counts_broken_promises_and_says_where_they_are_too_many() throws Exception {
    List<Judged> shops =
        IntStream.range(0, 20).mapToObj(n -> judged(n, n < 8 ? 0.09 : 0.02)).toList();
    new ValidationReport(List.of(new Tally(Scenario.usual(), shops)), "run time 1 minute")
        .write(folder);

    assertThat(Files.readString(folder.resolve("validation.md")))
        .contains("20 invented shops of 1 kinds")
        .contains(
            "| usual | 20 | **8 of 20 (22 to 61 %)** | 4.80 % | 0 of 20 (0 to 14 %) | 95.0 % | **8"
                + " of 20 (22 to 61 %)** | 0 of 20 (0 to 14 %) |")
        .contains(
            "| usual | placed | 20 of 20 (86 to 100 %) | 0 of 20 (0 to 14 %) | 0 of 20 (0 to 14 %)"
                + " | 2.0 | 5.0 |")
        .contains("| usual | three clean at the start | 0 of 20 (0 to 14 %) |")
        .contains("Clearly broken more often than the confidence allows: usual.")
        .contains("## Expected beforehand")
        .contains("## What was changed");
    try (Stream<Path> figures = Files.list(folder).filter(f -> f.toString().endsWith(".svg"))) {
      List<Path> all = figures.toList();
      assertThat(all).hasSize(4);
      for (Path figure : all) {
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new InputSource(new StringReader(Files.readString(figure))));
      }
    }
  }
}
