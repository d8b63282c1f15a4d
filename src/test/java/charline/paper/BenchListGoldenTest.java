package charline.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import charline.exposure.Emission;
import charline.plan.NextPatches;
import charline.plan.Planner;
import charline.plan.Site;
import charline.trial.Stratum;
import charline.window.Requirements;
import charline.window.RigSetup;
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
    RigSetup bench =
        RigSetup.usual(BoathousePapers.rig("Heron & son", Emission.PULSED), BoathousePapers.BURNED);
    return Planner.withDefaults().first(bench, Requirements.USUAL, Site.OFFCUT, List.of(), 3);
  }

  @Test
  void the_first_list_of_a_finish_is_unchanged() throws IOException {
    String html =
        new BenchList(
                LATEX, threePatches(), List.of("P-0051", "P-0052", "P-0053"), BoathousePapers.STAMP)
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
  void a_list_says_what_comes_before_any_patch_and_warns_of_a_continuous_beam() {
    assertThat(page(LATEX))
        .contains("Eyewear marked for 1064 nm, extraction at the head and a fire watch of an hour")
        .doesNotContain("CW on wood is not recommended");
    assertThat(page(new Stratum("latex", "pine", Emission.CONTINUOUS, 1080)))
        .contains("CW on wood is not recommended", "Eyewear marked for 1080 nm");
  }

  private static String page(Stratum stratum) {
    return new BenchList(
            stratum, threePatches(), List.of("P-1", "P-2", "P-3"), BoathousePapers.STAMP)
        .html();
  }

  @Test
  void a_board_still_to_be_found_has_a_line_for_its_name() {
    assertThat(page(LATEX))
        .contains(
            "<b>new board 1</b> <i class=\"blank\"></i>", "Set up a new board before you record");
  }

  @Test
  void every_patch_needs_its_code() {
    NextPatches next = threePatches();

    assertThatExceptionOfType(IllegalArgumentException.class)
        .isThrownBy(() -> new BenchList(LATEX, next, List.of("P-0051"), BoathousePapers.STAMP))
        .withMessage("A bench list needs one code for each patch, not 1 for 3.");
  }
}
