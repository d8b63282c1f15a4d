package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import charline.exposure.Figure;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.picture.BarePicture;
import charline.trial.Circumstances;
import charline.trial.Knob;
import charline.trial.KnobValues;
import charline.trial.Outcome;
import charline.trial.Place;
import charline.trial.Reading;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;

/** Patches and readings are kept, read further, taken back and left half way. */
class BenchEntriesJourneyTest extends TabletVisit {
  @Test
  void how_a_pass_was_made_is_noted_with_a_patch_and_stays_for_the_next() throws IOException {
    serveWithTheJar();
    browser.open(bench.address() + "record?like=LP-01");
    browser.untilSays("#live", "at most");
    browser.tap("#made summary");
    browser.find("#k-figure").sendKeys("circle");
    browser.find("#k-place").sendKeys("arris");
    browser.find("#k-lines").sendKeys("100");
    browser.find("#k-strokes").sendKeys("9.0 11.0");
    browser.find("#k-stroke-length").sendKeys("200");
    browser.tap("#count");
    assertThat(keep(browser, "residue")).isEqualTo("P-0001");
    PatchEntry entry = recorded().get(0);
    Circumstances made = entry.patch().circumstances();
    assertThat(made.head().figure()).contains(Figure.CIRCLE);
    assertThat(made.head().linesPerSecond()).hasValue(100);
    assertThat(made.conditions().place()).contains(Place.ARRIS);
    assertThat(entry.typed())
        .containsEntry("figure", "circle")
        .containsEntry("lines", "100/s")
        .containsEntry("strokes", "9.0 11.0")
        .doesNotContainKey("hand");
    assertThat(KnobValues.of(entry.patch().settings())).containsEntry(Knob.HAND, 20.0);
    browser.tap("#next");
    browser.tap("#made summary");
    assertThat(browser.text("#made-words")).contains("circle", "arris").doesNotContain("stroke");
    assertThat(browser.find("#k-strokes").getAttribute("value"))
        .as("timed on that patch")
        .isEmpty();
  }

  @Test
  void three_patches_are_recorded_by_tapping() throws IOException {
    serveWithTheJar();
    browser.open(bench.address() + "record?like=LP-01");
    browser.untilSays("#live", "at most");
    String before = browser.text("#live");
    browser.tap("[data-for=k-power][data-step='5']");
    browser.tap("[data-for=k-power][data-step='5']");
    assertThat(browser.find("#k-power").getAttribute("value")).isEqualTo("40");
    browser.until("another risk", () -> browser.text("#live").equals(before) ? null : true);
    browser.tap("#count");
    assertThat(keep(browser, "residue")).isEqualTo("P-0001");

    browser.tap("#next");
    browser.tap("#k-hand");
    browser.tap("[data-digit='2']");
    browser.tap("[data-digit='2']");
    browser.tap("#pad-set");
    browser.tap("#count");
    browser.tap("#count");
    browser.tap("input[value=char]");
    browser.tap("input[value=residue]");
    browser.unfold("seen-more");
    browser.tap("input[name=soot][value=yes]");
    browser.tap("#keep");
    browser.untilSays("#kept-code", "P-0002");

    browser.tap("#next");
    browser.tap("input[value=char]");
    browser.tap("input[value=clean]");
    browser.tap("#keep");
    browser.untilSays("#kept-code", "P-0003");

    List<PatchEntry> all = recorded();
    assertThat(all).extracting(e -> e.patch().code()).containsExactly("P-0001", "P-0002", "P-0003");
    assertThat(all)
        .extracting(e -> e.patch().lastReading().outcome())
        .containsExactly(
            Outcome.parse("residue"), Outcome.parse("char+residue"), Outcome.parse("clean"));
    assertThat(all.get(0).patch().settings().power().value()).isEqualTo(40);
    assertThat(all.get(0).typed()).containsEntry("power", "40%").doesNotContainKey("spot");
    assertThat(all.get(1).typed()).containsEntry("hand", "22mm/s");
    assertThat(all.get(1).patch().lastReading().passes()).isEqualTo(2);
    assertThat(all.get(1).patch().lastReading().soot()).contains(true);
    assertThat(all.get(2).by()).contains("Runa");
  }

