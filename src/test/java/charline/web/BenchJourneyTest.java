package charline.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.exposure.Figure;
import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.picture.BarePicture;
import charline.quantity.Figures;
import charline.quantity.Measure;
import charline.refusal.Refusal;
import charline.trial.Circumstances;
import charline.trial.Knob;
import charline.trial.KnobValues;
import charline.trial.Outcome;
import charline.trial.Patch;
import charline.trial.Place;
import charline.trial.Reading;
import java.io.IOException;
import java.net.InetAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;

/**
 * Whole visits to the bench page, in a real browser. One browser serves all visits, each in a tab
 * of its own; visits that do not ask for the jar are served from here.
 */
class BenchJourneyTest {
  private static final List<String> SHEETS =
      List.of("latex-on-pine.csv", "varnish-on-ash.csv", "alkyd-on-pine-cw.csv");

  @TempDir static Path samples;
  @TempDir Path folder;

  private Path file;
  private ServedBench bench;
  private static Browser tablet;

  @BeforeAll
  static void import_the_trials_of_the_boathouse() throws Exception {
    tablet = Browser.open(false);
    Path trials = Path.of("sample-trials").toAbsolutePath();
    List<String> words =
        new ArrayList<>(List.of("--log", samples.resolve("boathouse.db").toString(), "import"));
    SHEETS.forEach(s -> words.add(trials.resolve(s).toString()));
    words.addAll(
        List.of(
            "--rigs", trials.resolve("rigs.csv").toString(),
            "--power-checks", trials.resolve("power-checks.csv").toString()));
    BenchProcess.run(samples, words.toArray(String[]::new));
  }

  @BeforeEach
  void begin() throws IOException {
    tablet.fresh().size(820, 1180);
    file = folder.resolve("boathouse.db");
    Files.copy(samples.resolve("boathouse.db"), file);
    bench = BenchHere.serve(file);
  }

  @AfterEach
  void end() {
    if (bench != null) {
      bench.close();
    }
  }

  @AfterAll
  static void close_the_browser() {
    if (tablet != null) {
      tablet.close();
    }
  }

  private void serveWithTheJar() throws IOException {
    bench.close();
    bench = BenchProcess.serve(file);
  }

  private List<PatchEntry> recorded() {
    try (Logbook log = Logbook.open(file, Clock.systemDefaultZone())) {
      return log.patches(Filter.ALL).stream()
          .filter(e -> e.patch().code().matches("[PW]-.*"))
          .toList();
    }
  }

  private PatchEntry patch(String code) {
    try (Logbook log = Logbook.open(file, Clock.systemDefaultZone())) {
      return log.patch(code);
    }
  }

  private String kept() {
    return tablet.until(
        "the code of a patch",
        () -> tablet.find("#kept-code").isDisplayed() ? tablet.text("#kept-code") : null);
  }

  private String value(String css) {
    return tablet.find(css).getAttribute("value");
  }

  @Test
  void how_a_pass_was_made_is_noted_with_a_patch_and_stays_for_the_next() throws IOException {
    serveWithTheJar();
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.untilSays("#live", "at most");
    tablet.tap("#made summary");
    tablet.find("#k-figure").sendKeys("circle");
    tablet.find("#k-place").sendKeys("arris");
    tablet.find("#k-lines").sendKeys("100");
    tablet.find("#k-strokes").sendKeys("9.0 11.0");
    tablet.find("#k-stroke-length").sendKeys("200");
    tablet.tap("#count");
    tablet.tap("input[value=residue]");
    tablet.tap("#keep");
    assertThat(kept()).isEqualTo("P-0001");
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
    tablet.tap("#next");
    tablet.tap("#made summary");
    assertThat(tablet.text("#made-words")).contains("circle", "arris").doesNotContain("stroke");
    assertThat(tablet.find("#k-strokes").getAttribute("value")).as("timed on that patch").isEmpty();
  }

  @Test
  void three_patches_are_recorded_by_tapping() throws IOException {
    serveWithTheJar();
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.untilSays("#live", "at most");
    String before = tablet.text("#live");
    tablet.tap("[data-for=k-power][data-step='5']");
    tablet.tap("[data-for=k-power][data-step='5']");
    assertThat(tablet.find("#k-power").getAttribute("value")).isEqualTo("40");
    tablet.until("another risk", () -> tablet.text("#live").equals(before) ? null : true);
    tablet.tap("#count");
    tablet.tap("input[value=residue]");
    tablet.tap("#keep");
    assertThat(kept()).isEqualTo("P-0001");

    tablet.tap("#next");
    tablet.tap("#k-hand");
    tablet.tap("[data-digit='2']");
    tablet.tap("[data-digit='2']");
    tablet.tap("#pad-set");
    tablet.tap("#count");
    tablet.tap("#count");
    tablet.tap("input[value=char]");
    tablet.tap("input[value=residue]");
    tablet.unfold("seen-more");
    tablet.tap("input[name=soot][value=yes]");
    tablet.tap("#keep");
    tablet.untilSays("#kept-code", "P-0002");

    tablet.tap("#next");
    tablet.tap("input[value=char]");
    tablet.tap("input[value=clean]");
    tablet.tap("#keep");
    tablet.untilSays("#kept-code", "P-0003");

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
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.tap("input[value=residue]");
    tablet.tap("#keep");
    assertThat(kept()).isEqualTo("P-0001");
    tablet.tap("#further");
    tablet.tap("#count");
    assertThat(tablet.find("#k-passes").getAttribute("value")).isEqualTo("2");
    assertThat(tablet.find("#k-power").isEnabled()).isFalse();
    tablet.tap("input[value=clean]");
    tablet.tap("#keep");
    tablet.untilSays("#kept-words", "clean after 2 passes");
    assertThat(patch("P-0001").patch().readings())
        .extracting(Reading::passes)
        .containsExactly(1, 2);

    tablet.tap("#undo");
    tablet.untilSays("#kept-words", "Taken back");
    tablet.until("the undo", () -> patch("P-0001").patch().readings().size() == 1 ? true : null);
    tablet.open(bench.address() + "patch/P-0001");
    assertThat(tablet.text("main")).contains("residue after 1 pass", "undone at the bench");

    tablet.tapText("Further passes");
    tablet.untilSays("#title", "Further passes on P-0001");
    assertThat(tablet.find("#k-passes").getAttribute("value")).isEqualTo("2");
  }

