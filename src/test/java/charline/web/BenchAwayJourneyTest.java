package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import java.net.InetAddress;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

/** While the bench is away or slow the page stays in the hand, and goes on when it is back. */
class BenchAwayJourneyTest extends BenchVisit {
  private static final String RECORD = "nav a[href='/record']";

  @Test
  void pages_come_in_place_and_back_leads_back() {
    phone.open(bench.address());
    phone.script("window.loadedOnce = true");
    phone.tap("nav a[href='/ask']");
    phone.untilSays("h1", "Ask the log");
    phone.tap("nav a[href='/window']");
    phone.untilSays("h1", "Windows");
    assertThat(phone.script("return location.pathname")).isEqualTo("/window");
    assertThat(phone.all("nav a[aria-current=page]"))
        .singleElement()
        .satisfies(a -> assertThat(a.getText()).isEqualTo("Window"));
    phone.driver().navigate().back();
    phone.untilSays("h1", "Ask the log");
    phone.type("#q", "clean latex");
    phone.tapText("Ask");
    phone.untilSays("#found", "patches on ");
    phone.tap(RECORD);
    phone.untilSays("#title", "Record a patch");
    assertThat(phone.script("return window.loadedOnce")).isEqualTo(true);
    assertThat(phone.complaints()).isEmpty();
  }

  @Test
  void without_the_bench_record_goes_on_and_what_cannot_be_had_says_so_in_place() {
    phone.open(bench.address());
    phone.tap("nav a[href='/ask']");
    phone.untilSays("h1", "Ask the log");
    phone.tap("nav a[href='/']");
    phone.untilSays("h1", "At the bench");
    awaitRecordReady();
    phone.connection(false);

    phone.tap(RECORD);
    phone.untilSays("#title", "Record a patch");
    phone.untilSays("#live", "No connection, so the risk is not known");
    phone.untilSays("#link", "No connection");
    phone.type("#k-power", "44");
    phone.type("#k-hand", "30");
    assertThat(keep(phone, "residue")).matches("W-[0-9A-Z]{4}");
    phone.untilSays("#link", "1 entry waiting, no connection");
    phone.tap("nav a[href='/ask']");
    phone.untilSays(".trouble", "This is what the page said at");
    phone.tap("nav a[href='/window']");
    phone.untilSays(".trouble", "It comes by itself when the bench is reached");
    phone.tap(RECORD);
    phone.untilSays("#title", "Kept on this device");
    phone.tap("#next");
    assertThat(value(phone, "#k-power")).isEqualTo("44");
    phone.tap("input[value=clean]");
    phone.tap("#keep");
    phone.untilSays("#link", "2 entries waiting");
    phone.tap("nav a[href='/window']");
    phone.untilSays("h1", "Not here yet");

    phone.connection(true);
    phone.untilSays("h1", "Windows");
    phone.until("nothing waiting", () -> phone.text("#link").isEmpty() ? true : null);
    assertThat(recorded()).hasSize(2);
  }

  private static void awaitRecordReady() {
    phone.until(
        "Record on this device",
        () ->
            phone.module("visited.js", "m.visited('/record') ? true : null") == null
                ? null
                : phone.module("record.js", "true"));
  }

  @Test
  void a_form_that_cannot_be_sent_keeps_what_was_typed() {
    phone.open(bench.address() + "set-up");
    phone.tap("#form-board summary");
    phone.type("#form-board [name=name]", "sill offcut");
    phone.connection(false);
    phone.tap("#form-board button.main");
    phone.untilSays("#form-board .trouble", "What you typed is still here");
    assertThat(value(phone, "#form-board [name=name]")).isEqualTo("sill offcut");
    phone.connection(true);
    phone.tap("#form-board button.main");
    phone.untilSays("main", "sill offcut: pine");
  }

  @Test
  void the_last_known_risk_of_a_setting_is_shown_with_its_time() {
    phone.open(bench.address() + "record?like=LP-01&power=80&pace=30");
    phone.untilSays("#live", "Safe for the wood");
    phone.connection(false);
    phone.tap("[data-for=k-hand][data-step='1']");
    phone.untilSays("#live", "Fire nothing whose risk you have not seen before");
    assertThat(phone.find("#live").getAttribute("class")).contains("is-untried");
    phone.tap("[data-for=k-hand][data-step='-1']");
    phone.untilSays("#live", "Safe for the wood");
    assertThat(phone.text("#live-bounds")).startsWith("No connection. As of ");
    assertThat(phone.find("#live").getAttribute("class")).contains("old");
    phone.connection(true);
    phone.until(
        "the risk of now", () -> phone.text("#live").contains("No connection") ? null : true);
  }

  @Test
  void keep_is_seen_to_be_heard_at_once_and_waits_for_no_bench_that_is_away() {
    phone.open(bench.address() + "record?like=LP-01");
    phone.untilSays("#live", "at most");
    phone.tap("input[value=residue]");
    assertThat(
            phone.script(
                "window.fetch = () => new Promise(() => {}); const k ="
                    + " document.getElementById('keep'); k.click(); return [k.textContent,"
                    + " k.getAttribute('aria-busy'), k.disabled].join()"))
        .isEqualTo("Keeping,true,true");

    phone.fresh().size(390, 844);
    phone.open(bench.address() + "record?like=LP-01");
    phone.untilSays("#live", "at most");
    phone.connection(false);
    phone.type("#k-power", "35");
    phone.untilSays("#link", "No connection");
    phone.tap("input[value=residue]");
    Object waited =
        phone.asyncScript(
            "const done = arguments[0], began = performance.now();new MutationObserver(() => { if"
                + " (!kept.hidden) done(performance.now() - began); }).observe(kept, {attributes:"
                + " true}); keep.click();");
    assertThat(((Number) waited).doubleValue()).as("ms until the code is shown").isLessThan(1500);
    assertThat(phone.text("#kept-code")).matches("W-[0-9A-Z]{4}");
  }

