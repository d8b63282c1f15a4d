package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import charline.log.Filter;
import charline.log.Finding;
import charline.log.Logbook;
import charline.log.sheet.TrialSheetExporter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.StringWriter;
import java.net.Socket;
import java.net.SocketException;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Requests spoilt by chance, the chance seeded. Each is answered with a status that blames the
 * request, without a word of what the program is made of, or the connection is closed; what is not
 * taken leaves the log as it was. {@code -Dcharline.cases=20000} tries as many.
 */
class SpoiltRequestPropertyTest {
  private static final int CASES = Integer.getInteger("charline.cases", 250);

  /** Methods and versions that no server has to know (RFC 9110, 15.6.2 and 15.6.6). */
  private static final List<Integer> NO_SUCH_HTTP = List.of(501, 505);

  @TempDir Path folder;
  private ServedLog served;
  private Logbook log;
  private SpoiltRequests spoilt;

  @BeforeEach
  void serve() throws IOException {
    served =
        ServedLog.begun(
            folder,
            "rig add heron --kind pulsed --rated 300W --spot 0.5mm --rep 60kHz --width 60mm",
            "board add offcut --wood pine",
            "finish add wall-latex --coat latex:pale:90um",
            "patch add --board offcut --finish wall-latex --power 60% --hand 20 --passes 1"
                + " --outcome residue");
    log = served.log();
    String host = "127.0.0.1:" + served.port();
    String pulse = answer("GET /pulse HTTP/1.1\r\nHost: %s\r\nConnection: close\r\n\r\n", host);
    Matcher token = Pattern.compile("\"token\":\"([^\"]+)\"").matcher(pulse);
    assertThat(token.find()).isTrue();
    String page = answer("GET / HTTP/1.1\r\nHost: %s\r\nConnection: close\r\n\r\n", host);
    Matcher script = Pattern.compile("src=\"(/[^\"]+)\"").matcher(page);
    assertThat(script.find()).isTrue();
    String patch = log.patch("P-0001").patch().id().toString();
    spoilt = new SpoiltRequests(host, token.group(1), patch, script.group(1));
  }

  @AfterEach
  void close() {
    served.close();
  }

  private String answer(String request, Object... values) throws IOException {
    return answer(request.formatted(values).getBytes(StandardCharsets.UTF_8));
  }

  /** What came back; empty if the server hung up. It waits for no more than was sent. */
  private String answer(byte[] request) throws IOException {
    try (Socket socket = new Socket("127.0.0.1", served.port())) {
      socket.setSoTimeout(60_000);
      try {
        OutputStream out = socket.getOutputStream();
        out.write(request);
        out.flush();
        socket.shutdownOutput();
        String all =
            new String(socket.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
        return all.replaceFirst("^HTTP/1.1 100 Continue\r\n\r\n", "");
      } catch (SocketTimeoutException e) {
        throw new AssertionError("The server neither answered nor hung up.", e);
      } catch (SocketException e) {
        return ""; // it hung up on what was still being sent
      }
    }
  }

  @Test
  void a_spoilt_request_is_answered_in_sentences_or_not_at_all_and_writes_all_or_nothing()
      throws IOException {
    int refused = 0;
    int taken = 0;
    for (int i = 0; i < CASES; i++) {
      byte[] request = spoilt.request(new Random(i));
      String what = "seed %d: %.300s".formatted(i, new String(request, StandardCharsets.UTF_8));
      String before = log.state();
      String answer = answer(request);
      if (!answer.isEmpty()) {
        assertThat(answer).as(what).startsWith("HTTP/1.");
        int status = Integer.parseInt(answer.substring(9, 12));
        assertThat(NO_SUCH_HTTP.contains(status) ? 400 : status).as(what).isBetween(200, 499);
        assertThat(answer).as(what).doesNotContain("Exception", "\tat ", "Jetty", "jackson");
      }
      if (answer.matches("(?s)HTTP/1.1 [23].*")) {
        taken++;
      } else {
        refused++;
        assertThat(log.state()).as("the log after " + what).isEqualTo(before);
      }
    }
    assertThat(refused).as("most are spoilt past use").isGreaterThan(CASES / 2);
    assertThat(taken).as("some are not").isPositive();
    assertThat(log.check()).noneMatch(finding -> finding.kind() == Finding.Kind.FAULT);
    assertThat(answer(spoilt.good())).as("it still serves").startsWith("HTTP/1.1 200");
    exportsNoFormula();
  }

  /** A spreadsheet runs a cell that begins with one of these, unless it is a number. */
  private void exportsNoFormula() throws IOException {
    StringWriter sheet = new StringWriter();
    TrialSheetExporter.write(log.patches(Filter.ALL), log.ownWords(), sheet);
    assertThat(sheet.toString()).contains("'=");
    for (String cell : sheet.toString().split("[,\n]")) {
      assertThat(cell).doesNotMatch("(?s)\"?([=@\t\r]|[+-](?!\\d)).*");
    }
  }
}