  @Test
  void a_patch_that_was_taken_back_is_no_longer_shown_as_kept() {
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.tap("input[value=residue]");
    tablet.tap("#keep");
    assertThat(kept()).isEqualTo("P-0001");
    tablet.tap("#undo");
    tablet.untilSays("#kept-words", "P-0001 counts nowhere");
    assertThat(tablet.text("#title")).isEqualTo("Taken back");
    assertThat(tablet.text("#kept-title")).isEqualToIgnoringCase("Strike it out on the tape");
    assertThat(tablet.find("#kept-code").getCssValue("text-decoration-line"))
        .isEqualTo("line-through");
    assertThat(tablet.find("#further").isDisplayed()).isFalse();
    assertThat(tablet.find("#undo").isDisplayed()).isFalse();
    tablet.tap("#next");
    tablet.tap("input[value=residue]");
    tablet.tap("#keep");
    assertThat(kept()).isEqualTo("P-0002");
    assertThat(tablet.text("#title")).isEqualTo("Kept in the log");
    assertThat(tablet.find("#kept-code").getCssValue("text-decoration-line")).isEqualTo("none");
  }

  @Test
  void a_reading_that_was_taken_back_can_be_given_again() {
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.tap("input[value=residue]");
    tablet.tap("#keep");
    assertThat(kept()).isEqualTo("P-0001");
    tablet.tap("#further");
    tablet.tap("input[value=char]");
    tablet.tap("#keep");
    tablet.untilSays("#kept-words", "char after 2 passes");
    tablet.tap("#undo");
    tablet.untilSays("#title", "Taken back");
    tablet.untilSays("#kept-words", "P-0001 is again residue after 1 pass");
    assertThat(tablet.find("#kept-code").isDisplayed()).isFalse();
    tablet.until("the undo", () -> patch("P-0001").patch().readings().size() == 1 ? true : null);
    tablet.tap("#further");
    assertThat(tablet.text("#title")).isEqualTo("Further passes on P-0001");
    assertThat(tablet.text("#reading-of")).contains("P-0001 was residue after 1 pass.");
    tablet.tap("input[value=clean]");
    tablet.tap("#keep");
    tablet.untilSays("#kept-words", "clean after 2 passes");
    assertThat(tablet.complaints()).isEmpty();
    assertThat(patch("P-0001").patch().readings())
        .extracting(r -> r.outcome().text())
        .containsExactly("residue", "clean");
  }

  @Test
  void two_pages_at_once_undo_and_read_further_what_each_of_them_shows() {
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.tap("input[value=residue]");
    tablet.tap("#keep");
    assertThat(kept()).isEqualTo("P-0001");
    String first = tablet.driver().getWindowHandle();
    tablet.newTab();
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.tap("input[value=clean]");
    tablet.tap("#keep");
    tablet.untilSays("#kept-code", "P-0002");
    String second = tablet.driver().getWindowHandle();

    tablet.driver().switchTo().window(first);
    assertThat(tablet.text("#kept-code")).isEqualTo("P-0001");
    tablet.tap("#undo");
    tablet.untilSays("#kept-words", "Taken back: P-0001");
    tablet.until("the undo", () -> patch("P-0001").voided().isPresent() ? true : null);
    assertThat(patch("P-0002").voided()).isEmpty();

    tablet.driver().switchTo().window(second);
    tablet.tap("#further");
    assertThat(tablet.text("#title")).isEqualTo("Further passes on P-0002");
  }

  @Test
  void a_second_tap_where_keep_was_takes_nothing_back() {
    tablet.size(740, 360);
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.untilSays("#live", "at most");
    tablet.tap("input[value=residue]");
    // The short while in which taps are not taken lasts until this test lets it end.
    tablet.script(
        "const real = setTimeout; window.ends = [];window.setTimeout = (f, ms, ...a) => ms >= 1000"
            + " && ms < 2000 ? window.ends.push(f) : real(f, ms, ...a)");
    tablet.tap("#keep");
    assertThat(kept()).isEqualTo("P-0001");
    for (String id : List.of("undo", "further", "next")) {
      WebElement button = tablet.find("#" + id);
      tablet.script("arguments[0].scrollIntoView({block:'center'})", button);
      new Actions(tablet.driver()).moveToElement(button).click().perform();
      tablet.script("arguments[0].focus()", button);
      assertThat(tablet.script("return document.activeElement.id")).isNotEqualTo(id);
    }
    assertThat(tablet.text("#title")).isEqualTo("Kept in the log");
    assertThat(tablet.find("#undo").isDisplayed()).isTrue();
    tablet.script("window.ends.forEach(f => f())");
    tablet.tap("#undo");
    tablet.untilSays("#title", "Taken back");
    tablet.until("the undo", () -> patch("P-0001").voided().isPresent() ? true : null);
  }

