package charline.bench;

import static org.assertj.core.api.Assertions.assertThat;

import charline.cli.Main;
import charline.log.Logbook;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pages of windows before and after the rig has lost a fifth of its power. */
class NotValidWindowsTest {
  private static final Instant NOVEMBER = Instant.parse("2026-11-20T09:00:00Z");
  private static final String LATEX = "?family=latex&wood=pine";
  private static final String CLEAR_COAT = "?family=clear+coat&wood=larch";

  @TempDir Path folder;

  private final HttpClient client = HttpClient.newHttpClient();
  private final Clock clock = Clock.fixed(NOVEMBER, ZoneOffset.UTC);
  private Logbook log;
  private BenchServer server;

  @BeforeEach
  void serve() {
    charline(
        "import sample-trials/latex-on-pine.csv sample-trials/clear-coat-on-larch.csv --rigs sample-trials/rigs.csv --power-checks sample-trials/power-checks.csv");
    log = Logbook.open(file(), clock);
    server = BenchServer.start(log, new BenchOptions(0, false, "Runa", "test", clock, code -> {}));
  }

  @AfterEach
  void close() {
    server.close();
    log.close();
  }

  private Path file() {
    return folder.resolve("boathouse.db");
  }

  private String charline(String line) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    int code =
        Main.run(
            Stream.concat(Stream.of("--log", file().toString()), Arrays.stream(line.split(" ")))
                .toArray(String[]::new),
            new ByteArrayInputStream(new byte[0]),
            new PrintStream(out, true, StandardCharsets.UTF_8),
            System.err,
            Map.of("CHARLINE_BY", "Runa"),
            clock);
    assertThat(code).isZero();
    return out.toString(StandardCharsets.UTF_8);
  }

  private String page(String path) throws IOException, InterruptedException {
    var answer =
        client.send(
            HttpRequest.newBuilder(URI.create(server.address() + path)).build(),
            BodyHandlers.ofString());
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
    return answer.body();
  }

  /** The list waits for no models, so each is asked for before. */
  private String list() throws IOException, InterruptedException {
    page("window" + LATEX);
    page("window" + CLEAR_COAT);
    return page("window");
  }

  private void losePower() {
    charline("rig check heron --power 100% --metered 240");
  }

  /** What the command line's sheet says of it, with its topic. */
  private String cautionOfTheCommandLine() throws IOException {
    Path sheet = folder.resolve("latex.html");
    charline("sheet latex pine --to " + sheet);
    Matcher caution = Pattern.compile("<b>Not valid\\.</b> [^<]+").matcher(Files.readString(sheet));
    assertThat(caution.find()).isTrue();
    assertThat(caution.group())
        .startsWith("<b>Not valid.</b> Rig heron has drifted since 2026-11-20: check the")
        .endsWith("Trials from before do not speak for the rig as it is.");
    return caution.group();
  }

  @Test
  void while_the_rig_is_what_it_was_no_page_says_not_valid() throws Exception {
    assertThat(page("window" + LATEX))
        .contains("Start setting")
        .doesNotContainIgnoringCase("not valid");
    assertThat(list())
        .contains("<span class=\"verdict\">window</span>")
        .doesNotContain("being worked out")
        .doesNotContainIgnoringCase("not valid");
    assertThat(page("sheet" + LATEX)).doesNotContainIgnoringCase("not valid");
  }

  @Test
  void a_window_says_before_all_else_that_the_rig_has_drifted() throws Exception {
    page("window" + LATEX); // so that the models and what was said of them are at hand
    losePower();

    String window = page("window" + LATEX);
    assertThat(window).containsOnlyOnce(cautionOfTheCommandLine());
    assertThat(window.indexOf("Not valid")).isLessThan(window.indexOf("class=\"verdict"));
  }

  @Test
  void a_sheet_has_the_caution_of_the_command_lines_sheet_before_the_others() throws Exception {
    losePower();

    String caution = cautionOfTheCommandLine();
    assertThat(page("sheet" + LATEX))
        .containsOnlyOnce(caution)
        .containsPattern("<div class=\"cautions\">\\s*<p>" + Pattern.quote(caution));
  }

  @Test
  void a_list_marks_the_windows_of_the_rig_and_says_once_what_to_do() throws Exception {
    losePower();

    assertThat(list())
        .contains("<span class=\"verdict\">window, not valid</span>")
        .contains("<span class=\"verdict\">none</span>")
        .containsOnlyOnce(cautionOfTheCommandLine());
  }
}
