package charline.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import charline.exposure.Emission;
import charline.plan.NextPatches;
import charline.plan.Planner;
import charline.plan.Site;
import charline.trial.Stratum;
import charline.window.Asked;
import charline.window.Bench;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A bench list stays as it is, byte for byte, until someone means to change it. */
class BenchListGoldenTest {
  private static final String REGENERATE = "charline.golden.write";
  private static final Path GOLDEN = Path.of("src/test/resources/sheet/bench-list.html");
  private static final Stratum LATEX = new Stratum("latex", "pine", Emission.PULSED, 1064);

  private static NextPatches threePatches() {
    Bench bench = Bench.usual(Boathouse.rig("Heron & son", Emission.PULSED), Boathouse.BURNED);
    return Planner.withDefaults().first(bench, Asked.USUAL, Site.OFFCUT, List.of(), 3);
  }

  @Test
  void the_first_list_of_a_finish_is_unchanged() throws IOException {
    String html =
        new BenchList(LATEX, threePatches(), List.of("P-0051", "P-0052", "P-0053"), Boathouse.STAMP)
            .html();
    if (Boolean.getBoolean(REGENERATE)) {
      Files.writeString(GOLDEN, html);
    }
    assertThat(html)
        .as(
            "bench-list.html differs; if the change is meant, run mvn test"
                + " -Dtest=BenchListGoldenTest -D%s=true and look at the page before committing it",
            REGENERATE)
        .isEqualTo(Files.readString(GOLDEN));
    assertThat(html).contains("Heron &amp; son").doesNotContain("http");
  }

  @Test
  void every_patch_needs_its_code() {
    NextPatches next = threePatches();

    assertThatIllegalArgumentException()
        .isThrownBy(() -> new BenchList(LATEX, next, List.of("P-0051"), Boathouse.STAMP))
        .withMessage("A bench list needs one code for each patch, not 1 for 3.");
  }
}