  @Test
  void a_patch_left_half_way_comes_back_as_it_was_left() throws IOException {
    Path photo = folder.resolve("patch.png");
    tablet.open(bench.address());
    tablet.picture(photo);
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.tap("input[value=residue]");
    tablet.tap("#keep");
    assertThat(kept()).isEqualTo("P-0001");
    tablet.tap("#next");
    tablet.type("#k-power", "47");
    tablet.unfold("lesser");
    tablet.tap("input[name=form][value=timed]");
    tablet.type("#k-seconds", "9");
    tablet.tap("#count");
    tablet.tap("#count");
    tablet.tap("input[value=char]");
    tablet.unfold("seen-more");
    tablet.tap("input[name=soot][value=yes]");
    tablet.unfold("seen-more");
    tablet.type("#note", "north gable");
    tablet.find("#photo").sendKeys(photo.toString());
    tablet.until(
        "the photo on this device",
        () -> tablet.text("#photo-words").contains("It is kept") ? true : null);

    tablet.open(bench.address() + "window");
    tablet.open(bench.address() + "record");
    assertThat(tablet.text("#title")).isEqualTo("Record a patch");
    assertThat(tablet.find("#kept").isDisplayed()).isFalse();
    assertThat(value("#k-power")).isEqualTo("47");
    assertThat(value("#k-seconds")).isEqualTo("9");
    assertThat(tablet.find("#k-seconds").isDisplayed()).isTrue();
    assertThat(value("#k-passes")).isEqualTo("2");
    assertThat(tablet.text("#counted")).isEqualTo("(2 so far)");
    assertThat(tablet.find("input[value=char]").isSelected()).isTrue();
    assertThat(tablet.find("input[name=soot][value=yes]").isSelected()).isTrue();
    assertThat(value("#note")).isEqualTo("north gable");
    tablet.until("the photo again", () -> tablet.find("#photo-shown").isDisplayed() ? true : null);
    tablet.type("#k-area", "25");
    tablet.tap("#keep");
    tablet.untilSays("#kept-code", "P-0002");
    tablet.until("the photo in the log", () -> photosOf("P-0002") > 0 ? true : null);
    assertThat(patch("P-0002").patch().settings().power().value()).isEqualTo(47);

    tablet.open(bench.address() + "record");
    assertThat(tablet.text("#title")).isEqualTo("Kept in the log");
    tablet.tap("#next");
    tablet.open(bench.address() + "record");
    assertThat(tablet.text("#title")).isEqualTo("Record a patch");
    assertThat(tablet.all("input[name=outcome]:checked")).isEmpty();
    assertThat(value("#note")).isEmpty();
    assertThat(tablet.find("#photo-shown").isDisplayed()).isFalse();
  }

  @Test
  void a_further_reading_left_half_way_comes_back_too_and_a_link_with_settings_goes_first() {
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.tap("input[value=residue]");
    tablet.tap("#keep");
    assertThat(kept()).isEqualTo("P-0001");
    tablet.tap("#further");
    tablet.tap("input[value=tint]");
    tablet.open(bench.address() + "ask");
    tablet.open(bench.address() + "record");
    assertThat(tablet.text("#title")).isEqualTo("Further passes on P-0001");
    assertThat(tablet.find("input[value=tint]").isSelected()).isTrue();
    assertThat(tablet.find("#k-power").isEnabled()).isFalse();
    tablet.open(bench.address() + "record?like=LP-01&power=33&pace=21");
    assertThat(tablet.text("#title")).isEqualTo("Record a patch");
    assertThat(value("#k-power")).isEqualTo("33");
    assertThat(tablet.all("input[name=outcome]:checked")).isEmpty();
    tablet.type("#k-power", "34");
    tablet.driver().navigate().refresh();
    assertThat(value("#k-power")).isEqualTo("34");
  }

  @Test
  void plain_limits_are_checked_before_an_entry_waits_on_the_device() {
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.untilSays("#live", "at most");
    tablet.connection(false);
    tablet.tap("input[value=tint]");
    tablet.type("#k-power", "140");
    tablet.tap("#keep");
    tablet.untilSays("#trouble", "Power must be between 0 and 100 %, not 140 %.");
    tablet.type("#k-power", "40");
    tablet.type("#k-hand", "-3");
    tablet.tap("#keep");
    tablet.untilSays("#trouble", "Hand speed must be above 0 mm/s, not -3 mm/s.");
    tablet.type("#k-hand", "quick");
    tablet.tap("#keep");
    tablet.untilSays("#trouble", "Hand speed must be a number in mm/s, not \"quick\".");
    tablet.type("#k-hand", "");
    tablet.tap("#keep");
    tablet.untilSays("#trouble", "Hand speed is not set; give it in mm/s.");
    tablet.type("#k-hand", "12,5");
    tablet.type("#k-passes", "0");
    tablet.tap("#keep");
    tablet.untilSays("#trouble", "Passes must be a whole number, 1 or more, not \"0\".");
    assertThat(tablet.module("queue.js", "m.queue().length")).isEqualTo(0L);
    tablet.type("#k-passes", "1");
    tablet.tap("#keep");
    assertThat(kept()).matches("W-[0-9A-Z]{4}");
    tablet.untilSays("#link", "1 entry waiting");
  }

  @Test
  void an_entry_that_the_log_refused_is_corrected_under_its_own_code() {
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.untilSays("#live", "at most");
    tablet.connection(false);
    tablet.type("#k-power", "55");
    tablet.type("#k-hand", "12mph"); // only the bench knows all units
    tablet.tap("#count");
    tablet.tap("#count");
    tablet.tap("input[value=char]");
    tablet.tap("input[value=residue]");
    tablet.unfold("seen-more");
    tablet.type("#note", "north gable");
    tablet.tap("#keep");
    String code = kept();
    tablet.tap("#next");
    tablet.type("#k-power", "61"); // the next patch is half-way when the refusal comes
    tablet.type("#k-hand", "20");
    tablet.connection(true);
    tablet.module("sending.js", "void m.flush()");
    tablet.untilSays("#link", "1 entry needs you");
    tablet.untilSays("#queue-list", "A speed must be in");
    assertThat(tablet.text("#queue-list")).contains(code, "55 %", "hand speed 12mph");
    tablet.tapText("Correct it");
    assertThat(tablet.text("#title")).isEqualTo("Correct " + code);
    tablet.untilSays("#reading-of", "A speed must be in");
    assertThat(value("#k-power")).isEqualTo("55");
    assertThat(value("#k-hand")).isEqualTo("12mph");
    assertThat(value("#k-passes")).isEqualTo("2");
    assertThat(tablet.find("input[value=char]").isSelected()).isTrue();
    assertThat(tablet.find("input[value=residue]").isSelected()).isTrue();
    assertThat(value("#note")).isEqualTo("north gable");

    tablet.open(bench.address() + "window"); // a correction too may be left half-way
    tablet.open(bench.address() + "record");
    assertThat(tablet.text("#title")).isEqualTo("Correct " + code);
    tablet.type("#k-hand", "12mpg");
    tablet.tap("#keep");
    tablet.untilSays("#trouble", "not \"12mpg\"");
    tablet.type("#k-hand", "12");
    tablet.tap("#keep");
    tablet.untilSays("#title", "Kept in the log");
    assertThat(tablet.text("#kept-code")).isEqualTo(code);
    tablet.until("nothing waiting", () -> tablet.text("#link").isEmpty() ? true : null);
    assertThat(recorded())
        .singleElement()
        .satisfies(
            e -> {
              assertThat(e.patch().code()).isEqualTo(code);
              assertThat(e.patch().lastReading().outcome().text()).isEqualTo("char+residue");
              assertThat(e.typed()).containsEntry("hand", "12mm/s");
            });
    tablet.tap("#next");
    assertThat(tablet.text("#title")).isEqualTo("Record a patch");
    assertThat(value("#k-power")).isEqualTo("61");
  }

