package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import charline.cli.Main;
import charline.fault.FaultFiles;
import charline.log.EmptyLog;
import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.paper.PaperStyle;
import charline.picture.Pictures;
import charline.web.pages.PageOptions;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.security.MessageDigest;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the server lets in and what it does not, over a bare socket. */
class BenchServerTest {
  private static final String PATCH = "019a0000-0000-7000-8000-00000000000";
  private static final byte[] PNG = Pictures.plain("png");

  private static final String SHEET = "/sheet?family=latex&wood=pine";
  private static final Pattern FILE = Pattern.compile("(?:href|src)=\"(/[0-9a-f]{8}/([^\"]+))\"");
  private static final Pattern STYLE = Pattern.compile("(?s)<style>(.*?)</style>");
  private static final Pattern IMPORTED = Pattern.compile("(?:from|import) \"([^\"]+)\"");

  @TempDir Path folder;

  private final List<String> codes = new ArrayList<>();
  private final Ticking clock = new Ticking();
  private Logbook log;
  private PageServer server;
  private String name;

  /** Stands still until it is moved. */
  private static final class Ticking extends Clock {
    private Instant now = Instant.parse("2026-11-02T09:00:00Z");
    private volatile boolean broken;

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }

    @Override
    public Instant instant() {
      if (broken) {
        throw new IllegalStateException("the clock fell off the wall");
      }
      return now;
    }
  }

  @BeforeEach
  void serve() throws IOException {
    Path file = folder.resolve("boathouse.db");
    EmptyLog.open(file, clock).close();
    for (String line :
        List.of(
            "rig add heron --kind pulsed --rated 300W --spot 0.5mm --rep 60kHz --width 60mm",
            "board add offcut --wood pine",
            "finish add wall-latex --coat latex:pale:90um")) {
      String[] words = ("--log " + file + " " + line).split(" ");
      PrintStream nowhere = new PrintStream(new ByteArrayOutputStream());
      assertThat(
              Main.run(
                  words,
                  new ByteArrayInputStream(new byte[0]),
                  nowhere,
                  System.err,
                  Map.of(),
                  clock))
          .isZero();
    }
    log = Logbook.open(file, clock);
    server = started(0);
    name = server.sharedAddresses().get(0).replaceAll("http://|/$", "");
  }

  private PageServer started(int port) {
    return PageServer.start(
        log,
        new PageOptions(
            port,
            true,
            "Runa",
            "test",
            clock,
            codes::add,
            Duration.ofMinutes(2),
            new FaultFiles(folder.resolve("faults"), "test")));
  }

  private void restart() {
    int port = server.port();
    server.close();
    server = started(port);
  }

  @AfterEach
  void close() {
    server.close();
    log.close();
  }

  private record Answer(int status, String head, String body) {
    String cookie() {
      Matcher m = Pattern.compile("(?i)set-cookie: ([^;]+);(.*)").matcher(head);
      assertThat(m.find()).isTrue();
      assertThat(m.group(2)).contains("HttpOnly").contains("SameSite=Strict");
      return m.group(1);
    }
  }

  private Answer send(String requestLine, String host, String headers, byte[] body)
      throws IOException {
    try (Socket socket = new Socket("127.0.0.1", server.port())) {
      socket.setSoTimeout(20_000);
      String head =
          "%s HTTP/1.1\r\nHost: %s\r\nConnection: close\r\n%s%s\r\n"
              .formatted(
                  requestLine,
                  host,
                  headers,
                  body.length == 0 ? "" : "Content-Length: " + body.length + "\r\n");
      socket.getOutputStream().write(head.getBytes(StandardCharsets.UTF_8));
      socket.getOutputStream().write(body);
      socket.getOutputStream().flush();
      String all = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      int end = all.indexOf("\r\n\r\n");
      return new Answer(
          Integer.parseInt(all.substring(9, 12)),
          all.substring(0, end) + "\r\n",
          all.substring(end + 4));
    }
  }

  private String here() {
    return "127.0.0.1:" + server.port();
  }

  private Answer get(String path) throws IOException {
    return send("GET " + path, here(), "", new byte[0]);
  }

  private String token() throws IOException {
    Matcher m = Pattern.compile("\"token\":\"([^\"]+)\"").matcher(get("/pulse").body());
    assertThat(m.find()).isTrue();
    return m.group(1);
  }

  private Answer post(String path, String json) throws IOException {
    return send(
        "POST " + path,
        here(),
        "Content-Type: application/json\r\nX-Bench-Token: " + token() + "\r\n",
        json.getBytes(StandardCharsets.UTF_8));
  }

  private static String entry(int id, String more) {
    return """
    {"id":"%s%d","rig":"heron","board":"offcut","finish":"wall-latex","form":"hand","power":"60",
     "hand":"20","width":"60","spot":"0.5","rep":"60","patch":"33","passes":"2","outcome":"clean"%s}\
    """
        .formatted(PATCH, id, more);
  }

  private List<PatchEntry> recorded() {
    return log.patches(Filter.ALL);
  }

  @Test
  void an_entry_sent_again_is_recorded_once() throws IOException {
    Answer first = post("/entries/patch", entry(1, ",\"at\":\"2026-11-02T08:59:00+01:00\""));
    assertThat(first.status()).isEqualTo(200);
    assertThat(first.body()).contains("\"code\":\"P-0001\"", "\"again\":false");
    Answer again = post("/entries/patch", entry(1, ""));
    assertThat(again.status()).isEqualTo(200);
    assertThat(again.body()).contains("\"code\":\"P-0001\"", "\"again\":true");
    assertThat(recorded())
        .singleElement()
        .satisfies(
            e -> {
              assertThat(e.patch().burnedAt()).isEqualTo("2026-11-02T08:59:00+01:00");
              assertThat(e.typed())
                  .isEqualTo(Map.of("power", "60%", "hand", "20mm/s", "patch", "33cm2"));
            });
    String reading =
        "{\"id\":\"%s7\",\"of_patch\":\"%s1\",\"passes\":\"3\",\"outcome\":\"char\"}"
            .formatted(PATCH, PATCH);
    assertThat(post("/entries/reading", reading).body()).contains("\"again\":false");
    assertThat(post("/entries/reading", reading).body()).contains("\"again\":true");
    String undo = "{\"of\":\"%s7\",\"of_patch\":\"%s1\"}".formatted(PATCH, PATCH);
    assertThat(post("/entries/undo", undo).body()).contains("\"again\":false");
    assertThat(post("/entries/undo", undo).body()).contains("\"again\":true");
    assertThat(post("/entries/reading", reading).body()).contains("\"again\":true");
    assertThat(recorded().get(0).patch().readings()).hasSize(1);
    assertThat(log.history("P-0001")).isNotEmpty();
  }

  @Test
  void a_clock_that_is_far_off_does_not_date_an_entry() throws IOException {
    post("/entries/patch", entry(1, ",\"at\":\"2031-01-01T00:00:00Z\""));
    assertThat(recorded().get(0).patch().burnedAt()).isEqualTo("2026-11-02T09:00:00Z");
  }

  /** A tablet whose clock is slow must not lose what was seen. */
  @Test
  void a_reading_of_a_slow_clock_counts_from_the_burning() throws IOException {
    post("/entries/patch", entry(1, ",\"at\":\"2026-11-02T09:59:00+01:00\""));
    Answer read =
        post(
            "/entries/reading",
            "{\"id\":\"%s7\",\"of_patch\":\"%s1\",\"passes\":\"3\",\"outcome\":\"char\",\"at\":\"2026-11-02T09:30:00+01:00\"}"
                .formatted(PATCH, PATCH));
    assertThat(read.status()).as(read.body()).isEqualTo(200);
    assertThat(recorded().get(0).patch().lastReading().at())
        .isEqualTo(recorded().get(0).patch().burnedAt());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "\"id\":\"019a0000-0000-7000-8000-000000000001\"|\"id\":\"1\"|An entry's identity must be a"
            + " UUID of version 7",
        "\"outcome\":\"clean\"|\"outcome\":\"clean+char\"|Clean must be the only mark of an"
            + " outcome",
        "\"rig\":\"heron\"|\"rig\":\"herron\"|heron",
        "\"passes\":\"2\"|\"passes\":\"0\"|Passes must be a whole number, 1 or more",
        "\"passes\":\"2\"|\"passes\":[1]|must be a text or a number",
        "\"power\":\"60\"|\"power\":\"160\"|Power must be between 0 and 100 %, not 160 %.",
        "\"hand\":\"20\"|\"hand\":\"\"|Hand speed is not set",
        "\"hand\":\"20\"|\"hand\":\"twenty\"|A speed must be a number",
        "\"hand\":\"20\"|\"hand\":\"1,200\"|A speed of 1,200 can be read in two ways; write it"
            + " without a comma, as 1200 or 1.2.",
      })
  void a_bad_entry_gets_one_sentence_and_nothing_is_recorded(String good, String bad, String why)
      throws IOException {
    Answer answer = post("/entries/patch", entry(1, "").replace(good, bad));
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.body()).startsWith("{\"sentence\":\"").contains(why.replace("\"", "\\\""));
    assertThat(recorded()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "0.6 | Power of 0.6 can mean 60 % or 0.6 %; correct it, or say that you are sure of 0.6 %.",
        "0,6 | Power of 0.6 can mean 60 % or 0.6 %; correct it, or say that you are sure of 0.6 %.",
        "1 | Power of 1 can mean 100 % or 1 %; correct it, or say that you are sure of 1 %.",
      })
  void a_power_that_may_be_a_fraction_is_kept_only_by_a_person_who_is_sure(String power, String why)
      throws IOException {
    String bare = entry(1, "").replace("\"power\":\"60\"", "\"power\":\"" + power + "\"");
    Answer answer = post("/entries/patch", bare);
    assertThat(answer.status()).isEqualTo(409);
    assertThat(answer.body()).isEqualTo("{\"sentence\":\"" + why + "\"}");
    assertThat(get("/live?" + settings(power)).body()).contains("\"note\":\"" + why);
    assertThat(recorded()).isEmpty();
    assertThat(post("/entries/patch", bare.replace("}", ",\"sure\":true}")).status())
        .isEqualTo(200);
    assertThat(recorded().get(0).patch().settings().power().value())
        .isEqualTo(Double.parseDouble(power.replace(',', '.')));
  }

  @ParameterizedTest
  @ValueSource(strings = {"0.6%", "1.1", "0.9W", "0.9kW"})
  void a_power_that_says_what_it_is_of_is_no_fraction(String power) throws IOException {
    assertThat(get("/live?" + settings(power.replace("%", "%25"))).body())
        .doesNotContain("can mean");
    assertThat(
            post(
                    "/entries/patch",
                    entry(1, "").replace("\"power\":\"60\"", "\"power\":\"" + power + "\""))
                .body())
        .doesNotContain("can mean");
  }

  @Test
  void all_doubts_are_told_before_a_person_is_sure() throws IOException {
    String slips =
        entry(1, ",\"depth\":\"9000\"")
            .replace("\"power\":\"60\"", "\"power\":\"0.6\"")
            .replace("\"hand\":\"20\"", "\"hand\":\"900\"")
            .replace("\"passes\":\"2\"", "\"passes\":\"60\"");
    assertThat(post("/entries/patch", slips).body())
        .contains(
            "Power of 0.6 can", "Hand speed of 900", "Passes of 60 is", "Depth removed of 9000 um");
  }

  private static String settings(String power) {
    return "rig=heron&board=offcut&finish=wall-latex&form=hand&power=%s&hand=20&width=60&spot=0.5&rep=60&passes=2"
        .formatted(power);
  }

  @Test
  void broken_and_oversized_entries_are_refused_without_a_trace_of_the_program()
      throws IOException {
    for (String broken : List.of("", "{", "[]", "null", "{\"id\":", "[".repeat(5000))) {
      Answer answer = post("/entries/patch", broken);
      assertThat(answer.status()).isBetween(400, 422);
      assertThat(answer.body())
          .contains("sentence")
          .doesNotContain("Exception", "charline.", "jackson");
    }
    assertThat(
            post("/entries/patch", entry(1, ",\"note\":\"" + "x".repeat(70_000) + "\"")).status())
        .isEqualTo(413);
    assertThat(post("/entries/patch", entry(1, ",\"note\":\"" + "x".repeat(5_000) + "\"")).body())
        .contains("at most 4000 characters");
    assertThat(recorded()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "application/x-www-form-urlencoded | name=%zz | 400 | In a form, a % must be followed by"
            + " two hexadecimal digits",
        "application/x-www-form-urlencoded; charset=utf-99 | name=x | 415 | must be text in UTF-8",
        "application/json;charset=UTF-16 | {} | 415 | must be text in UTF-8",
        "multipart/form-data; boundary=x | --x-- | 415 | A photo must be sent as the picture alone",
      })
  void a_body_in_a_form_that_nothing_reads_is_turned_away(
      String type, String body, int status, String why) throws IOException {
    for (String path : List.of("/set-up/board", "/pair")) {
      Answer answer =
          send(
              "POST " + path,
              here(),
              "Content-Type: " + type + "\r\nX-Bench-Token: " + token() + "\r\n",
              body.getBytes(StandardCharsets.UTF_8));
      assertThat(answer.status()).as(path + answer.body()).isEqualTo(status);
      assertThat(answer.body()).contains(why);
    }
    assertThat(log.boards()).hasSize(1);
  }

  @Test
  void only_a_known_host_is_answered() throws IOException {
    for (String host :
        List.of(
            "evil.example",
            "evil.example:" + server.port(),
            "127.0.0.1:1",
            "127.0.0.1.evil.example:" + server.port())) {
      Answer answer = send("GET /pulse", host, "", new byte[0]);
      assertThat(answer.status()).as(host).isEqualTo(421);
      assertThat(answer.body()).doesNotContain("token\":\"");
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Origin: http://evil.example\r\n",
        "Origin: null\r\n",
        "Sec-Fetch-Site: cross-site\r\n",
        "Sec-Fetch-Site: same-site\r\n"
      })
  void a_post_from_another_site_is_refused_even_with_the_token(String header) throws IOException {
    Answer answer =
        send(
            "POST /entries/patch",
            here(),
            header + "Content-Type: application/json\r\nX-Bench-Token: " + token() + "\r\n",
            entry(1, "").getBytes(StandardCharsets.UTF_8));
    assertThat(answer.status()).isEqualTo(403);
    assertThat(answer.body()).contains("Only pages of this bench may send entries");
    assertThat(recorded()).isEmpty();
  }

  @Test
  void a_post_without_the_form_token_is_refused() throws IOException {
    String form = "name=x&wood=pine&form=solid";
    for (String token : List.of("", "&token=guess")) {
      Answer answer =
          send(
              "POST /set-up/board",
              here(),
              "Content-Type: application/x-www-form-urlencoded\r\n",
              (form + token).getBytes(StandardCharsets.UTF_8));
      assertThat(answer.status()).isEqualTo(403);
    }
    assertThat(log.boards()).hasSize(1);
    assertThat(send("DELETE /patch/P-0001", here(), "", new byte[0]).status()).isEqualTo(405);
  }

  @Test
  void who_asks_for_a_code_comes_to_that_patch() throws IOException {
    post("/entries/patch", entry(1, ""));
    Answer answer = get("/ask?q=p-0001");
    assertThat(answer.status()).isEqualTo(303);
    assertThat(answer.head()).contains("Location: /patch/P-0001");
    assertThat(get("/ask?q=P-0002").body()).contains("I do not know");
  }

  @Test
  void every_answer_tells_the_browser_to_be_strict() throws IOException {
    String script = fileOf("/", "bench.js");
    for (String path : List.of("/", "/record", "/no-such-page", script, "/pulse")) {
      assertThat(get(path).head())
          .as(path)
          .contains("default-src 'none'", "script-src 'self';", "frame-ancestors 'none'")
          .contains("X-Content-Type-Options: nosniff", "X-Frame-Options: DENY")
          .doesNotContain("unsafe-inline", "unsafe-eval", "Server:", "Jetty");
    }
  }

  @Test
  void the_browser_lets_through_the_styles_of_papers_and_no_other() throws Exception {
    post("/entries/patch", entry(1, ""));
    Answer sheet = get(SHEET);
    List<String> carried =
        STYLE.matcher(sheet.body()).results().map(style -> style.group(1)).toList();
    assertThat(carried).isNotEmpty();
    assertThat(sheet.body()).doesNotContain(" style=");
    List<String> allowed = new ArrayList<>();
    for (String text : PaperStyle.everyText()) {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      allowed.add("'sha256-" + Base64.getEncoder().encodeToString(digest) + "'");
    }
    assertThat(PaperStyle.everyText()).containsAll(carried);
    assertThat(sheet.head()).contains("style-src 'self' " + String.join(" ", allowed) + ";");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/../../etc/passwd",
        "/..%2f..%2fetc%2fpasswd",
        "/%2e%2e/%2e%2e/etc/passwd",
        "/01234567/bench.js/../../log.db",
        "/photo/../../x",
        "/photo/P-0001/..%2f..%2fetc%2fpasswd",
        "/patch/..%00",
        "//etc/passwd",
        "/bench/bench.js",
        "/bench.js",
        "/01234567/bench.js"
      })
  void paths_lead_nowhere_but_to_pages(String path) throws IOException {
    Answer answer = get(path);
    assertThat(answer.status()).isBetween(400, 422);
    assertThat(answer.body()).doesNotContain("root:", "Exception", "\tat ", "Jetty");
  }

  @Test
  void a_photo_must_be_a_picture_of_a_fair_size_and_is_served_as_nothing_else() throws IOException {
    post("/entries/patch", entry(1, ""));
    String query = "/photos?patch=" + PATCH + "1&id=" + PATCH;
    String headers = "Content-Type: image/png\r\nX-Bench-Token: " + token() + "\r\n";
    byte[] page = "<html><script>hit=1</script>".getBytes(StandardCharsets.UTF_8);
    Answer mistyped = send("POST " + query + "2", here(), headers, page);
    assertThat(mistyped.status()).isEqualTo(422);
    assertThat(mistyped.body()).contains("A photo must be a JPEG, PNG or WebP picture");
    Answer large =
        send("POST " + query + "3", here(), headers + "Content-Length: 99999999\r\n", new byte[0]);
    assertThat(large.status()).isEqualTo(413);
    assertThat(large.body()).contains("A photo must be at most 12 MB");
    assertThat(log.photos("P-0001")).isEmpty();

    String lying = headers.replace("image/png", "text/html");
    for (int i = 0; i < 2; i++) {
      assertThat(send("POST " + query + "4", here(), lying, PNG).status()).isEqualTo(200);
    }
    assertThat(log.photos("P-0001")).hasSize(1);
    Answer shown = get("/photo/P-0001/" + PATCH + "4");
    assertThat(shown.head())
        .contains("Content-Type: image/png", "default-src 'none'; sandbox", "nosniff")
        .contains("filename=\"P-0001.png\"");
  }

  @Test
  void an_unpaired_device_sees_the_pairing_page_and_nothing_else() throws IOException {
    assertThat(send("GET /record", name, "", new byte[0]).head())
        .contains("302")
        .containsIgnoringCase("location: ")
        .contains("/pair");
    assertThat(send("GET /pair", name, "", new byte[0]).status()).isEqualTo(200);
    String script = fileOf("/record", "record.js");
    for (String path : List.of("/live", "/pulse", "/window/at", script)) {
      assertThat(send("GET " + path, name, "Accept: application/json\r\n", new byte[0]).status())
          .as(path)
          .isEqualTo(401);
    }
    Answer answer =
        send(
            "POST /entries/patch",
            name,
            "Content-Type: application/json\r\nX-Bench-Token: " + token() + "\r\n",
            entry(1, "").getBytes(StandardCharsets.UTF_8));
    assertThat(answer.status()).isEqualTo(401);
    assertThat(recorded()).isEmpty();
  }

  @Test
  void an_unpaired_device_gets_whatever_the_pairing_page_loads() throws IOException {
    Set<String> loaded = loadedBy("/pair", name);
    assertThat(loaded).contains("tokens.css", "bench.js", "queue.js", "icon.svg");
    assertThat(loaded).doesNotContain("record.js", "live.js");
  }

  @Test
  void every_file_for_pages_is_served_and_loaded_by_a_page() throws IOException {
    post("/entries/patch", entry(1, ""));
    Set<String> loaded = new TreeSet<>();
    for (String page :
        List.of(
            "/",
            "/record",
            "/ask",
            "/log",
            "/window?family=latex&wood=pine",
            "/set-up",
            SHEET.replace("/sheet?", "/sheet/preview?"),
            SHEET + "&print=yes")) {
      loaded.addAll(loadedBy(page, here()));
    }
    Path files = Path.of("src", "main", "resources", "bench");
    try (Stream<Path> all = Files.walk(files)) {
      assertThat(loaded)
          .containsExactlyInAnyOrderElementsOf(
              all.filter(Files::isRegularFile)
                  .map(file -> files.relativize(file).toString().replace('\\', '/'))
                  .toList());
    }
  }

  /**
   * The files that a page links, with those that its scripts import; each of them must be there.
   */
  private Set<String> loadedBy(String page, String host) throws IOException {
    Set<String> loaded = new TreeSet<>();
    Deque<String> wanted = new ArrayDeque<>();
    String html = send("GET " + page, host, "", new byte[0]).body();
    FILE.matcher(html).results().map(m -> m.group(1)).forEach(wanted::add);
    while (!wanted.isEmpty()) {
      URI address = URI.create(wanted.remove());
      if (loaded.add(address.getPath().substring("/01234567/".length()))) {
        Answer answer = send("GET " + address, host, "", new byte[0]);
        assertThat(answer.status()).as(address.toString()).isEqualTo(200);
        assertThat(answer.head()).contains("Cache-Control: max-age=31536000, immutable");
        IMPORTED
            .matcher(answer.body())
            .results()
            .forEach(m -> wanted.add(address.resolve(m.group(1)).toString()));
      }
    }
    return loaded;
  }

  /** The address that a page gives to a file. */
  private String fileOf(String page, String file) throws IOException {
    return FILE.matcher(get(page).body())
        .results()
        .filter(m -> m.group(2).equals(file))
        .findFirst()
        .orElseThrow()
        .group(1);
  }

  @Test
  void a_sheet_prints_itself_only_if_it_is_asked_to() throws IOException {
    post("/entries/patch", entry(1, ""));
    assertThat(get(SHEET).body()).contains("<link rel=\"icon\"").doesNotContain("<script");
    assertThat(get(SHEET + "&print=yes").body())
        .containsOnlyOnce("<script")
        .containsPattern("<script type=\"module\" src=\"/[0-9a-f]{8}/print.js\"></script>");
  }

  private Answer pair(String code) throws IOException {
    return send(
        "POST /pair",
        name,
        "Content-Type: application/x-www-form-urlencoded\r\n",
        ("name=phone&code=" + code).getBytes(StandardCharsets.UTF_8));
  }

  private Answer asDevice(String path, String cookie) throws IOException {
    return send(
        "GET " + path, name, "Accept: application/json\r\nCookie: " + cookie + "\r\n", new byte[0]);
  }

  @Test
  void a_code_lets_one_device_in_until_a_week_after_it_was_seen() throws IOException {
    String code = codes.get(0).replace(" ", "");
    String cookie = pair(code).cookie();
    assertThat(asDevice("/pulse", cookie).status()).isEqualTo(200);
    assertThat(asDevice("/devices", cookie).status()).isEqualTo(403);
    assertThat(pair(code).status()).as("the code is used up").isEqualTo(403);
    assertThat(codes).hasSize(2);
    for (int day = 0; day < 10; day += 6) {
      clock.now = clock.now.plus(Duration.ofDays(6));
      assertThat(asDevice("/pulse", cookie).status()).as("seen again").isEqualTo(200);
    }
    clock.now = clock.now.plus(Duration.ofDays(7));
    assertThat(asDevice("/pulse", cookie).status()).as("a week unseen").isEqualTo(401);
  }

  @Test
  void a_paired_device_survives_a_restart_and_its_token_is_nowhere_on_disk() throws Exception {
    String cookie = pair(codes.get(0).replace(" ", "")).cookie();
    String token = cookie.substring(cookie.indexOf('=') + 1);
    Path devices = folder.resolve("boathouse.db.devices");
    assertThat(devices).content().contains("\"name\":\"phone\"").doesNotContain(token);
    assertThat(Files.getPosixFilePermissions(devices))
        .containsExactlyInAnyOrder(PosixFilePermission.OWNER_READ, PosixFilePermission.OWNER_WRITE);
    restart();
    assertThat(asDevice("/pulse", cookie).status()).as("after a restart").isEqualTo(200);
    String id = idOf("phone");
    String form = "Content-Type: application/x-www-form-urlencoded\r\nX-Bench-Token: " + token();
    send(
        "POST /devices/rename",
        here(),
        form + "\r\n",
        ("id=" + id + "&name=tablet").getBytes(StandardCharsets.UTF_8));
    assertThat(get("/devices").body()).contains("<h3>tablet</h3>");
    send("POST /devices/revoke", here(), form + "\r\n", ("id=" + id).getBytes());
    restart();
    assertThat(asDevice("/pulse", cookie).status()).as("revoked").isEqualTo(401);
  }

  private String idOf(String device) throws IOException {
    Matcher m =
        Pattern.compile("<h3>" + device + "</h3>.*?name=\"id\" value=\"([^\"]+)\"", Pattern.DOTALL)
            .matcher(get("/devices").body());
    assertThat(m.find()).isTrue();
    return m.group(1);
  }

  /** What a camera reads off the Devices page is the address that pairs with the code filled in. */
  @Test
  void the_code_to_scan_holds_the_address_and_the_pairing_code() throws Exception {
    String page = get("/devices").body();
    Matcher drawn =
        Pattern.compile("viewBox=\"0 0 (\\d+) \\d+\"[^>]*crispEdges\"><path d=\"([^\"]+)\"")
            .matcher(page);
    assertThat(drawn.find()).as(page).isTrue();
    int size = Integer.parseInt(drawn.group(1));
    int scale = 4;
    BitMatrix matrix = new BitMatrix(size * scale);
    Pattern.compile("M(\\d+) (\\d+)h1v1h-1z")
        .matcher(drawn.group(2))
        .results()
        .forEach(
            m ->
                matrix.setRegion(
                    Integer.parseInt(m.group(1)) * scale,
                    Integer.parseInt(m.group(2)) * scale,
                    scale,
                    scale));
    int[] pixels = new int[size * scale * size * scale];
    for (int i = 0; i < pixels.length; i++) {
      pixels[i] = matrix.get(i % (size * scale), i / (size * scale)) ? 0 : 0xffffff;
    }
    String read =
        new QRCodeReader()
            .decode(
                new BinaryBitmap(
                    new HybridBinarizer(
                        new RGBLuminanceSource(size * scale, size * scale, pixels))))
            .getText();
    String code = codes.get(0).replace(" ", "");
    assertThat(read).matches("http://.*:" + server.port() + "/pair\\?code=" + code);
    Answer opened = send("GET /pair?code=" + code, name, "", new byte[0]);
    assertThat(opened.body()).contains("value=\"" + code + "\"");
  }

  @Test
  void a_code_is_good_for_ten_minutes_and_guessing_is_slowed() throws IOException {
    String code = codes.get(0).replace(" ", "");
    for (int i = 0; i < 5; i++) {
      assertThat(pair("00000000").status()).isEqualTo(403);
    }
    assertThat(pair(code).status()).as("even the right one, too soon").isEqualTo(429);
    clock.now = clock.now.plusSeconds(61);
    for (int i = 0; i < 5; i++) {
      assertThat(pair("00000000").status()).isEqualTo(403);
    }
    assertThat(codes).as("ten wrong guesses replace the code").hasSize(2);
    clock.now = clock.now.plus(Duration.ofMinutes(11));
    assertThat(pair(codes.get(1).replace(" ", "")).status()).as("too late").isEqualTo(403);
    assertThat(codes).hasSize(3);
    assertThat(pair(codes.get(2).replace(" ", "")).status()).isEqualTo(303);
  }

  @Test
  void a_page_that_is_not_shared_listens_to_this_machine_alone() throws IOException {
    try (PageServer own =
        PageServer.start(
            log,
            new PageOptions(
                0,
                false,
                "Runa",
                "test",
                clock,
                codes::add,
                Duration.ofMinutes(2),
                new FaultFiles(folder.resolve("faults"), "test")))) {
      assertThat(own.sharedAddresses()).isEmpty();
      try (Socket socket = new Socket()) {
        String address = name.replaceAll(":\\d+$", "").replaceAll("[\\[\\]]", "");
        org.assertj.core.api.Assertions.assertThatThrownBy(
                () -> socket.connect(new java.net.InetSocketAddress(address, own.port()), 2000))
            .isInstanceOf(IOException.class);
      }
    }
    assertThat(codes).hasSize(1);
  }

  @Test
  void a_fault_of_the_program_is_a_500_that_names_the_file_with_the_details() throws IOException {
    clock.broken = true;

    String live = "/live?" + settings("60%25");
    Answer page = get(live);
    Answer json = send("GET " + live, here(), "Accept: application/json\r\n", new byte[0]);

    assertThat(page.status()).isEqualTo(500);
    assertThat(page.body()).contains("charline has a fault (IllegalStateException)");
    assertThat(json.status()).isEqualTo(500);
    assertThat(json.body()).startsWith("{\"sentence\":\"charline has a fault");
    try (Stream<Path> files = Files.list(folder.resolve("faults"))) {
      List<Path> all = files.toList();
      assertThat(all).as("one fault, seen twice").hasSize(1);
      Path file = all.get(0);
      assertThat(page.body()).contains(file.toString());
      assertThat(file)
          .content()
          .contains("charline test", "GET /live\n", "fell off the wall", "\tat ");
    }
  }
}
