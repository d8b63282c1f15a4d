package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Every page of the built jar as people get it: for keyboards and screen readers, on a phone and a
 * tablet, light and dark, with hostile names in the log.
 *
 * <p>With {@code -Dcharline.pictures=reports} pictures of the pages go to target/bench, and to
 * reports, where they are kept.
 */
class BenchLooksJourneyTest {
  private static final String HOSTILE = "<script>hit=1</script><img src=x onerror=hit=1>\"'`${7*7}";
  private static final int FIRST_PAGE_BYTES = 150_000;

  /** Pages that say nothing of the machine that they were pictured on. */
  private static final List<String> KEPT =
      List.of("start", "record", "ask", "patch", "windows", "window", "set-up", "pair");

  @TempDir static Path folder;

  private static BenchProcess bench;
  private static Path file;

  @BeforeAll
  static void begin() throws Exception {
    Path trials = Path.of("sample-trials").toAbsolutePath();
    file = folder.resolve("boathouse.db");
    BenchProcess.run(
        folder,
        "--log",
        file.toString(),
        "import",
        trials.resolve("latex-on-pine.csv").toString(),
        trials.resolve("alkyd-on-pine-cw.csv").toString(),
        "--rigs",
        trials.resolve("rigs.csv").toString(),
        "--power-checks",
        trials.resolve("power-checks.csv").toString());
    bench = BenchProcess.serve(file, "--share");
  }

  @AfterAll
  static void end() {
    bench.close();
  }

  private static Map<String, String> pages() {
    Map<String, String> pages = new LinkedHashMap<>();
    pages.put("start", "");
    pages.put("record", "record?like=LP-01&power=80&pace=30");
    pages.put("ask", "ask?q=clean%20latex");
    pages.put("patch", "patch/LP-01");
    pages.put("windows", "window");
    pages.put("window", "window?family=latex&wood=pine");
    pages.put("set-up", "set-up");
    pages.put("devices", "devices");
    pages.put("pair", "pair");
    pages.put("trouble", "no-such-page");
    return pages;
  }

  /** Whether no part of a page is still under way. */
  private static boolean computed(Browser browser) {
    return (Boolean)
        browser.script(
            "return !document.querySelector('[data-again], #home-wait, .note[data-renewing],"
                + " .trouble[data-renewing]')");
  }

  @Test
  void every_page_can_be_read_and_used_by_anyone() throws IOException {
    Path shots = Files.createDirectories(Path.of("target", "bench"));
    SoftAssertions all = new SoftAssertions();
    for (boolean dark : new boolean[] {false, true}) {
      try (Browser browser = Browser.open(dark)) {
        for (int width : new int[] {360, 820}) {
          for (Map.Entry<String, String> page : pages().entrySet()) {
            browser.size(width, width == 360 ? 740 : 1180);
            browser.open(bench.address() + page.getValue());
            String what = "%s, %d px, %s".formatted(page.getKey(), width, dark ? "dark" : "light");
            browser.until("the answer of " + what, () -> computed(browser) ? true : null);
            if (!browser.all("#live").isEmpty()) {
              browser.untilSays("#live", "at most");
            }
            browser.script("document.querySelectorAll('details').forEach(d => d.open = true)");
            all.assertThat(Accessible.violations(browser)).as(what).isEmpty();
            all.assertThat(Accessible.small(browser)).as("targets, " + what).isEmpty();
            all.assertThat(browser.script("return document.documentElement.scrollWidth"))
                .as(what)
                .isEqualTo((long) width);
            List<String> complaints = browser.complaints();
            if (!page.getKey().equals("trouble")) { // whose status the browser complains of
              all.assertThat(complaints).as(what).isEmpty();
            }
            browser.script("document.querySelectorAll('details').forEach(d => d.open = false)");
            if (dark == page.getKey().equals("patch")) {
              Path picture =
                  shots.resolve(
                      "bench-%s-%s.png"
                          .formatted(page.getKey(), width == 360 ? "phone" : "tablet"));
              browser.wholePicture(picture, width);
              String keep = System.getProperty("charline.pictures", "");
              if (!keep.isEmpty() && KEPT.contains(page.getKey())) {
                Files.copy(
                    picture,
                    Path.of(keep, picture.getFileName().toString()),
                    StandardCopyOption.REPLACE_EXISTING);
              }
            }
          }
        }
      }
    }
    all.assertAll();
  }