  @Test
  void a_reading_that_the_log_refused_is_corrected_as_a_reading() {
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.tap("input[value=char]");
    tablet.tap("#keep");
    assertThat(kept()).isEqualTo("P-0001");
    tablet.connection(false);
    tablet.tap("#further");
    tablet.tap("input[value=clean]");
    tablet.tap("#keep");
    tablet.untilSays("#title", "Kept on this device");
    tablet.connection(true);
    tablet.module("sending.js", "void m.flush()");
    tablet.untilSays("#queue-list", "cannot be gone");
    tablet.tapText("Correct it");
    assertThat(tablet.text("#title")).isEqualTo("Correct the reading on P-0001");
    assertThat(tablet.find("#k-power").isEnabled()).isFalse();
    assertThat(value("#k-passes")).isEqualTo("2");
    tablet.tap("input[value=char]");
    tablet.tap("#keep");
    tablet.untilSays("#title", "Kept in the log");
    assertThat(patch("P-0001").patch().readings())
        .extracting(r -> r.outcome().text())
        .containsExactly("char", "char");
  }

  @Test
  void enter_sets_what_was_typed_on_the_number_pad() {
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.tap("#k-power");
    tablet.press("45\n");
    assertThat(value("#k-power")).isEqualTo("45");
    assertThat(tablet.find("#pad").isDisplayed()).isFalse();
    tablet.tap("#k-hand");
    tablet.press("12,5\n");
    assertThat(value("#k-hand")).isEqualTo("12.5");
    tablet.tap("#k-hand");
    tablet.press("99");
    tablet.script("document.getElementById('pad-cancel').focus()");
    tablet.press("\n");
    assertThat(value("#k-hand")).isEqualTo("12.5");
    assertThat(tablet.find("#pad").isDisplayed()).isFalse();
  }

  @Test
  void the_page_reads_numbers_exactly_as_the_bench_does() {
    tablet.open(bench.address() + "record?like=LP-01");
    for (String typed :
        List.of(
            "30",
            "1.5",
            "1,5",
            "0,125",
            "1,200",
            "1,20",
            "1,2345",
            "12,345,678",
            "1,200.5",
            ",5",
            "5.",
            "-3",
            "+4",
            "1e2",
            "1e400",
            "Infinity",
            "1 200",
            "1.2.3",
            "1,200 mm",
            "30mm",
            "30 MM",
            "2in",
            "quick",
            "0,600",
            "007",
            "-1,200",
            "1,5e3")) {
      Object value = tablet.module("numbers.js", "String(m.number(arguments[0]).value)", typed);
      Object unit = tablet.module("numbers.js", "m.number(arguments[0]).unit", typed);
      assertThat("NaN".equals(value) ? null : value + " " + unit)
          .as(typed)
          .isEqualTo(readByTheBench(typed));
    }
  }

  /** The number and its unit as typed, or null where it is refused whatever the unit. */
  private static String readByTheBench(String typed) {
    try {
      Measure.parse(typed, Measure.Quantity.LENGTH);
    } catch (Refusal e) {
      return null;
    }
    String unit = Measure.unit(typed).orElseThrow();
    double value = Measure.plainNumber(typed.substring(0, typed.length() - unit.length()));
    return Figures.plain(value) + " " + unit;
  }

  @Test
  void a_step_button_leaves_alone_what_could_be_read_in_two_ways_and_says_so() {
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.unfold("lesser");
    tablet.tap("input[name=form][value=scan]");
    for (String typed : List.of("1,200", "1.2m/s", "0x10", "quick")) {
      tablet.type("#k-scan", typed);
      tablet.tap("[data-for=k-scan][data-step='500']");
      assertThat(value("#k-scan")).isEqualTo(typed);
      assertThat(tablet.text("[data-row=scan] .unread"))
          .isEqualTo(
              "The buttons step a number in mm/s without commas between thousands, not \"%s\"; write it that way."
                  .formatted(typed));
    }
    tablet.type("#k-scan", "1200 mm/s");
    assertThat(tablet.all(".unread")).isEmpty();
    tablet.tap("[data-for=k-scan][data-step='500']");
    assertThat(value("#k-scan")).isEqualTo("1700");
    tablet.type("#k-passes", "1,5");
    tablet.tap("#count");
    assertThat(value("#k-passes")).isEqualTo("1,5");
    tablet.untilSays("[data-row=passes] .unread", "The buttons step a whole number");
    tablet.type("#k-power", "62,5");
    tablet.tap("[data-for=k-power][data-step='5']");
    assertThat(value("#k-power")).isEqualTo("67.5");
  }

