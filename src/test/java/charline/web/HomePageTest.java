package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Home shows what to burn next of the trials that were worked on last. */
class HomePageTest {
  @AutoClose private final ServedLog served;

  HomePageTest(@TempDir Path folder) {
    served = new ServedLog(folder, "shellac-on-oak");
  }

  private static List<String> all(String regex, String page) {
    return Pattern.compile(regex).matcher(page).results().map(m -> m.group(1)).toList();
  }

  @Test
  void a_card_that_waits_for_another_says_for_which_and_cannot_be_tapped() throws Exception {
    String part = served.page("home/next");
    List<String> settings = all("<(?:strong|b)>(\\d[^<]+ mm/s)</", part);
    List<String> free = all("name=\"said\" value=\"([^\"]+)\"", part);
    assertThat(settings).hasSize(4);
    assertThat(part).contains("; only if " + settings.get(0) + " did not char");
    assertThat(free.size()).isBetween(1, settings.size() - 1);
    String waiting = all("<b>([^<]+)</b><br><span class=\"small\">[^<]* did not char", part).get(0);
    assertThat(free).noneMatch(said -> said.replace(", hand ", " at ").startsWith(waiting));
    assertThat(served.page("")).contains("data-part=\"/home/next\"");
  }
}
