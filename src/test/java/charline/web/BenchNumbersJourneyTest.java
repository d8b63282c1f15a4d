package charline.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.quantity.Figures;
import charline.quantity.Measure;
import charline.refusal.Refusal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Numbers are typed, stepped, set on the pad and timed. */
class BenchNumbersJourneyTest extends TabletVisit {
  @Test
  void enter_sets_what_was_typed_on_the_number_pad() {
    browser.open(bench.address() + "record?like=LP-01");
    browser.tap("#k-power");
    browser.press("45\n");
    assertThat(value("#k-power")).isEqualTo("45");
    assertThat(browser.find("#pad").isDisplayed()).isFalse();
    browser.tap("#k-hand");
    browser.press("12,5\n");
    assertThat(value("#k-hand")).isEqualTo("12.5");
    browser.tap("#k-hand");
    browser.press("99");
    browser.script("document.getElementById('pad-cancel').focus()");
    browser.press("\n");
    assertThat(value("#k-hand")).isEqualTo("12.5");
    assertThat(browser.find("#pad").isDisplayed()).isFalse();
  }

  @Test
  void the_number_pad_names_units_as_they_are_written() {
    browser.open(bench.address() + "record?like=LP-01");
    browser.unfold("seen-more");
    browser.tap("#depth");
    assertThat(browser.text("#pad-title")).isEqualTo("Depth removed, µm"); // in capitals: MM
    browser.tap("#pad-cancel");
    browser.tap("#k-hand");
    assertThat(browser.text("#pad-title")).isEqualTo("Hand speed, mm/s");
  }

  @Test
  void on_a_phone_on_its_side_the_number_is_seen_while_it_is_set() {
    browser.size(740, 360);
    browser.open(bench.address() + "record?like=LP-01");
    browser.tap("#k-power");
    assertThat(browser.all("#pad-title, #pad-value, #pad button:not([hidden])"))
        .hasSize(16)
        .allSatisfy(e -> assertThat(browser.inSight(e)).as(e.getAttribute("outerHTML")).isTrue());
    assertThat(browser.script("return pad.scrollHeight <= pad.clientHeight")).isEqualTo(true);
  }