  /** Long words about a setting come while a person taps a button again and again. */
  @ParameterizedTest
  @CsvSource({"820, 1180", "390, 844", "844, 390"})
  void the_knobs_stay_under_the_finger_whatever_the_risk_says(int width, int height) {
    tablet.size(width, height);
    tablet.open(bench.address() + "record?like=LP-01");
    String button = "[data-for=k-power][data-step='5']";
    tablet.until("the first answer", () -> shown().equals("null") ? null : true);
    tablet.script("arguments[0].scrollIntoView({block:'center'})", tablet.find(button));
    int top = top(button);
    for (String typed : List.of("0.6", "60", "99", "60", "7000", "60")) {
      String shown = shown();
      tablet.type("#k-power", typed);
      tablet.until("an answer to " + typed, () -> shown().equals(shown) ? null : true);
      assertThat(top(button)).as("the button's place with %s %%", typed).isCloseTo(top, within(2));
    }
  }

  private static int top(String css) {
    return tablet.find(css).getRect().getY() - scrolled();
  }

  private static int scrolled() {
    return ((Number) tablet.script("return Math.round(scrollY)")).intValue();
  }

  private static String shown() {
    return String.valueOf(tablet.script("return document.getElementById('live').dataset.shown"));
  }

  @Test
  void a_step_button_takes_no_fraction_for_a_percentage() {
    tablet.open(bench.address() + "record?like=LP-01");
    for (String typed : List.of("0.6", "1")) {
      tablet.type("#k-power", typed);
      tablet.tap("[data-for=k-power][data-step='5']");
      assertThat(value("#k-power")).isEqualTo(typed);
      tablet.untilSays("[data-row=power] .unread", "which could be a fraction");
    }
    tablet.type("#k-power", "6");
    tablet.tap("[data-for=k-power][data-step='-5']");
    assertThat(value("#k-power")).isEqualTo("1%"); // which asks nobody whether they are sure
    tablet.tap("[data-for=k-power][data-step='5']");
    assertThat(value("#k-power")).isEqualTo("6");
  }

  @Test
  void a_person_who_is_sure_of_one_value_is_asked_again_when_another_is_changed() {
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.type("#k-hand", "900");
    tablet.tap("input[value=clean]");
    tablet.tap("#keep");
    tablet.untilSays("#keep", "I am sure");
    tablet.unfold("seen-more");
    tablet.tap("#depth");
    tablet.press("9000\n");
    assertThat(tablet.text("#keep")).isEqualTo("Keep this patch");
    assertThat(tablet.find("#trouble").isDisplayed()).isFalse();
    tablet.tap("#keep");
    tablet.untilSays("#trouble", "Depth removed of 9000 um");
    tablet.type("#depth", "90");
    tablet.type("#k-hand", "30");
    assertThat(tablet.find("#trouble").isDisplayed()).isFalse();
    tablet.tap("#keep");
    assertThat(kept()).isEqualTo("P-0001");
  }

  @Test
  void the_number_pad_names_units_as_they_are_written() {
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.unfold("seen-more");
    tablet.tap("#depth");
    assertThat(tablet.text("#pad-title")).isEqualTo("Depth removed, µm"); // in capitals: MM
    tablet.tap("#pad-cancel");
    tablet.tap("#k-hand");
    assertThat(tablet.text("#pad-title")).isEqualTo("Hand speed, mm/s");
  }

  @Test
  void on_a_phone_on_its_side_the_number_is_seen_while_it_is_set() {
    tablet.size(740, 360);
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.tap("#k-power");
    assertThat(tablet.all("#pad-title, #pad-value, #pad button:not([hidden])"))
        .hasSize(16)
        .allSatisfy(e -> assertThat(inSight(e)).as(e.getAttribute("outerHTML")).isTrue());
    assertThat(tablet.script("return pad.scrollHeight <= pad.clientHeight")).isEqualTo(true);
  }

  @Test
  void what_stays_as_it_was_burned_is_a_line_in_place_of_knobs() {
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.tap("input[value=residue]");
    tablet.tap("#keep");
    assertThat(kept()).isEqualTo("P-0001");
    tablet.tap("#further");
    for (String css : List.of("#k-power", "#k-hand", "#lesser summary", "#made summary")) {
      assertThat(tablet.find(css).isDisplayed()).as(css).isFalse();
    }
    assertThat(tablet.text("#as-burned"))
        .startsWith("Burned at 30 %, hand speed 40 mm/s, scan width 60 mm, spot 0.5 mm, rate");
    assertThat(tablet.find("#k-passes").isEnabled()).isTrue();
    tablet.tap("input[value=clean]");
    tablet.tap("#keep");
    tablet.untilSays("#kept-words", "clean after 2 passes");
    tablet.tap("#next");
    assertThat(tablet.find("#k-power").isDisplayed()).isTrue();
    assertThat(tablet.find("#as-burned").isDisplayed()).isFalse();
  }

  @Test
  void an_entry_that_is_doubted_later_no_longer_says_that_it_will_be_sent() throws IOException {
    Path noPhoto = Files.writeString(folder.resolve("patch.jpg"), "no picture");
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.untilSays("#live", "at most");
    tablet.connection(false);
    tablet.type("#k-power", "0.6");
    tablet.unfold("seen-more");
    tablet.find("#photo").sendKeys(noPhoto.toString());
    tablet.tap("input[value=clean]");
    tablet.tap("#keep");
    String code = kept();
    tablet.untilSays("#kept-words", "waits on this device until the bench can be reached");
    tablet.connection(true);
    tablet.module("sending.js", "void m.flush()");
    tablet.untilSays("#queue-list", "Power of 0.6 can mean 60 % or 0.6 %");
    assertThat(tablet.text("#kept-words"))
        .isEqualTo(
            "clean after 1 pass, with a photo. It is not in the log yet: it waits on this device"
                + " and needs you.");
    tablet.tapText("I am sure: keep it");
    tablet.untilSays("#kept-words", "It is in the log.");
    tablet.untilSays("#queue-list", "Photo of " + code + ". A photo must be a JPEG");
    assertThat(patch(code).patch().settings().power().value()).isEqualTo(0.6);
  }

