package charline.web;

import java.io.IOException;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Every page in every state can be read and used by anyone: by a screen reader, with gloves, in the
 * dark, enlarged, and in large letters. With {@code -Dcharline.pictures} pictures go to
 * target/bench.
 */
class BenchPagesJourneyTest {
  private static final Map<String, int[]> NARROW =
      Map.of(
          "200 % of a laptop", new int[] {640, 400},
          "400 % of a laptop", new int[] {320, 256},
          "small phone on its side", new int[] {568, 320});

  @TempDir static Path folder;

  private static ServedLog served;
  private static List<EveryPage.State> states;
  private static Browser browser;

  private final SoftAssertions all = new SoftAssertions();

  @BeforeAll
  static void begin() throws Exception {
    browser = Browser.open(false);
    served = new ServedLog(folder, EveryPage.sheets());
    states = new EveryPage(served, folder).states();
  }

  @AfterAll
  static void end() {
    browser.close();
    served.close();
  }

  @BeforeEach
  void hear_only_what_this_test_does() {
    browser.open("about:blank"); // a page of the test before may still ask a bench that has closed
    browser.complaints();
  }

  /** Opens a page, and waits until no part of it is under way. */
  private static void open(String address) {
    browser.open(address);
    browser.until(
        "all parts of " + address,
        () ->
            (Boolean)
                    browser.script(
                        "return !document.querySelector('[data-part] .note, #home-wait') &&"
                            + " !/Working out/.test(document.getElementById('live')?.textContent)")
                ? true
                : null);
  }

  private void look(String name, int width, int status) throws IOException {
    browser.script("document.querySelectorAll('details').forEach(d => d.open = true)");
    all.assertThat(Accessible.violations(browser)).as(name).isEmpty();
    if (!name.startsWith("sheet,")) {
      all.assertThat(Accessible.small(browser)).as("targets, " + name).isEmpty();
    }
    all.assertThat(browser.script("return document.documentElement.scrollWidth"))
        .as("width, " + name)
        .isEqualTo((long) width);
    List<String> complaints = browser.complaints();
    if (status == 200) { // the browser complains of any other
      all.assertThat(complaints).as(name).isEmpty();
    }
  }

  @Test
  void every_page_can_be_read_and_used_by_anyone() throws IOException {
    Path shots = Files.createDirectories(Path.of("target", "bench"));
    for (boolean dark : new boolean[] {false, true}) {
      int width = dark ? 820 : 390;
      browser.prefers("prefers-color-scheme", dark ? "dark" : "light");
      for (EveryPage.State state : states) {
        browser.size(width, dark ? 1180 : 844);
        open(served.address() + state.address());
        look("%s, %d px".formatted(state.name(), width), width, state.status());
        browser.wholePicture(
            shots.resolve(
                "page-%s-%d.png".formatted(state.name().replaceAll("[^a-z]+", "-"), width)),
            width);
        if (!dark) {
          narrow(state.name());
        }
      }
    }
    browser.prefers("prefers-color-scheme", "light");
    all.assertAll();
  }

  /** No page needs to be moved sideways when it is zoomed or in large letters. */
  private void narrow(String name) {
    NARROW.forEach(
        (view, size) -> {
          browser.size(size[0], size[1]);
          all.assertThat(overflowing()).as(view + ", " + name).isEqualTo(List.of());
        });
    browser.size(390, 844);
    browser.script("document.documentElement.style.fontSize = '212%'");
    all.assertThat(overflowing()).as("large letters, " + name).isEqualTo(List.of());
  }

  @Test
  void what_comes_of_an_import_a_merge_and_a_refused_form_can_be_read_by_anyone()
      throws IOException {
    browser.size(390, 844);
    for (String name : List.of("import", "merge, conflicts")) {
      EveryPage.State state =
          states.stream().filter(s -> s.name().equals(name)).findFirst().orElseThrow();
      browser.open(served.address() + state.address());
      browser.tap("main form button");
      browser.untilSays("h1", name.equals("import") ? "Imported" : "Merged");
      look("done: " + name, 390, 200);
    }
    browser.open(served.address() + "set-up");
    browser.tap("#form-board summary");
    browser.type("#form-board [name=name]", "sill");
    browser.tap("#form-board button.main");
    browser.untilSays(".trouble", "sill");
    look("a refused form", 390, 422);
    all.assertAll();
  }

  @Test
  void pairing_and_devices_can_be_read_and_used_by_anyone() throws Exception {
    String host = InetAddress.getLocalHost().getHostName().toLowerCase(Locale.ROOT);
    try (BenchHere bench = BenchHere.shared(folder.resolve("shared.db"));
        Browser phone = Browser.open(false, host).size(390, 844)) {
      String shared = "http://%s:%d/".formatted(host, bench.port());
      browser.size(390, 844);
      for (String address : List.of("pair", "pair?code=0000%200000", "devices")) {
        open(bench.address() + address);
        look(address, 390, 200);
      }
      phone.open(shared + "pair");
      phone.type("[name=code]", "00000000");
      phone.tap("button.main");
      phone.untilSays(".trouble", "yours is different");
      all.assertThat(Accessible.violations(phone)).as("a wrong code").isEmpty();
      phone.type("[name=code]", bench.code());
      phone.type("[name=name]", "tablet");
      phone.tap("button.main");
      phone.untilSays("h1", "At the bench");
      phone.open(shared + "devices");
      phone.untilSays(".trouble", "Devices are managed on the serving machine only.");
      all.assertThat(Accessible.violations(phone)).as("devices from elsewhere").isEmpty();
      open(bench.address() + "devices");
      browser.untilSays("main", "tablet");
      look("a paired device", 390, 200);
    }
    all.assertAll();
  }

  @Test
  void a_log_that_holds_nothing_yet_can_be_read_by_anyone_too() throws IOException {
    try (BenchHere bench = BenchHere.serve(folder.resolve("empty.db"))) {
      for (String address :
          List.of("", "record", "ask", "window", "next", "plans", "boards", "recent", "log")) {
        browser.size(390, 844);
        open(bench.address() + address);
        look("empty log, " + address, 390, 200);
      }
    }
    all.assertAll();
  }

  /** What reaches beyond the right edge, tables in frames of their own aside. */
  private static Object overflowing() {
    return browser.script(
        "const wide = document.documentElement.clientWidth; if"
            + " (document.documentElement.scrollWidth <= wide) return []; return"
            + " [...document.querySelectorAll('body *')].filter(e => e.scrollWidth >"
            + " e.clientWidth + 1 && e.clientWidth || e.getBoundingClientRect().right > wide +"
            + " 1).slice(0, 5).map(e => e.outerHTML.slice(0, 100))");
  }
}