  @Test
  void the_page_reads_numbers_exactly_as_the_bench_does() {
    browser.open(bench.address() + "record?like=LP-01");
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
      Object value = browser.module("numbers.js", "String(m.number(arguments[0]).value)", typed);
      Object unit = browser.module("numbers.js", "m.number(arguments[0]).unit", typed);
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
  void a_step_button_takes_no_fraction_for_a_percentage() {
    browser.open(bench.address() + "record?like=LP-01");
    for (String typed : List.of("0.6", "1")) {
      browser.type("#k-power", typed);
      browser.tap("[data-for=k-power][data-step='5']");
      assertThat(value("#k-power")).isEqualTo(typed);
      browser.untilSays("[data-row=power] .unread", "which could be a fraction");
    }
    browser.type("#k-power", "6");
    browser.tap("[data-for=k-power][data-step='-5']");
    assertThat(value("#k-power")).isEqualTo("1%"); // which asks nobody whether they are sure
    browser.tap("[data-for=k-power][data-step='5']");
    assertThat(value("#k-power")).isEqualTo("6");
  }

  @Test
  void a_step_button_leaves_alone_what_could_be_read_in_two_ways_and_says_so() {
    browser.open(bench.address() + "record?like=LP-01");
    browser.unfold("lesser");
    browser.tap("input[name=form][value=scan]");
    for (String typed : List.of("1,200", "1.2m/s", "0x10", "quick")) {
      browser.type("#k-scan", typed);
      browser.tap("[data-for=k-scan][data-step='500']");
      assertThat(value("#k-scan")).isEqualTo(typed);
      assertThat(browser.text("[data-row=scan] .unread"))
          .isEqualTo(
              "The buttons step a number in mm/s without commas between thousands, not \"%s\"; write it that way."
                  .formatted(typed));
    }
    browser.type("#k-scan", "1200 mm/s");
    assertThat(browser.all(".unread")).isEmpty();
    browser.tap("[data-for=k-scan][data-step='500']");
    assertThat(value("#k-scan")).isEqualTo("1700");
    browser.type("#k-passes", "1,5");
    browser.tap("#count");
    assertThat(value("#k-passes")).isEqualTo("1,5");
    browser.untilSays("[data-row=passes] .unread", "The buttons step a whole number");
    browser.type("#k-power", "62,5");
    browser.tap("[data-for=k-power][data-step='5']");
    assertThat(value("#k-power")).isEqualTo("67.5");
  }

  /** Long words about a setting come while a person taps a button again and again. */
  @ParameterizedTest
  @CsvSource({"820, 1180", "390, 844", "844, 390"})
  void the_knobs_stay_under_the_finger_whatever_the_risk_says(int width, int height) {
    browser.size(width, height);
    browser.open(bench.address() + "record?like=LP-01");
    String button = "[data-for=k-power][data-step='5']";
    browser.until("the first answer", () -> shown().equals("null") ? null : true);
    browser.script("arguments[0].scrollIntoView({block:'center'})", browser.find(button));
    int top = top(button);
    for (String typed : List.of("0.6", "60", "99", "60", "7000", "60")) {
      String shown = shown();
      browser.type("#k-power", typed);
      browser.until("an answer to " + typed, () -> shown().equals(shown) ? null : true);
      assertThat(top(button)).as("the button's place with %s %%", typed).isCloseTo(top, within(2));
    }
  }

  private static int top(String css) {
    return browser.find(css).getRect().getY() - scrolled();
  }

  private static int scrolled() {
    return ((Number) browser.script("return Math.round(scrollY)")).intValue();
  }

  private static String shown() {
    return String.valueOf(browser.script("return document.getElementById('live').dataset.shown"));
  }

  @Test
  void the_stopwatch_turns_a_marked_area_into_a_dose() {
    browser.open(bench.address() + "record?like=LP-01");
    holdTheClock();
    timed();
    browser.unfold("lesser");
    browser.type("#k-area", "25");
    pass(2);
    pass(3);
    assertThat(value("#k-passes")).isEqualTo("2");
    browser.untilSays("#watch-words", "2 passes timed; their mean counts.");
    assertThat(value("#k-seconds")).isEqualTo("2.5");
    browser.untilSays(
        "#live-does", "Dose 8.66 J/cm² a pass"); // 86.64 W by the meter x 2.5 s / 25 cm2
  }

  @Test
  void a_slip_on_the_stopwatch_counts_no_pass_and_the_last_pass_can_be_taken_back() {
    browser.open(bench.address() + "record?like=LP-01");
    holdTheClock();
    timed();
    browser.type("#k-seconds", "5");
    String before = value("#k-passes");
    browser.tap("#watch");
    tick(0.2);
    browser.tap("#watch");
    browser.untilSays("#watch-words", "a pass shorter than 1 s does not count");
    assertThat(value("#k-passes")).isEqualTo(before);
    tick(3.8);
    browser.tap("#watch");
    browser.untilSays("#watch-words", "One pass timed");
    assertThat(value("#k-seconds")).isEqualTo("4");
    pass(10);
    assertThat(value("#k-seconds")).isEqualTo("7");
    assertThat(value("#k-passes")).isEqualTo("2");
    browser.tapText("Take back the last pass");
    browser.untilSays("#watch-words", "One pass timed");
    assertThat(value("#k-seconds")).isEqualTo("4");
    assertThat(value("#k-passes")).isEqualTo("1");
    browser.tapText("Take back the last pass");
    assertThat(value("#k-seconds")).isEqualTo("5");
    assertThat(value("#k-passes")).isEqualTo(before);
    assertThat(browser.find("#unlap").isDisplayed()).isFalse();
  }

  @Test
  void every_patch_begins_with_the_stopwatch_at_rest() {
    browser.open(bench.address() + "record?like=LP-01");
    holdTheClock();
    timed();
    browser.unfold("lesser");
    browser.type("#k-area", "25");
    pass(4);
    browser.tap("#watch");
    tick(2);
    assertThat(keep(browser, "clean")).isEqualTo("P-0001");
    browser.tap("#next");
    assertThat(browser.text("#watch-do")).isEqualTo("Start the stopwatch");
    assertThat(browser.find("#watch").getAttribute("aria-pressed")).isEqualTo("false");
    browser.untilSays("#watch-words", "each stop counts one pass");
    assertThat(browser.find("#unlap").isDisplayed()).isFalse();
    pass(6);
    browser.untilSays("#watch-words", "One pass timed");
    assertThat(value("#k-seconds")).isEqualTo("6");
  }

  /** From here on the page's stopwatch goes by {@link #tick}. */
  private void holdTheClock() {
    browser.script("window.held = 0; performance.now = () => window.held");
  }

  /** Gives the dose by area and seconds. */
  private void timed() {
    browser.unfold("lesser");
    browser.tap("input[name=form][value=timed]");
  }

  private void tick(double seconds) {
    browser.script("window.held += 1000 * arguments[0]", seconds);
  }

  private void pass(double seconds) {
    browser.tap("#watch");
    tick(seconds);
    browser.tap("#watch");
  }
}