  @Test
  void a_comma_between_thousands_is_asked_about_and_never_taken_for_a_point() {
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.unfold("lesser");
    tablet.tap("input[name=form][value=scan]");
    tablet.tap("#k-scan");
    tablet.press("1,200\n");
    assertThat(value("#k-scan")).isEqualTo("1,200");
    tablet.untilSays("#live", "can be read in two ways");
    tablet.connection(false);
    tablet.tap("input[value=clean]");
    tablet.tap("#keep");
    tablet.untilSays(
        "#trouble",
        "Scan speed of 1,200 must be written without a comma, which could stand between"
            + " thousands.");
    assertThat(tablet.module("queue.js", "m.queue().length")).isEqualTo(0L);
  }

  @Test
  void a_refused_set_up_is_met_by_its_message() {
    tablet.size(360, 740);
    for (boolean scripts : new boolean[] {true, false}) {
      tablet.scripts(scripts);
      refusedInSight("board", Map.of("name", "sill offcut", "moisture", "150"), scripts);
      refusedInSight("finish", Map.of("name", "sill latex"), scripts);
      refusedInSight("rig", Map.of("name", "heron", "rated", "300"), scripts);
      refusedInSight("check", Map.of("percent", "150", "metered", "100"), scripts);
    }
  }

  private void refusedInSight(String form, Map<String, String> values, boolean scripts) {
    tablet.open(bench.address() + "set-up");
    tablet.tap("#form-" + form + " summary");
    values.forEach((name, v) -> tablet.type("#form-%s [name=%s]".formatted(form, name), v));
    tablet.tap("#form-" + form + " button.main");
    WebElement message = tablet.until(form + " refused", () -> shown(".trouble"));
    String where = form + (scripts ? "" : " without scripts");
    tablet.until("the message in sight, " + where, () -> inSight(message) ? true : null);
    if (scripts) {
      assertThat(tablet.driver().switchTo().activeElement()).as(form).isEqualTo(message);
    }
  }

  private boolean inSight(WebElement e) {
    return (Boolean)
        tablet.script(
            "const r = arguments[0].getBoundingClientRect(); return r.top >= 0 && r.bottom <="
                + " innerHeight",
            e);
  }

  private WebElement shown(String css) {
    return tablet.all(css).stream().filter(WebElement::isDisplayed).findFirst().orElse(null);
  }

  @Test
  void an_entry_made_without_connection_waits_survives_and_is_sent_once() throws IOException {
    serveWithTheJar();
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.untilSays("#live", "at most");
    tablet.connection(false);
    tablet.tap("input[value=tint]");
    tablet.tap("#keep");
    String code = kept();
    assertThat(code).matches("W-[0-9A-Z]{4}");
    tablet.untilSays("#kept-words", "waits on this device");
    tablet.untilSays("#link", "1 entry waiting");
    tablet.tap("#further");
    tablet.untilSays("#live", "No connection");
    tablet.tap("input[value=char]");
    tablet.tap("#keep");
    tablet.untilSays("#link", "2 entries waiting");
    assertThat(recorded()).isEmpty();

    bench = bench.again(); // whose pages have other form tokens now
    tablet.connection(true);
    tablet.open(bench.address() + "record");
    tablet.until("nothing waiting", () -> tablet.text("#link").isEmpty() ? true : null);
    assertThat(recorded())
        .singleElement()
        .satisfies(
            e -> {
              assertThat(e.patch().code()).isEqualTo(code);
              assertThat(e.patch().readings())
                  .extracting(r -> r.outcome().text())
                  .containsExactly("tint", "char");
            });
  }

  @Test
  void an_answer_that_was_lost_on_its_way_does_not_record_twice() {
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.script(
        "const real = window.fetch; let lost = false; window.fetch = async (...a) => {"
            + " const own = document.getElementById('kept-code')?.textContent || '';"
            + " if (lost && !own.startsWith('W-')) throw new TypeError('lost');"
            + " const r = await real(...a);"
            + " if (!lost && String(a[0]).startsWith('/entries')) { lost = true; throw new"
            + " TypeError('lost'); } return r; }");
    tablet.tap("input[value=clean]");
    tablet.tap("#keep");
    tablet.until(
        "nothing waiting",
        () ->
            tablet.find("#kept-code").isDisplayed() && tablet.text("#link").isEmpty()
                ? true
                : null);
    tablet.untilSays("#kept-code", "P-0001");
    tablet.untilSays("#queue-list", "Change the tape.");
    assertThat(recorded()).hasSize(1);
    tablet.tapText("Tape changed");
    tablet.until("no reminder", () -> tablet.find("#queue").isDisplayed() ? null : true);
  }

  @Test
  void a_doubtful_value_is_kept_only_by_a_person_who_is_sure() {
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.type("#k-hand", "900");
    tablet.tap("input[value=clean]");
    tablet.tap("#keep");
    tablet.untilSays("#trouble", "Hand speed of 900 mm/s is outside 0.5 to 500 mm/s");
    assertThat(recorded()).isEmpty();
    tablet.tapText("I am sure: keep it");
    assertThat(kept()).isEqualTo("P-0001");
  }

  @Test
  void the_stopwatch_turns_a_marked_area_into_a_dose() {
    tablet.open(bench.address() + "record?like=LP-01");
    holdTheClock();
    tablet.unfold("lesser");
    tablet.tap("input[name=form][value=timed]");
    tablet.unfold("lesser");
    tablet.type("#k-area", "25");
    pass(2);
    pass(3);
    assertThat(value("#k-passes")).isEqualTo("2");
    tablet.untilSays("#watch-words", "2 passes timed; their mean counts.");
    assertThat(value("#k-seconds")).isEqualTo("2.5");
    tablet.untilSays(
        "#live-does", "Dose 8.66 J/cm² a pass"); // 86.64 W by the meter x 2.5 s / 25 cm2
  }

