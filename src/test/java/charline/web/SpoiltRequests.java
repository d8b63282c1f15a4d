package charline.web;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import java.util.stream.IntStream;

/** Makes requests to a bench page, spoilt in address, headers, body and length. */
final class SpoiltRequests {
  private static final List<String> VALUES =
      List.of(
          "",
          " ",
          "0",
          "-1",
          "1e999",
          "NaN",
          "60",
          "60%",
          "1,5",
          "0x1F",
          "999999999999999999999",
          "=1+1",
          "=cmd|' /C x'!A0",
          "+1",
          "@SUM(A1)",
          "\t=1",
          "<script>hit=1</script>",
          "%s%n",
          "\\u0000",
          "\\ud800",
          "\\u202e",
          "Ünïcödé",
          "\ud83d\ude80",
          "'; DROP TABLE patch; --",
          "../../etc/passwd",
          "clean",
          "char",
          "clean+char",
          "tint",
          "heron",
          "offcut",
          "wall-latex",
          "hand",
          "timed",
          "scan",
          "true",
          "latex",
          "pine",
          "P-0001",
          "W-7F3K",
          "2026-11-02T08:00:00Z",
          "9999-12-31T00:00:00Z",
          "x".repeat(5000));

  /** Stands for the address of a script, which is known once the page is served. */
  private static final String SCRIPT = "/bench.js";

  private static final List<String> PAGES =
      List.of(
          "/",
          "/record",
          "/live",
          "/ask",
          "/window",
          "/window/at",
          "/sheet",
          "/set-up",
          "/devices",
          "/pair",
          "/pulse",
          "/patch/P-0001",
          "/patch/P-9999",
          "/photo/P-0001/x",
          SCRIPT,
          "/entries/patch",
          "/entries/reading",
          "/entries/undo",
          "/photos",
          "/set-up/rig",
          "/set-up/check",
          "/set-up/board",
          "/set-up/finish",
          "/put-right/rig",
          "/put-right/check",
          "/put-right/board/void",
          "/put-right/finish/join",
          "/put-right/none",
          "/patch/P-0001/void",
          "/devices/revoke",
          "/none",
          "/../../etc/passwd",
          "/%2e%2e/%2e%2e/x",
          "/%",
          "/%ff",
          "//",
          "/patch/%00",
          "*",
          "http://boathouse.example/",
          "/a b",
          "");

  private static final List<String> NAMES =
      List.of(
          "id",
          "of",
          "of_patch",
          "patch",
          "rig",
          "board",
          "finish",
          "form",
          "power",
          "hand",
          "width",
          "spot",
          "rep",
          "seconds",
          "area",
          "scan",
          "spacing",
          "passes",
          "outcome",
          "soot",
          "depth",
          "note",
          "by",
          "at",
          "tape",
          "sure",
          "name",
          "wood",
          "moisture",
          "q",
          "family",
          "light",
          "risk",
          "confidence",
          "clear",
          "speed",
          "reading",
          "like",
          "why",
          "code",
          "kind",
          "rated",
          "percent",
          "watts",
          "coat1",
          "token");

  private static final List<String> HEADERS =
      List.of(
          "Origin: http://boathouse.example",
          "Cookie: bench_device=" + "x".repeat(500),
          "Accept: */*",
          "Accept: application/json",
          "Content-Length: 5",
          "Content-Length: -1",
          "Content-Length: x",
          "Content-Length: 99999999999999999999",
          "Transfer-Encoding: chunked",
          "Transfer-Encoding: gzip, chunked",
          "Content-Encoding: gzip",
          "Expect: 100-continue",
          "Host: boathouse.example",
          "X-Long: " + "y".repeat(20_000),
          "Connection: Upgrade",
          "Upgrade: websocket",
          "Range: bytes=0-1",
          "X-Forwarded-For: 127.0.0.1",
          ": no name",
          "No colon",
          "X-Http-Method-Override: DELETE",
          "If-None-Match: \"x\"",
          "Sec-Fetch-Site: cross-site");

  private static final List<String> TYPES =
      List.of(
          "application/json",
          "application/json; charset=utf-16",
          "application/json; charset=utf-99",
          "application/x-www-form-urlencoded",
          "multipart/form-data; boundary=tape",
          "multipart/form-data",
          "image/png",
          "text/plain",
          "/");

  private final String host;
  private final String token;
  private final String patch;
  private final String script;

  /**
   * @param patch identity of a patch in the log
   * @param script address of a script of the page
   */
  SpoiltRequests(String host, String token, String patch, String script) {
    this.host = host;
    this.token = token;
    this.patch = patch;
    this.script = script;
  }

  /** One that nothing is wrong with. */
  byte[] good() {
    byte[] body = entry(new Random(0), 0).getBytes(StandardCharsets.UTF_8);
    return request("POST", "/entries/patch", List.of(), "application/json", body.length, body);
  }