  @Test
  void the_first_page_is_light_and_loads_nothing_from_elsewhere() throws IOException {
    try (Browser browser = Browser.open(false)) {
      for (String page : List.of("", "record?like=LP-01")) {
        browser.open(bench.address() + page);
        browser.until("the answer of " + page, () -> computed(browser) ? true : null);
        Object bytes =
            browser.script(
                "return"
                    + " performance.getEntriesByType('navigation').concat(performance.getEntriesByType('resource')).reduce((sum,"
                    + " e) => sum + e.decodedBodySize, 0)");
        assertThat(((Number) bytes).intValue()).isBetween(2000, FIRST_PAGE_BYTES);
        assertThat(
                (Boolean)
                    browser.script(
                        "return performance.getEntriesByType('resource').every(e =>"
                            + " e.name.startsWith(location.origin))"))
            .isTrue();
      }
    }
  }

  @Test
  void record_is_worked_by_keyboard_alone() throws IOException {
    Path own = folder.resolve("keyboard.db");
    Files.copy(file, own);
    try (BenchProcess other = BenchProcess.serve(own);
        Browser browser = Browser.open(false).size(820, 1180)) {
      browser.open(other.address() + "record?like=LP-01");
      browser.untilSays("#live", "at most");
      browser.unfold("lesser");
      browser.unfold("seen-more");
      browser.script("document.getElementById('k-power').focus()");
      List<String> reached = new ArrayList<>();
      for (int i = 0; i < 60; i++) {
        reached.add(
            (String)
                browser.script("return document.activeElement.name || document.activeElement.id"));
        browser.press("\t");
      }
      assertThat(reached)
          .contains("power", "form", "hand", "passes", "count", "outcome", "soot", "keep");
      browser.script("document.querySelector('input[name=outcome]').focus()");
      browser.press(" ");
      browser.script("document.getElementById('keep').focus()");
      browser.press("\n");
      browser.untilSays("#kept-words", "clean after 1 pass");
    }
  }

  @Test
  void what_the_keyboard_reaches_lies_behind_no_bar() throws IOException {
    try (Browser browser = Browser.open(false).size(1280, 800)) {
      browser.open(bench.address() + "record?like=LP-01");
      browser.untilSays("#live", "at most");
      browser.script("document.querySelectorAll('#record details').forEach(d => d.open = true)");
      List<Object> behind = new ArrayList<>();
      int reached = 0;
      for (boolean forward : new boolean[] {true, false}) {
        browser.script(
            "const all = [...document.querySelectorAll('#record input, #record button')].filter(e"
                + " => e.offsetParent);all[arguments[0] ? 0 : all.length - 1].focus()",
            forward);
        for (int i = 0; i < 60; i++) {
          if (forward) {
            browser.press("\t");
          } else {
            browser.pressBack();
          }
          Object hidden = browser.script(BEHIND_A_BAR);
          if (hidden != null) {
            reached++;
            if (!hidden.equals("")) {
              behind.add(forward ? hidden : "backwards: " + hidden);
            }
          }
        }
      }
      assertThat(reached).isGreaterThan(60);
      assertThat(behind).isEmpty();
    }
  }

  /** Null for what is no part of the form, blank for what is seen, else what is hidden by what. */
  private static final String BEHIND_A_BAR =
      """
      const e = document.activeElement;
      if (!e.closest('#record') || e.closest('#live, .keep')) return null;
      const box = x => (x.closest('label') || x).getBoundingClientRect(), r = box(e);
      const keep = document.querySelector('.keep').getBoundingClientRect();
      const over = bar => r.top < bar.bottom && r.bottom > bar.top;
      return over(keep) ? `${e.id || e.name} behind Keep`
        : r.top < 0 || r.bottom > innerHeight ? `${e.id || e.name} outside` : '';
      """;