  @Test
  void a_slip_on_the_stopwatch_counts_no_pass_and_the_last_pass_can_be_taken_back() {
    tablet.open(bench.address() + "record?like=LP-01");
    holdTheClock();
    tablet.unfold("lesser");
    tablet.tap("input[name=form][value=timed]");
    tablet.type("#k-seconds", "5");
    String before = value("#k-passes");
    tablet.tap("#watch");
    tick(0.2);
    tablet.tap("#watch");
    tablet.untilSays("#watch-words", "a pass shorter than 1 s does not count");
    assertThat(value("#k-passes")).isEqualTo(before);
    tick(3.8);
    tablet.tap("#watch");
    tablet.untilSays("#watch-words", "One pass timed");
    assertThat(value("#k-seconds")).isEqualTo("4");
    pass(10);
    assertThat(value("#k-seconds")).isEqualTo("7");
    assertThat(value("#k-passes")).isEqualTo("2");
    tablet.tapText("Take back the last pass");
    tablet.untilSays("#watch-words", "One pass timed");
    assertThat(value("#k-seconds")).isEqualTo("4");
    assertThat(value("#k-passes")).isEqualTo("1");
    tablet.tapText("Take back the last pass");
    assertThat(value("#k-seconds")).isEqualTo("5");
    assertThat(value("#k-passes")).isEqualTo(before);
    assertThat(tablet.find("#unlap").isDisplayed()).isFalse();
  }

  @Test
  void every_patch_begins_with_the_stopwatch_at_rest() {
    tablet.open(bench.address() + "record?like=LP-01");
    holdTheClock();
    tablet.unfold("lesser");
    tablet.tap("input[name=form][value=timed]");
    tablet.unfold("lesser");
    tablet.type("#k-area", "25");
    pass(4);
    tablet.tap("#watch");
    tick(2);
    tablet.tap("input[value=clean]");
    tablet.tap("#keep");
    assertThat(kept()).isEqualTo("P-0001");
    tablet.tap("#next");
    assertThat(tablet.text("#watch-do")).isEqualTo("Start the stopwatch");
    assertThat(tablet.find("#watch").getAttribute("aria-pressed")).isEqualTo("false");
    tablet.untilSays("#watch-words", "each stop counts one pass");
    assertThat(tablet.find("#unlap").isDisplayed()).isFalse();
    pass(6);
    tablet.untilSays("#watch-words", "One pass timed");
    assertThat(value("#k-seconds")).isEqualTo("6");
  }

  /** From here on the page's stopwatch goes by {@link #tick}. */
  private void holdTheClock() {
    tablet.script("window.held = 0; performance.now = () => window.held");
  }

  private void tick(double seconds) {
    tablet.script("window.held += 1000 * arguments[0]", seconds);
  }

  private void pass(double seconds) {
    tablet.tap("#watch");
    tick(seconds);
    tablet.tap("#watch");
  }

  @Test
  void a_photo_is_kept_with_its_patch_and_shown_with_its_checksum() throws IOException {
    Path photo = folder.resolve("patch.png");
    tablet.open(bench.address());
    tablet.picture(photo);
    tablet.open(bench.address() + "record?like=LP-01");
    tablet.unfold("seen-more");
    tablet.find("#photo").sendKeys(photo.toString());
    tablet.tap("input[value=clean]");
    tablet.tap("#keep");
    assertThat(kept()).isEqualTo("P-0001");
    tablet.until("the photo in the log", () -> photosOf("P-0001") > 0 ? true : null);
    tablet.open(bench.address() + "patch/P-0001");
    WebElement shown = tablet.find("figure img");
    tablet.until(
        "the photo",
        () -> (Boolean) tablet.script("return arguments[0].naturalWidth > 0", shown) ? true : null);
    try (Logbook log = Logbook.open(file, Clock.systemDefaultZone())) {
      assertThat(log.photos("P-0001"))
          .singleElement()
          .satisfies(
              p -> {
                assertThat(log.photoContent(p.id()))
                    .hasBinaryContent(BarePicture.of(Files.readAllBytes(photo)).content());
                assertThat(tablet.text("figcaption")).isEqualTo("SHA-256 " + p.sha256());
              });
    }
  }

  private int photosOf(String code) {
    try (Logbook log = Logbook.open(file, Clock.systemDefaultZone())) {
      return log.photos(code).size();
    }
  }

  @Test
  void the_log_is_asked_in_plain_words_and_a_result_is_used_again() {
    tablet.open(bench.address() + "ask");
    tablet.type("#q", "clean latex over pine");
    tablet.find("#q").sendKeys(Keys.ENTER);
    tablet.untilSays("#found", "patches on ");
    tablet.untilSays("main", "You ask for patches of latex, on pine");
    assertThat(tablet.all("table.patches tbody tr"))
        .isNotEmpty()
        .allSatisfy(row -> assertThat(row.getText()).contains("clean"));
    tablet.type("#q", "clear latxe");
    tablet.find("#q").sendKeys(Keys.ENTER);
    tablet.untilSays(".trouble", "latex");
    tablet.open(bench.address() + "ask?q=clean%20latex");
    String code = tablet.text("table.patches tbody th a");
    Patch found = patch(code).patch();
    tablet.tap("table.patches tbody th a");
    tablet.untilSays("h1", code);
    tablet.tapText("Use these settings again");
    tablet.untilSays("#live", "at most");
    assertThat(Double.parseDouble(tablet.find("#k-power").getAttribute("value")))
        .isEqualTo(found.settings().power().value());
  }

