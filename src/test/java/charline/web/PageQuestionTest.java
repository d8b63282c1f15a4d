package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the command line may ask of a window beside its limits, the page may ask too. */
class PageQuestionTest {
  @AutoClose private final ServedLog served;

  PageQuestionTest(@TempDir Path folder) {
    served = new ServedLog(folder, "primer-on-oak", "shellac-on-oak", "latex-on-pine");
  }

  @Test
  void a_window_may_borrow_from_other_trials_and_says_what_it_did() throws Exception {
    String own = "window?family=shellac&wood=oak";
    assertThat(served.page(own)).doesNotContain("orrowed");
    String lent = served.page(own + "&borrow=yes");
    assertThat(lent).contains("orrowed");
    assertThat(lent).as("asks the same again").contains("borrow=yes");
    assertThat(served.page("sheet" + own.substring(6) + "&borrow=yes")).contains("orrowed");
  }

  @Test
  void a_coat_that_was_not_tried_is_refused_as_at_the_terminal() throws Exception {
    String refused = served.refusal("window?family=latex&wood=pine&tone=dark");
    assertThat(refused).contains("The tone must be one that was tried, not dark");
    assertThat(served.refusal("window?family=latex&wood=pine&thickness=5mm"))
        .contains("The thickness must be");
  }
}
