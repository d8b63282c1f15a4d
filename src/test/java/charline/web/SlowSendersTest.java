package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import charline.fault.FaultFiles;
import charline.log.Boathouse;
import charline.log.Filter;
import charline.log.Logbook;
import charline.web.pages.PageOptions;
import java.io.IOException;
import java.io.OutputStream;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Many devices that send slowly, or never to the end. */
class SlowSendersTest {
  /** More than the server has threads. */
  private static final int STALLED = 320;

  private static final int PHONES = 100;
  private static final int PATIENCE_MILLISECONDS = 20_000;

  @TempDir Path folder;
  private final List<Socket> sockets = new ArrayList<>();
  private Logbook log;
  private PageServer server;

  @BeforeEach
  void serve() {
    log = Logbook.open(folder.resolve("boathouse.db"), Boathouse.CLOCK);
    new Boathouse(log);
    server =
        PageServer.start(
            log,
            new PageOptions(
                0,
                true,
                "Runa",
                "test",
                Boathouse.CLOCK,
                code -> {},
                PageOptions.PATIENCE,
                new FaultFiles(folder.resolve("faults"), "test")));
  }

  @AfterEach
  void close() throws IOException {
    for (Socket socket : sockets) {
      socket.close();
    }
    server.close();
    log.close();
  }

  private Socket connect() throws IOException {
    Socket socket = new Socket("127.0.0.1", server.port());
    socket.setSoTimeout(PATIENCE_MILLISECONDS);
    sockets.add(socket);
    return socket;
  }

  private static void write(Socket socket, String text) throws IOException {
    OutputStream out = socket.getOutputStream();
    out.write(text.getBytes(StandardCharsets.UTF_8));
    out.flush();
  }

  private String head(String host, String line, String more) {
    return "%s HTTP/1.1\r\nHost: %s\r\n%s\r\n".formatted(line, host, more);
  }

  private String here() {
    return "127.0.0.1:" + server.port();
  }

  /** The answer to a request on a connection of its own. */
  private String get(String path) throws IOException {
    Socket socket = connect();
    write(socket, head(here(), "GET " + path, "Connection: close\r\n"));
    return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
  }

  private static String statusOf(Socket socket) throws IOException {
    return new String(socket.getInputStream().readNBytes(12), StandardCharsets.UTF_8);
  }

  @Test
  void bodies_of_unpaired_devices_that_never_end_do_not_freeze_the_page() throws IOException {
    String shop = server.sharedAddresses().get(0).replaceAll("http://|/$", "");
    for (int i = 0; i < STALLED; i++) {
      write(
          connect(),
          head(
                  shop,
                  "POST /pair",
                  "Content-Type: application/x-www-form-urlencoded\r\nContent-Length: 100\r\n")
              + "name=");
    }
    assertThat(get("/pulse")).startsWith("HTTP/1.1 200");
  }

  @Test
  void an_unpaired_device_may_send_a_few_hundred_bytes() throws IOException {
    String shop = server.sharedAddresses().get(0).replaceAll("http://|/$", "");
    Socket socket = connect();
    write(
        socket,
        head(
                shop,
                "POST /pair",
                "Content-Type: application/x-www-form-urlencoded\r\nContent-Length: 3000\r\n")
            + "name="
            + "x".repeat(2995));
    assertThat(statusOf(socket)).isEqualTo("HTTP/1.1 413");
  }

  @Test
  void a_hundred_phones_on_a_slow_network_are_all_served_and_others_meanwhile() throws IOException {
    Matcher token =
        Pattern.compile("name=\"bench-token\" content=\"([^\"]+)\"").matcher(get("/set-up"));
    assertThat(token.find()).isTrue();
    List<Socket> phones = new ArrayList<>();
    List<String> rest = new ArrayList<>();
    for (int i = 0; i < PHONES; i++) {
      String body =
          """
          {"id":"019a0000-0000-7000-8000-%012d","reading":"019b0000-0000-7000-8000-%012d",\
          "rig":"shop-200","board":"door stile","finish":"white over grey","power":"60 %%",\
          "hand":"22 mm/s","passes":"1","outcome":"clean","sure":true}\
          """
              .formatted(i, i);
      Socket phone = connect();
      write(
          phone,
          head(
              here(),
              "POST /entries/patch",
              "Content-Type: application/json\r\nX-Bench-Token: %s\r\nContent-Length: %d\r\n"
                  .formatted(token.group(1), body.length())));
      phones.add(phone);
      rest.add(body);
    }
    while (!rest.get(0).isEmpty()) { // each phone sends a few bytes, again and again
      for (int i = 0; i < PHONES; i++) {
        int end = Math.min(20, rest.get(i).length());
        write(phones.get(i), rest.get(i).substring(0, end));
        rest.set(i, rest.get(i).substring(end));
      }
      assertThat(get("/pulse")).startsWith("HTTP/1.1 200");
    }
    for (Socket phone : phones) {
      assertThat(statusOf(phone)).isEqualTo("HTTP/1.1 200");
    }
    assertThat(log.patches(Filter.ALL)).hasSize(PHONES);
  }
}
