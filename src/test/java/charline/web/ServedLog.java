package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import charline.cli.Main;
import charline.fault.FaultFiles;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.web.pages.PageOptions;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A log of some of the boathouse's trials with its bench page, and the command line beside it. */
final class ServedLog implements AutoCloseable {
  private final HttpClient client = HttpClient.newHttpClient();
  private final Clock clock = Clock.fixed(Instant.parse("2026-11-20T09:00:00Z"), ZoneOffset.UTC);
  private final Path file;
  private final Logbook log;
  private final PageServer server;

  /**
   * @param sheets names of trial sheets, without ending
   */
  ServedLog(Path folder, String... sheets) {
    this(
        folder,
        Duration.ofMinutes(2),
        List.of(
            "import %s --rigs sample-trials/rigs.csv --power-checks sample-trials/power-checks.csv"
                .formatted(
                    Arrays.stream(sheets)
                        .map("sample-trials/%s.csv"::formatted)
                        .collect(Collectors.joining(" ")))));
  }

  private ServedLog(Path folder, Duration patience, List<String> lines) {
    file = folder.resolve("boathouse.db");
    lines.forEach(this::charline);
    log = Logbook.open(file, clock);
    server =
        PageServer.start(
            log,
            new PageOptions(
                0,
                false,
                "Runa",
                "test",
                clock,
                code -> {},
                patience,
                new FaultFiles(folder.resolve("faults"), "test")));
  }

  /**
   * A log as some commands make it, whose page waits for answers no longer than it usually does.
   */
  static ServedLog begun(Path folder, String... lines) {
    return new ServedLog(folder, PageOptions.PATIENCE, List.of(lines));
  }

  String address() {
    return server.address();
  }

  /** The routes that the page answers with GET, such as "/patch/{code}". */
  List<String> routes() {
    return server.routes();
  }

  int port() {
    return server.port();
  }

  Logbook log() {
    return log;
  }

  /** What the command line answers; it must succeed. */
  String charline(String line) {
    return charline(line, 0);
  }

  /** What the command line answers, with an exit code. */
  String charline(String line, int expected) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    int code =
        Main.run(
            Stream.concat(Stream.of("--log", file.toString()), Arrays.stream(line.split(" ")))
                .toArray(String[]::new),
            new ByteArrayInputStream(new byte[0]),
            new PrintStream(out, true, StandardCharsets.UTF_8),
            System.err,
            Map.of("CHARLINE_BY", "Runa"),
            clock);
    assertThat(code).isEqualTo(expected);
    return out.toString(StandardCharsets.UTF_8);
  }

  /** A page; it must be there. */
  String page(String path) throws IOException, InterruptedException {
    return got(path, 200);
  }

  /** What stands in place of a page that was asked for wrongly. */
  String refusal(String path) throws IOException, InterruptedException {
    return got(path, 422);
  }

  /** A text with all white space alike, as a page or a terminal breaks its lines. */
  static String flat(String text) {
    return text.replaceAll("\\s+", " ");
  }

  private String got(String path, int status) throws IOException, InterruptedException {
    var answer =
        client.send(
            HttpRequest.newBuilder(URI.create(server.address() + path)).build(),
            BodyHandlers.ofString());
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(status);
    return answer.body();
  }

  /** A page, whatever its status. */
  String answer(String path) throws IOException, InterruptedException {
    return client
        .send(
            HttpRequest.newBuilder(URI.create(server.address() + path)).build(),
            BodyHandlers.ofString())
        .body();
  }

  /** What comes back when a form is sent, whatever its status. */
  String post(String path, String form) throws IOException, InterruptedException {
    return send(path, "application/x-www-form-urlencoded", form);
  }

  /** The page that a form leads to. */
  String led(String path, String form) throws IOException, InterruptedException {
    HttpResponse<byte[]> answer =
        answer(path, "application/x-www-form-urlencoded", form.getBytes(StandardCharsets.UTF_8));
    assertThat(answer.statusCode())
        .as(new String(answer.body(), StandardCharsets.UTF_8))
        .isEqualTo(303);
    return page(answer.headers().firstValue("Location").orElseThrow().substring(1));
  }

  /** What comes back when an entry is sent, whatever its status. */
  String entry(String path, String json) throws IOException, InterruptedException {
    return send(path, "application/json", json);
  }

  /** Sends a file; gives the identity that names it in an address. */
  String file(Path file) throws IOException, InterruptedException {
    String reply =
        new String(
            bytes(
                "log/file?name=" + file.getFileName().toString().replace(" ", "%20"),
                "application/octet-stream",
                Files.readAllBytes(file)),
            StandardCharsets.UTF_8);
    Matcher id = Pattern.compile("\"id\":\"([^\"]+)\"").matcher(reply);
    assertThat(id.find()).as(reply).isTrue();
    return id.group(1);
  }

  /** What a link to a file gives. */
  byte[] download(String path) throws IOException, InterruptedException {
    var answer =
        client.send(
            HttpRequest.newBuilder(URI.create(server.address() + path)).build(),
            BodyHandlers.ofByteArray());
    assertThat(answer.statusCode()).isEqualTo(200);
    assertThat(answer.headers().firstValue("Content-Disposition").orElse(""))
        .startsWith("attachment");
    return answer.body();
  }

  private String send(String path, String type, String form)
      throws IOException, InterruptedException {
    return new String(
        bytes(path, type, form.getBytes(StandardCharsets.UTF_8)), StandardCharsets.UTF_8);
  }

  private byte[] bytes(String path, String type, byte[] body)
      throws IOException, InterruptedException {
    return answer(path, type, body).body();
  }

  private HttpResponse<byte[]> answer(String path, String type, byte[] body)
      throws IOException, InterruptedException {
    Matcher token =
        Pattern.compile("name=\"bench-token\" content=\"([^\"]+)\"").matcher(page("set-up"));
    assertThat(token.find()).isTrue();
    return client.send(
        HttpRequest.newBuilder(URI.create(server.address() + path))
            .header("Content-Type", type)
            .header("X-Bench-Token", token.group(1))
            .POST(HttpRequest.BodyPublishers.ofByteArray(body))
            .build(),
        BodyHandlers.ofByteArray());
  }

  @Override
  public void close() {
    server.close();
    log.close();
  }

  /** A copy of this log in which another bench noted something else of one patch. */
  Path otherBench(Path folder) throws IOException, InterruptedException {
    Path other = folder.resolve("slipway.db");
    Files.write(other, download("log/backup"));
    try (Logbook there = Logbook.openExisting(other, Clock.systemUTC())) {
      PatchEntry entry = there.patch("LP-01");
      there.amend(
          new PatchEntry(
              entry.patch(),
              entry.typed(),
              entry.by(),
              Optional.of("by the slipway"),
              entry.voided()),
          "Ansa",
          "seen there");
    }
    charline("patch amend LP-01 --note here --why seen");
    return other;
  }
}