  @Test
  void the_sheet_can_be_read_on_a_phone() throws IOException {
    try (Browser browser = Browser.open(false).size(360, 740)) {
      for (String window : List.of("family=latex&wood=pine", "family=alkyd&wood=pine")) {
        browser.open(bench.address() + "sheet?" + window);
        assertThat(browser.script("return document.documentElement.scrollWidth"))
            .as(window)
            .isEqualTo(360L);
        assertThat(
                (List<?>)
                    browser.script(
                        "return [...document.querySelectorAll('.sheet *')].filter(e =>"
                            + " !e.closest('svg') || e.matches('svg:not(.draw)')).filter(e =>"
                            + " e.getBoundingClientRect().right > 360 || e.scrollWidth >"
                            + " e.clientWidth + 1 && e.clientWidth && !e.matches('.map')).map(e =>"
                            + " e.outerHTML.slice(0, 90))"))
            .as(window)
            .isEmpty();
      }
      browser.open(bench.address() + "sheet?family=latex&wood=pine");
      assertThat(
              browser.script(
                  "const m = document.querySelector('.map'); m.scrollLeft = 999;return m.scrollLeft"
                      + " > 0 && m.clientWidth < 360 && document.querySelector('.draw').clientWidth"
                      + " > 500"))
          .as("the map goes to and fro in its frame")
          .isEqualTo(true);
    }
  }

  @Test
  void hostile_names_are_shown_and_never_run() throws IOException {
    Path own = folder.resolve("hostile.db");
    Files.copy(file, own);
    try (BenchProcess other = BenchProcess.serve(own);
        Browser browser = Browser.open(false).size(820, 1180)) {
      browser.open(other.address() + "set-up");
      browser.tap("#form-board summary");
      for (String field : List.of("name", "condition", "job")) {
        browser.type("#form-board [name=" + field + "]", HOSTILE);
      }
      browser.tap("#form-board button.main");
      browser.untilSays("main", HOSTILE + ": pine");
      browser.tap("#form-finish summary");
      browser.type("#form-finish [name=name]", HOSTILE);
      browser.type("[name=coat1]", "latex");
      browser.tap("#form-finish button.main");
      browser.untilSays("main", HOSTILE + ": samples and cautions, put right, counted as latex");
      browser.open(other.address() + "record");
      browser.tap("#place summary");
      for (String field : List.of("#c-board", "#c-finish")) {
        browser.script(
            "arguments[0].value = arguments[1]; arguments[0].dispatchEvent(new Event('change',"
                + " {bubbles: true}))",
            browser.find(field),
            HOSTILE);
      }
      browser.type("#by", HOSTILE);
      browser.unfold("seen-more");
      browser.type("#note", HOSTILE);
      browser.type("#k-power", "60");
      browser.type("#k-hand", "22");
      browser.tap("#count");
      browser.tap("input[value=clean]");
      browser.tap("#keep");
      browser.untilSays("#kept-code", "P-0001");
      for (String page :
          List.of(
              "record",
              "ask",
              "patch/P-0001",
              "window",
              "window?family=latex&wood=pine",
              "sheet?family=latex&wood=pine&by=%3Cscript%3Ehit=1%3C/script%3E",
              "set-up",
              "ask?q=%3Cscript%3Ehit=1%3C/script%3E",
              "patch/%3Cscript%3Ehit=1%3C%2Fscript%3E",
              "window?family=%3Cimg%20src=x%20onerror=hit=1%3E&wood=x")) {
        browser.open(other.address() + page);
        assertThat(browser.script("return typeof hit")).as(page).isEqualTo("undefined");
        assertThat(
                browser.script(
                    "return document.querySelectorAll('main script, main img[src=x]').length"))
            .as(page)
            .isEqualTo(0L);
        assertThat(browser.text("body")).as(page).doesNotContain("at charline.", "Exception");
      }
      browser.open(other.address() + "patch/P-0001");
      assertThat(browser.text("main")).contains(HOSTILE);
    }
  }
}