  @Test
  void a_window_is_seen_its_map_tapped_and_its_sheet_printed() throws Exception {
    tablet.open(bench.address() + "window");
    tablet.until(
        "all verdicts",
        () -> {
          tablet.open(bench.address() + "window");
          return tablet.text("main").contains("being computed") ? null : true;
        });
    tablet.tapText("latex on pine");
    tablet.untilSays(".verdict", "WINDOW");
    tablet.untilSays("#live", "at most");
    String atStart = tablet.text("#live");
    WebElement plot = tablet.find("svg.draw rect.line");
    new Actions(tablet.driver()).moveToElement(plot, -60, -20).click().perform();
    tablet.until("another place", () -> tablet.text("#live").equals(atStart) ? null : true);
    assertThat(tablet.find("#m-power").getAttribute("value")).isNotBlank();
    tablet.tap("#to-sheet");
    tablet.untilSays("h1", "Sheet for the bench");
    String sheet = tablet.find("a[href*='print=yes']").getAttribute("href");
    tablet.open(sheet);
    assertThat(tablet.text("h1")).isEqualTo("latex on pine");
    assertThat(
            tablet.script(
                "return getComputedStyle(document.querySelector('.start')).borderTopStyle"))
        .isEqualTo("solid");
    tablet.until("the sheet to print itself", () -> tablet.printed() == 1 ? true : null);
    assertThat(tablet.complaints()).isEmpty();
    Path pdf = folder.resolve("sheet.pdf");
    tablet.print(pdf);
    assertThat(new String(Files.readAllBytes(pdf), StandardCharsets.ISO_8859_1))
        .startsWith("%PDF")
        .containsOnlyOnce("/Type /Page\n");
    tablet.open(bench.address() + "sheet?family=latex&wood=pine"); // to be looked at
    assertThat(tablet.text("h1")).isEqualTo("latex on pine");
    assertThat(tablet.all("script")).isEmpty();
    tablet.open(bench.address() + "window?family=latex&wood=pine");
    tablet.tapText("Record with this start");
    tablet.untilSays("#live", "Safe for the wood");
  }

  @Test
  void everything_is_set_up_without_a_manual_in_an_empty_log() throws IOException {
    bench.close();
    file = folder.resolve("new.db");
    bench = BenchProcess.serve(file);
    tablet.open(bench.address() + "record");
    tablet.untilSays("main", "set up a rig and a board and a finish first");
    tablet.tapText("Set up");
    tablet.tap("#form-rig summary");
    tablet.type("#form-rig [name=name]", "heron");
    tablet.type("#form-rig [name=rated]", "30000");
    tablet.type("#form-rig [name=spot]", "0.5");
    tablet.type("#form-rig [name=rep]", "60");
    tablet.type("#form-rig [name=width]", "60");
    tablet.tap("#form-rig button.main");
    tablet.untilSays(
        "#form-rig .trouble", "Power of a pulsed unit of 30000 W is outside 5 to 2000 W");
    assertThat(tablet.find("#form-rig [name=name]").getAttribute("value")).isEqualTo("heron");
    tablet.type("#form-rig [name=rated]", "300");
    tablet.tap("#form-rig button.main");
    tablet.untilSays(".card", "pulsed, 300 W rated, 1064 nm, spot 0.5 mm");
    tablet.tap("#form-check summary");
    tablet.type("#form-check [name=percent]", "80");
    tablet.type("#form-check [name=metered]", "231");
    tablet.tap("#form-check button.main");
    tablet.untilSays(".card", "231 W metered at 80 %");
    tablet.tap("#form-board summary");
    tablet.type("#form-board [name=name]", "sill offcut");
    tablet.tap("#form-board button.main");
    tablet.untilSays("main", "sill offcut: pine, solid");
    tablet.tap("#form-finish summary");
    tablet.type("#form-finish [name=name]", "sill latex");
    tablet.type("[name=coat1]", "latex");
    tablet.type("#form-finish [name=thickness1]", "90");
    tablet.tap("#form-finish button.main");
    tablet.untilSays("main", "sill latex: samples and cautions, put right, counted as latex");
    tablet.open(bench.address() + "record");
    tablet.type("#k-power", "30");
    tablet.type("#k-hand", "40");
    tablet.untilSays("#live", "No patch of latex on pine");
    tablet.tap("input[value=residue]");
    tablet.tap("#keep");
    assertThat(kept()).isEqualTo("P-0001");
  }

  @Test
  void a_second_device_is_paired_with_the_code_and_an_unpaired_one_is_refused() throws IOException {
    bench.close();
    bench = BenchProcess.serve(file, "--share");
    String name = InetAddress.getLocalHost().getHostName().toLowerCase(Locale.ROOT);
    String shared = "http://" + name + ":" + bench.port() + "/";
    tablet.open(bench.address() + "devices");
    assertThat(tablet.text(".code"))
        .isEqualTo(bench.code().substring(0, 4) + " " + bench.code().substring(4));
    try (Browser phone = Browser.open(false, name).size(360, 740)) {
      phone.open(shared + "record");
      assertThat(phone.text("h1")).isEqualTo("Pair this device");
      phone.type("[name=code]", "00000000");
      phone.type("[name=name]", "phone at the <b>bench</b>");
      phone.tap("button.main");
      phone.untilSays(".trouble", "yours is different");
      phone.type("[name=code]", bench.code().substring(0, 4) + " " + bench.code().substring(4));
      phone.type("[name=name]", "phone at the <b>bench</b>");
      phone.tap("button.main");
      phone.untilSays("h1", "At the bench");
      phone.open(shared + "record?like=LP-01");
      phone.tap("input[value=clean]");
      phone.tap("#keep");
      phone.untilSays("#kept-code", "P-0001");
      phone.open(shared + "devices");
      phone.untilSays(".trouble", "Devices are managed on the serving machine only.");

      tablet.open(bench.address() + "devices");
      assertThat(tablet.text(".card h3")).isEqualTo("phone at the <b>bench</b>");
      tablet.tap(".card form[action='/devices/revoke'] button");
      tablet.untilSays("main", "No device is paired.");
      phone.open(shared + "record");
      assertThat(phone.text("h1")).isEqualTo("Pair this device");
    }
  }
}