  @Test
  void a_device_that_was_sent_away_is_told_to_pair_again() throws IOException {
    bench.close();
    bench = BenchHere.shared(file);
    String name = InetAddress.getLocalHost().getHostName().toLowerCase(Locale.ROOT);
    String shared = "http://" + name + ":" + bench.port() + "/";
    try (Browser other = Browser.open(false, name).size(390, 844)) {
      other.open(shared + "record");
      other.type("[name=code]", bench.code());
      other.type("[name=name]", "anna phone");
      other.tap("button.main");
      other.untilSays("h1", "At the bench");
      other.open(shared + "record?like=LP-01");
      other.untilSays("#live", "at most");
      phone.open(bench.address() + "devices");
      phone.tapText("Revoke anna phone");
      phone.untilSays("main", "No device is paired.");
      other.tap("input[value=residue]");
      other.tap("#keep");
      other.untilSays("#kept-words", "It waits on this device until it is paired again.");
      other.untilSays("#link", "1 entry waits: pair again");
    }
  }

  @Test
  void a_photo_that_takes_long_holds_back_no_entry() throws IOException {
    File photo = picture(800, 600);
    phone.open(bench.address() + "record?like=LP-01");
    phone.script(
        "const real = window.fetch; window.fetch = (path, ...more) =>"
            + " String(path).startsWith('/photos') ? new Promise(() => {}) : real(path, ...more)");
    phone.unfold("seen-more");
    phone.find("#photo").sendKeys(photo.getPath());
    phone.until("the photo", () -> phone.find("#photo-shown").isDisplayed() ? true : null);
    assertThat(keep(phone, "residue")).isEqualTo("P-0001");
    phone.tap("#further");
    phone.tap("input[value=clean]");
    phone.tap("#keep");
    phone.untilSays("#kept-words", "clean after 2 passes");
    phone.untilSays("#title", "Kept in the log");
    assertThat(patch("P-0001").patch().readings()).hasSize(2);
    assertThat(photosOf("P-0001")).isZero();
    phone.untilSays("#link", "1 entry waiting");
  }

  @Test
  void a_large_photo_is_made_smaller_on_the_phone() throws IOException {
    File photo = picture(3000, 2200);
    phone.open(bench.address() + "record?like=LP-01");
    phone.unfold("seen-more");
    phone.find("#photo").sendKeys(photo.getPath());
    phone.until("the photo", () -> phone.find("#photo-shown").isDisplayed() ? true : null);
    assertThat(keep(phone, "residue")).isEqualTo("P-0001");
    phone.until("the photo in the log", () -> photosOf("P-0001") == 1 ? true : null);
    phone.open(bench.address() + "patch/P-0001");
    phone.until(
        "the picture",
        () ->
            (Boolean) phone.script("return document.querySelector('figure img').complete")
                ? true
                : null);
    assertThat(
            phone.script(
                "const i = document.querySelector('figure img'); return Math.max(i.naturalWidth,"
                    + " i.naturalHeight)"))
        .isEqualTo(2048L);
  }

  private File picture(int width, int height) throws IOException {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    Random random = new Random(7);
    for (int i = 0; i < 4000; i++) {
      g.setColor(new Color(random.nextInt(0x1000000)));
      g.fillRect(random.nextInt(width), random.nextInt(height), 60, 60);
    }
    g.dispose();
    File file = folder.resolve("patch-" + width + ".jpg").toFile();
    ImageIO.write(image, "jpg", file);
    return file;
  }

  @Test
  void without_scripts_record_says_what_it_needs_and_keeps_nothing() {
    phone.scripts(false);
    try {
      phone.open(bench.address() + "record");
      assertThat(phone.text("noscript, main")).contains("needs JavaScript");
      assertThat(phone.find("#keep").isEnabled()).isFalse();
      phone.open(bench.address());
      phone.tap("nav a[href='/ask']");
      phone.untilSays("h1", "Ask the log");
    } finally {
      phone.scripts(true);
    }
  }

  @Test
  void the_keyboard_goes_on_where_the_next_patch_begins() {
    phone.open(bench.address() + "record?like=LP-01");
    keep(phone, "residue");
    phone.until(
        "the buttons to listen",
        () ->
            phone.script("return document.getElementById('kept-actions').inert").equals(false)
                ? true
                : null);
    phone.script("document.getElementById('next').focus()");
    phone.press("\n");
    assertThat(phone.script("return document.activeElement.id")).isEqualTo("title");
    phone.script("document.querySelector(\"nav a[href='/ask']\").focus()");
    phone.press("\n");
    phone.untilSays("h1", "Ask the log");
    assertThat(phone.script("return document.activeElement.id")).isEqualTo("main");
    assertThat(List.of(phone.script("return document.title"))).contains("Ask - charline bench");
  }
}
