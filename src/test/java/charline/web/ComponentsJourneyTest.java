package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.Test;

/**
 * Every component in every state, for readers and gloves, light and dark. With {@code
 * -Dcharline.pictures=reports} pictures go to target/bench, and to reports, where they are kept.
 */
class ComponentsJourneyTest {
  private static final int PICTURE_WIDTH = 1000;

  @Test
  void every_component_can_be_read_and_used_by_anyone() throws IOException {
    Path shots = Files.createDirectories(Path.of("target", "bench"));
    Path page = ComponentsPage.write(shots);
    SoftAssertions all = new SoftAssertions();
    for (boolean dark : new boolean[] {false, true}) {
      try (Browser browser = Browser.open(dark)) {
        String theme = dark ? "dark" : "light";
        for (int width : new int[] {320, 390, PICTURE_WIDTH}) {
          browser.size(width, 900);
          browser.open(page.toUri().toString());
          String what = width + " px, " + theme;
          all.assertThat(Accessible.violations(browser)).as(what).isEmpty();
          all.assertThat(Accessible.small(browser)).as("targets, " + what).isEmpty();
          all.assertThat(browser.script("return document.documentElement.scrollWidth"))
              .as(what)
              .isEqualTo((long) width);
        }
        Path picture = shots.resolve("bench-components-" + theme + ".png");
        browser.wholePicture(picture, PICTURE_WIDTH);
        String keep = System.getProperty("charline.pictures", "");
        if (!keep.isEmpty()) {
          Files.copy(
              picture,
              Path.of(keep, picture.getFileName().toString()),
              StandardCopyOption.REPLACE_EXISTING);
        }
      }
    }
    all.assertAll();
  }

  @Test
  void text_grows_with_the_size_that_the_person_has_set() throws IOException {
    Path page = ComponentsPage.write(Files.createDirectories(Path.of("target", "bench")));
    try (Browser browser = Browser.open(false).size(390, 844)) {
      browser.open(page.toUri().toString());
      Number usual = heightOfAButton(browser);
      browser.script("document.documentElement.style.fontSize = '200%'");
      assertThat(heightOfAButton(browser).doubleValue()).isGreaterThan(1.5 * usual.doubleValue());
      assertThat(browser.script("return document.documentElement.scrollWidth")).isEqualTo(390L);
    }
  }

  private static Number heightOfAButton(Browser browser) {
    return (Number) browser.script("return document.querySelector('button.wide').offsetHeight");
  }
}