  @Test
  void further_passes_add_readings_and_the_last_entry_can_be_undone() {
    browser.open(bench.address() + "record?like=LP-01");
    assertThat(keep(browser, "residue")).isEqualTo("P-0001");
    browser.tap("#further");
    browser.tap("#count");
    assertThat(browser.find("#k-passes").getAttribute("value")).isEqualTo("2");
    assertThat(browser.find("#k-power").isEnabled()).isFalse();
    browser.tap("input[value=clean]");
    browser.tap("#keep");
    browser.untilSays("#kept-words", "clean after 2 passes");
    assertThat(patch("P-0001").patch().readings())
        .extracting(Reading::passes)
        .containsExactly(1, 2);

    browser.tap("#undo");
    browser.untilSays("#kept-words", "Taken back");
    browser.until("the undo", () -> patch("P-0001").patch().readings().size() == 1 ? true : null);
    browser.open(bench.address() + "patch/P-0001");
    assertThat(browser.text("main")).contains("residue after 1 pass", "undone at the bench");

    browser.tapText("Further passes");
    browser.untilSays("#title", "Further passes on P-0001");
    assertThat(browser.find("#k-passes").getAttribute("value")).isEqualTo("2");
  }

  @Test
  void a_patch_that_was_taken_back_is_no_longer_shown_as_kept() {
    browser.open(bench.address() + "record?like=LP-01");
    assertThat(keep(browser, "residue")).isEqualTo("P-0001");
    browser.tap("#undo");
    browser.untilSays("#kept-words", "P-0001 counts nowhere");
    assertThat(browser.text("#title")).isEqualTo("Taken back");
    assertThat(browser.text("#kept-title")).isEqualToIgnoringCase("Strike it out on the tape");
    assertThat(browser.find("#kept-code").getCssValue("text-decoration-line"))
        .isEqualTo("line-through");
    assertThat(browser.find("#further").isDisplayed()).isFalse();
    assertThat(browser.find("#undo").isDisplayed()).isFalse();
    browser.tap("#next");
    assertThat(keep(browser, "residue")).isEqualTo("P-0002");
    assertThat(browser.text("#title")).isEqualTo("Kept in the log");
    assertThat(browser.find("#kept-code").getCssValue("text-decoration-line")).isEqualTo("none");
  }

  @Test
  void a_reading_that_was_taken_back_can_be_given_again() {
    browser.open(bench.address() + "record?like=LP-01");
    assertThat(keep(browser, "residue")).isEqualTo("P-0001");
    browser.tap("#further");
    browser.tap("input[value=char]");
    browser.tap("#keep");
    browser.untilSays("#kept-words", "char after 2 passes");
    browser.tap("#undo");
    browser.untilSays("#title", "Taken back");
    browser.untilSays("#kept-words", "P-0001 is again residue after 1 pass");
    assertThat(browser.find("#kept-code").isDisplayed()).isFalse();
    browser.until("the undo", () -> patch("P-0001").patch().readings().size() == 1 ? true : null);
    browser.tap("#further");
    assertThat(browser.text("#title")).isEqualTo("Further passes on P-0001");
    assertThat(browser.text("#reading-of")).contains("P-0001 was residue after 1 pass.");
    browser.tap("input[value=clean]");
    browser.tap("#keep");
    browser.untilSays("#kept-words", "clean after 2 passes");
    assertThat(browser.complaints()).isEmpty();
    assertThat(patch("P-0001").patch().readings())
        .extracting(r -> r.outcome().text())
        .containsExactly("residue", "clean");
  }

