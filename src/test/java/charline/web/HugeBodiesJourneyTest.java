package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Bodies without end, sent to a bench page that has far less memory than they would fill. */
class HugeBodiesJourneyTest {
  private static final int AT_ONCE = 6;
  private static final int MEGABYTES = 60;

  @TempDir Path folder;

  @Test
  void bodies_without_end_are_cut_off_and_the_page_serves_on() throws Exception {
    Path file = folder.resolve("boathouse.db");
    for (String line :
        List.of(
            "rig add heron --kind pulsed --rated 300W --spot 0.5mm --rep 60kHz --width 60mm",
            "board add offcut --wood pine",
            "finish add wall-latex --coat latex:pale:90um")) {
      BenchProcess.run(folder, ("--log " + file + " " + line).split(" "));
    }
    ExecutorService senders = Executors.newFixedThreadPool(AT_ONCE);
    try (BenchProcess bench = BenchProcess.serveWithin("192m", file)) {
      Device device = new Device(bench.address(), 1);
      UUID patch = device.identity();
      device.patch(patch);
      for (String path : List.of("/photos?patch=%s&id=%s", "/entries/patch", "/set-up/board")) {
        String place = path.formatted(patch, device.identity());
        Callable<String> sending = () -> send(bench.port(), place, device.token());
        for (Future<String> sent : senders.invokeAll(Collections.nCopies(AT_ONCE, sending))) {
          assertThat(sent.get()).as(place).matches("(HTTP/1.1 413 )?");
        }
      }
      assertThat(device.patch(device.identity())).isEqualTo("P-0002");
      device.photo(patch);
    } finally {
      senders.shutdownNow();
    }
    assertThat(BenchProcess.run(folder, "--log", file.toString(), "check")).contains("2 patches");
  }

  /** Sends a body in chunks; gives how the answer begins, nothing if the server hung up. */
  private static String send(int port, String place, String token) throws IOException {
    byte[] chunk = new byte[1 << 20];
    String type =
        place.startsWith("/set-up") ? "application/x-www-form-urlencoded" : "application/json";
    try (Socket socket = new Socket("127.0.0.1", port)) {
      OutputStream out = socket.getOutputStream();
      String head =
          "POST %s HTTP/1.1\r\nHost: 127.0.0.1:%d\r\nX-Bench-Token: %s\r\nContent-Type: %s\r\nTransfer-Encoding: chunked\r\n\r\n"
              .formatted(place, port, token, type);
      out.write(head.getBytes(StandardCharsets.UTF_8));
      for (int i = 0; i < MEGABYTES && socket.getInputStream().available() == 0; i++) {
        out.write((Integer.toHexString(chunk.length) + "\r\n").getBytes(StandardCharsets.UTF_8));
        out.write(chunk);
        out.write("\r\n".getBytes(StandardCharsets.UTF_8));
      }
      assertThat(socket.getInputStream().available()).as("an answer before the end").isPositive();
      return new String(socket.getInputStream().readNBytes(13), StandardCharsets.UTF_8);
    } catch (SocketException e) {
      return "";
    }
  }
}
