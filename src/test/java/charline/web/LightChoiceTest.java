package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Trials with two kinds of light: the page asks which, as the command line does. */
class LightChoiceTest {
  private static final String ALKYD = "?family=alkyd&wood=any&risk=3";

  @AutoClose private final ServedLog served;

  LightChoiceTest(@TempDir Path folder) {
    served = new ServedLog(folder, "alkyd-on-pine-cw", "alkyd-on-plywood");
  }

  @Test
  void a_window_of_two_kinds_of_light_is_a_choice_that_keeps_the_question() throws Exception {
    String choice = served.page("window" + ALKYD);
    assertThat(choice)
        .contains("Trials with different light are never judged together")
        .contains("alkyd on any wood, pulsed 1064 nm", "alkyd on any wood, cw 1080 nm")
        .contains("/window?family=alkyd&amp;wood=any&amp;light=cw-1080&amp;risk=3")
        .contains("/window?family=alkyd&amp;wood=any&amp;light=pulsed-1064&amp;risk=3")
        .doesNotContain("Start setting");

    assertThat(served.page("window" + ALKYD + "&light=cw-1080"))
        .contains("alkyd on any wood, cw 1080 nm")
        .doesNotContain("never judged together", "pulsed 1064 nm");
  }

  @Test
  void a_sheet_of_two_kinds_of_light_is_the_same_choice() throws Exception {
    assertThat(served.page("sheet" + ALKYD))
        .contains("/sheet?family=alkyd&amp;wood=any&amp;light=cw-1080&amp;risk=3")
        .contains("/sheet?family=alkyd&amp;wood=any&amp;light=pulsed-1064&amp;risk=3");
  }
}
