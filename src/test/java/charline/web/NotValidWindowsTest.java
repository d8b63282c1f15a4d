package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pages of windows before and after the rig has lost a fifth of its power. */
class NotValidWindowsTest {
  private static final String LATEX = "?family=latex&wood=pine";
  private static final String CLEAR_COAT = "?family=clear+coat&wood=larch";

  @AutoClose private final ServedLog served;
  private final Path folder;

  NotValidWindowsTest(@TempDir Path folder) {
    this.folder = folder;
    served = new ServedLog(folder, "latex-on-pine", "clear-coat-on-larch");
  }

  /** The list waits for no models, so each is asked for before. */
  private String list() throws IOException, InterruptedException {
    served.page("window" + LATEX);
    served.page("window" + CLEAR_COAT);
    return served.page("window");
  }

  private void losePower() {
    served.charline("rig check heron --power 100% --metered 240");
  }

  /** What the command line's sheet says of it, with its topic. */
  private String cautionOfTheCommandLine() throws IOException {
    Path sheet = folder.resolve("latex.html");
    served.charline("sheet latex pine --to " + sheet);
    Matcher caution = Pattern.compile("<b>Not valid\\.</b> [^<]+").matcher(Files.readString(sheet));
    assertThat(caution.find()).isTrue();
    assertThat(caution.group())
        .startsWith("<b>Not valid.</b> Rig heron has drifted since 2026-11-20: check the")
        .endsWith("Trials from before then do not describe the rig as it is now.");
    return caution.group();
  }

  @Test
  void while_the_rig_is_what_it_was_no_page_says_not_valid() throws Exception {
    assertThat(served.page("window" + LATEX))
        .contains("Start setting")
        .doesNotContainIgnoringCase("not valid");
    assertThat(list())
        .contains("<span class=\"verdict\">window, to confirm</span>")
        .doesNotContain("being computed")
        .doesNotContainIgnoringCase("not valid");
    assertThat(served.page("sheet" + LATEX)).doesNotContainIgnoringCase("not valid");
  }

  @Test
  void a_window_says_before_all_else_that_the_rig_has_drifted() throws Exception {
    served.page("window" + LATEX); // so that the models and what was said of them are at hand
    losePower();

    String window = served.page("window" + LATEX);
    assertThat(window).containsOnlyOnce(cautionOfTheCommandLine());
    assertThat(window.indexOf("Not valid")).isLessThan(window.indexOf("class=\"verdict"));
  }

  @Test
  void a_sheet_has_the_caution_of_the_command_lines_sheet_before_the_others() throws Exception {
    losePower();

    String caution = cautionOfTheCommandLine();
    assertThat(served.page("sheet" + LATEX))
        .containsOnlyOnce(caution)
        .containsPattern("<div class=\"cautions\">\\s*<p>" + Pattern.quote(caution));
  }

  @Test
  void a_window_and_a_sheet_say_that_the_rigs_last_patch_had_another_spot() throws Exception {
    served.charline("patch add --like LP-24 --spot 0.35mm --outcome clean --by Runa");

    String caution =
        "<b>Spot changed.</b> The last patch on rig heron had a spot of 0.35 mm, but this"
            + " answer is for 0.5 mm, as in most patches.";
    assertThat(served.page("window" + LATEX)).containsOnlyOnce(caution);
    assertThat(served.page("sheet" + LATEX))
        .containsPattern("<div class=\"cautions\">\\s*<p>" + Pattern.quote(caution));
  }

  private String home(String words) throws Exception {
    String part = "";
    for (int look = 0; look < 600 && !part.contains(words); look++) {
      part = served.page("home/next");
      Thread.sleep(100);
    }
    assertThat(part).contains(words);
    return part;
  }

  @Test
  void home_names_a_window_beside_the_bench_that_changed() throws Exception {
    list();
    assertThat(served.page("home/next")).contains("clear coat on larch").doesNotContain("; was: ");
    for (int board = 1; board <= 2; board++) {
      served.post("put-right/board/void", "of=wall+panel+offcut+%d&why=lost".formatted(board));
    }
    assertThat(home("; was: "))
        .contains("latex on pine, pulsed 1064 nm<small>", "; was: window, to confirm</small>");
  }

  @Test
  void home_names_a_window_beside_the_bench_that_is_not_valid_any_more() throws Exception {
    list();
    losePower();
    assertThat(home("do not use it now"))
        .contains("latex on pine, pulsed 1064 nm<small>window: do not use it now</small>");
  }

  @Test
  void a_list_marks_the_windows_of_the_rig_and_says_once_what_to_do() throws Exception {
    losePower();

    assertThat(list())
        .contains("<span class=\"verdict\">window, not valid</span>")
        .contains("<span class=\"verdict\">none</span>")
        .containsOnlyOnce(cautionOfTheCommandLine());
  }
}