  byte[] request(Random random) {
    boolean aimed = random.nextInt(3) > 0;
    boolean posted = aimed || random.nextBoolean();
    String method =
        random.nextInt(12) == 0
            ? one(
                List.of("PUT", "DELETE", "OPTIONS", "TRACE", "CONNECT", "HEAD", "get", "\u0001"),
                random)
            : posted ? "POST" : "GET";
    List<String> headers = new ArrayList<>();
    for (int n = random.nextInt(4) == 0 ? 1 + random.nextInt(3) : 0; n > 0; n--) {
      headers.add(one(HEADERS, random));
    }
    if (!posted) {
      return request(method, path(random), headers, null, -1, new byte[0]);
    }
    byte[] body = body(random);
    int length =
        switch (random.nextInt(12)) {
          case 0 -> body.length + 1 + random.nextInt(1_000_000);
          case 1 -> random.nextInt(body.length + 1);
          case 2 -> -1;
          default -> body.length;
        };
    String place =
        aimed ? "/entries/" + one(List.of("patch", "reading", "undo"), random) : path(random);
    String type = aimed && random.nextInt(8) > 0 ? "application/json" : one(TYPES, random);
    return request(method, place, headers, type, length, body);
  }

  private byte[] request(
      String method, String path, List<String> headers, String type, int length, byte[] body) {
    StringBuilder head = new StringBuilder();
    head.append("%s %s HTTP/1.1\r\nHost: %s\r\n".formatted(method, path, host));
    head.append("Connection: close\r\nX-Bench-Token: %s\r\n".formatted(token));
    headers.forEach(header -> head.append(header).append("\r\n"));
    if (type != null) {
      head.append("Content-Type: ").append(type).append("\r\n");
    }
    if (length >= 0) {
      head.append("Content-Length: ").append(length).append("\r\n");
    }
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.writeBytes(head.append("\r\n").toString().getBytes(StandardCharsets.UTF_8));
    bytes.writeBytes(body);
    return bytes.toByteArray();
  }

  private String path(Random random) {
    StringBuilder path = new StringBuilder(one(PAGES, random).replace(SCRIPT, script));
    if (random.nextBoolean()) {
      for (int n = 1 + random.nextInt(4); n > 0; n--) {
        path.append(path.indexOf("?") < 0 ? '?' : '&').append(one(NAMES, random)).append('=');
        path.append(random.nextInt(6) == 0 ? one(VALUES, random) : escaped(one(VALUES, random)));
      }
    }
    return path.toString();
  }

  private byte[] body(Random random) {
    return switch (random.nextInt(12)) {
      case 0 -> noise(random, random.nextInt(2000));
      case 1 -> noise(random, 100_000 + random.nextInt(1_000_000));
      case 2 -> ("[".repeat(1 + random.nextInt(50_000))).getBytes(StandardCharsets.UTF_8);
      case 3 -> form(random).getBytes(StandardCharsets.UTF_8);
      case 4 -> multipart(random);
      case 5 ->
          ("{\"passes\":1" + "0".repeat(random.nextInt(60_000)) + "}")
              .getBytes(StandardCharsets.UTF_8);
      case 6 -> "5\r\nhello\r\nffffffffff\r\n".getBytes(StandardCharsets.UTF_8);
      default -> entry(random, 1 + random.nextInt(3)).getBytes(StandardCharsets.UTF_8);
    };
  }

  /** An entry of a device, some of its values spoilt. */
  private String entry(Random random, int spoils) {
    UUID id =
        new UUID(
            0x019a_0000_0000_7000L | random.nextInt(0x1000),
            random.nextLong() >>> 2 | Long.MIN_VALUE);
    String entry =
        """
        {"id":"%s","of_patch":"%s","of":"%s","rig":"heron","board":"offcut","finish":"wall-latex",
         "form":"hand","power":"60","hand":"20","width":"60","spot":"0.5","rep":"60","passes":"2",
         "outcome":"clean","note":"=1+1","by":"Bo"}"""
            .formatted(id, patch, patch);
    for (int i = 0; i < spoils; i++) {
      List<String> parts = new ArrayList<>(List.of(entry.split("\"", -1)));
      int at = random.nextInt(parts.size());
      parts.set(at, one(VALUES, random));
      entry = String.join("\"", parts);
    }
    return random.nextInt(10) == 0 ? entry.substring(0, random.nextInt(entry.length())) : entry;
  }

  private static String form(Random random) {
    List<String> fields =
        IntStream.range(0, 1 + random.nextInt(8))
            .mapToObj(i -> one(NAMES, random) + "=" + escaped(one(VALUES, random)))
            .toList();
    return String.join("&", fields) + (random.nextBoolean() ? "&%zz=%" : "");
  }

  private static byte[] multipart(Random random) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    for (int n = random.nextInt(5); n > 0; n--) {
      String head =
          "--tape\r\nContent-Disposition: form-data; name=\"%s\"; filename=\"%s\"\r\n\r\n"
              .formatted(one(NAMES, random), one(VALUES, random));
      bytes.writeBytes(head.getBytes(StandardCharsets.UTF_8));
      bytes.writeBytes(noise(random, random.nextInt(5000)));
    }
    bytes.writeBytes((random.nextBoolean() ? "\r\n--tape--" : "").getBytes(StandardCharsets.UTF_8));
    return bytes.toByteArray();
  }

  private static byte[] noise(Random random, int length) {
    byte[] bytes = new byte[length];
    random.nextBytes(bytes);
    return bytes;
  }

  private static String escaped(String text) {
    StringBuilder escaped = new StringBuilder();
    for (byte b : text.getBytes(StandardCharsets.UTF_8)) {
      escaped.append("%%%02X".formatted(b & 0xFF));
    }
    return escaped.toString();
  }

  private static <T> T one(List<T> of, Random random) {
    return of.get(random.nextInt(of.size()));
  }
}