  @Test
  void two_pages_at_once_undo_and_read_further_what_each_of_them_shows() {
    browser.open(bench.address() + "record?like=LP-01");
    assertThat(keep(browser, "residue")).isEqualTo("P-0001");
    String first = browser.driver().getWindowHandle();
    browser.newTab();
    browser.open(bench.address() + "record?like=LP-01");
    browser.tap("input[value=clean]");
    browser.tap("#keep");
    browser.untilSays("#kept-code", "P-0002");
    String second = browser.driver().getWindowHandle();

    browser.driver().switchTo().window(first);
    assertThat(browser.text("#kept-code")).isEqualTo("P-0001");
    browser.tap("#undo");
    browser.untilSays("#kept-words", "Taken back: P-0001");
    browser.until("the undo", () -> patch("P-0001").voided().isPresent() ? true : null);
    assertThat(patch("P-0002").voided()).isEmpty();

    browser.driver().switchTo().window(second);
    browser.tap("#further");
    assertThat(browser.text("#title")).isEqualTo("Further passes on P-0002");
  }

  @Test
  void a_second_tap_where_keep_was_takes_nothing_back() {
    browser.size(740, 360);
    browser.open(bench.address() + "record?like=LP-01");
    browser.untilSays("#live", "at most");
    browser.tap("input[value=residue]");
    // The short while in which taps are not taken lasts until this test lets it end.
    browser.script(
        "const real = setTimeout; window.ends = [];window.setTimeout = (f, ms, ...a) => ms >= 1000"
            + " && ms < 2000 ? window.ends.push(f) : real(f, ms, ...a)");
    browser.tap("#keep");
    assertThat(kept()).isEqualTo("P-0001");
    for (String id : List.of("undo", "further", "next")) {
      WebElement button = browser.find("#" + id);
      browser.script("arguments[0].scrollIntoView({block:'center'})", button);
      new Actions(browser.driver()).moveToElement(button).click().perform();
      browser.script("arguments[0].focus()", button);
      assertThat(browser.script("return document.activeElement.id")).isNotEqualTo(id);
    }
    assertThat(browser.text("#title")).isEqualTo("Kept in the log");
    assertThat(browser.find("#undo").isDisplayed()).isTrue();
    browser.script("window.ends.forEach(f => f())");
    browser.tap("#undo");
    browser.untilSays("#title", "Taken back");
    browser.until("the undo", () -> patch("P-0001").voided().isPresent() ? true : null);
  }

  @Test
  void a_patch_left_half_way_comes_back_as_it_was_left() throws IOException {
    Path photo = folder.resolve("patch.png");
    browser.open(bench.address());
    browser.picture(photo);
    browser.open(bench.address() + "record?like=LP-01");
    assertThat(keep(browser, "residue")).isEqualTo("P-0001");
    browser.tap("#next");
    browser.type("#k-power", "47");
    browser.unfold("lesser");
    browser.tap("input[name=form][value=timed]");
    browser.type("#k-seconds", "9");
    browser.tap("#count");
    browser.tap("#count");
    browser.tap("input[value=char]");
    browser.unfold("seen-more");
    browser.tap("input[name=soot][value=yes]");
    browser.unfold("seen-more");
    browser.type("#note", "north gable");
    browser.find("#photo").sendKeys(photo.toString());
    browser.until(
        "the photo on this device",
        () -> browser.text("#photo-words").contains("It is kept") ? true : null);

    browser.open(bench.address() + "window");
    browser.open(bench.address() + "record");
    assertThat(browser.text("#title")).isEqualTo("Record a patch");
    assertThat(browser.find("#kept").isDisplayed()).isFalse();
    assertThat(value("#k-power")).isEqualTo("47");
    assertThat(value("#k-seconds")).isEqualTo("9");
    assertThat(browser.find("#k-seconds").isDisplayed()).isTrue();
    assertThat(value("#k-passes")).isEqualTo("2");
    assertThat(browser.text("#counted")).isEqualTo("(2 so far)");
    assertThat(browser.find("input[value=char]").isSelected()).isTrue();
    assertThat(browser.find("input[name=soot][value=yes]").isSelected()).isTrue();
    assertThat(value("#note")).isEqualTo("north gable");
    browser.until(
        "the photo again", () -> browser.find("#photo-shown").isDisplayed() ? true : null);
    browser.type("#k-area", "25");
    browser.tap("#keep");
    browser.untilSays("#kept-code", "P-0002");
    browser.until("the photo in the log", () -> photosOf("P-0002") > 0 ? true : null);
    assertThat(patch("P-0002").patch().settings().power().value()).isEqualTo(47);

    browser.open(bench.address() + "record");
    assertThat(browser.text("#title")).isEqualTo("Kept in the log");
    browser.tap("#next");
    browser.open(bench.address() + "record");
    assertThat(browser.text("#title")).isEqualTo("Record a patch");
    assertThat(browser.all("input[name=outcome]:checked")).isEmpty();
    assertThat(value("#note")).isEmpty();
    assertThat(browser.find("#photo-shown").isDisplayed()).isFalse();
  }

  @Test
  void a_further_reading_left_half_way_comes_back_too_and_a_link_with_settings_goes_first() {
    browser.open(bench.address() + "record?like=LP-01");
    assertThat(keep(browser, "residue")).isEqualTo("P-0001");
    browser.tap("#further");
    browser.tap("input[value=tint]");
    browser.open(bench.address() + "ask");
    browser.open(bench.address() + "record");
    assertThat(browser.text("#title")).isEqualTo("Further passes on P-0001");
    assertThat(browser.find("input[value=tint]").isSelected()).isTrue();
    assertThat(browser.find("#k-power").isEnabled()).isFalse();
    browser.open(bench.address() + "record?like=LP-01&power=33&pace=21");
    assertThat(browser.text("#title")).isEqualTo("Record a patch");
    assertThat(value("#k-power")).isEqualTo("33");
    assertThat(browser.all("input[name=outcome]:checked")).isEmpty();
    browser.type("#k-power", "34");
    browser.reload();
    assertThat(value("#k-power")).isEqualTo("34");
  }

  @Test
  void what_stays_as_it_was_burned_is_a_line_in_place_of_knobs() {
    browser.open(bench.address() + "record?like=LP-01");
    assertThat(keep(browser, "residue")).isEqualTo("P-0001");
    browser.tap("#further");
    for (String css : List.of("#k-power", "#k-hand", "#lesser summary", "#made summary")) {
      assertThat(browser.find(css).isDisplayed()).as(css).isFalse();
    }
    assertThat(browser.text("#as-burned"))
        .startsWith("Burned at 30 %, hand speed 40 mm/s, scan width 60 mm, spot 0.5 mm, rate");
    assertThat(browser.find("#k-passes").isEnabled()).isTrue();
    browser.tap("input[value=clean]");
    browser.tap("#keep");
    browser.untilSays("#kept-words", "clean after 2 passes");
    browser.tap("#next");
    assertThat(browser.find("#k-power").isDisplayed()).isTrue();
    assertThat(browser.find("#as-burned").isDisplayed()).isFalse();
  }

  @Test
  void a_photo_is_kept_with_its_patch_and_shown_with_its_checksum() throws IOException {
    Path photo = folder.resolve("patch.png");
    browser.open(bench.address());
    browser.picture(photo);
    browser.open(bench.address() + "record?like=LP-01");
    browser.unfold("seen-more");
    browser.find("#photo").sendKeys(photo.toString());
    assertThat(keep(browser, "clean")).isEqualTo("P-0001");
    browser.until("the photo in the log", () -> photosOf("P-0001") > 0 ? true : null);
    browser.open(bench.address() + "patch/P-0001");
    WebElement shown = browser.find("figure img");
    browser.until(
        "the photo",
        () ->
            (Boolean) browser.script("return arguments[0].naturalWidth > 0", shown) ? true : null);
    try (Logbook log = Logbook.open(file, Clock.systemDefaultZone())) {
      assertThat(log.photos("P-0001"))
          .singleElement()
          .satisfies(
              p -> {
                assertThat(log.photoContent(p.id()))
                    .hasBinaryContent(BarePicture.of(Files.readAllBytes(photo)).content());
                assertThat(browser.text("figcaption")).isEqualTo("SHA-256 " + p.sha256());
              });
    }
  }
}
