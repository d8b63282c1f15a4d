package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import charline.BuiltJar;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The built jar serving a log, in a process of its own. */
final class BenchProcess implements ServedBench {
  private static final Pattern ADDRESS = Pattern.compile("is at (http://127\\.0\\.0\\.1:(\\d+)/)");
  private static final Pattern CODE = Pattern.compile("Pairing code, .*: (\\d{4}) (\\d{4})");

  private final Process process;
  private final Path log;
  private final List<String> options;
  private String code = "";
  private int port;

  private BenchProcess(Path log, List<String> options, int port) throws IOException {
    this(log, options, port, Map.of());
  }

  private BenchProcess(Path log, List<String> options, int port, Map<String, String> environment)
      throws IOException {
    this.log = log;
    this.options = options;
    List<String> words =
        new ArrayList<>(List.of("--log", log.toString(), "bench", "--port", String.valueOf(port)));
    words.addAll(options);
    ProcessBuilder builder = charline(words).redirectErrorStream(true);
    builder.environment().putAll(environment);
    process = builder.start();
    BufferedReader said = process.inputReader(StandardCharsets.UTF_8);
    StringBuilder all = new StringBuilder();
    for (String line = said.readLine(); line != null; line = said.readLine()) {
      all.append(line).append('\n');
      Matcher address = ADDRESS.matcher(line);
      if (address.find()) {
        this.port = Integer.parseInt(address.group(2));
      }
      Matcher pairing = CODE.matcher(line);
      if (pairing.find()) {
        code = pairing.group(1) + pairing.group(2);
      }
      if (line.startsWith("Press Ctrl-C")) {
        return;
      }
    }
    throw new AssertionError("The bench page did not start: " + all);
  }

  /** Serves a log on a free port. */
  static BenchProcess serve(Path log, String... options) throws IOException {
    return new BenchProcess(log, List.of(options), 0);
  }

  /** The same with no more memory than given, such as 256m. */
  static BenchProcess serveWithin(String memory, Path log) throws IOException {
    return new BenchProcess(log, List.of(), 0, Map.of("JAVA_TOOL_OPTIONS", "-Xmx" + memory));
  }

  /** Runs a command of the jar to its end, and gives what it said. */
  static String run(Path folder, String... words) throws IOException, InterruptedException {
    Process process =
        charline(List.of(words)).directory(folder.toFile()).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(said).isZero();
    return said;
  }

  private static ProcessBuilder charline(List<String> words) throws IOException {
    ProcessBuilder builder = new ProcessBuilder(BuiltJar.command(words));
    builder.environment().put("CHARLINE_BY", "Runa");
    return builder;
  }

  @Override
  public int port() {
    return port;
  }

  @Override
  public String code() {
    return code;
  }

  @Override
  public BenchProcess again() throws IOException {
    close();
    return new BenchProcess(log, options, port);
  }

  /** Ends it as a power cut would. */
  void kill() throws InterruptedException {
    process.destroyForcibly().waitFor();
  }

  @Override
  public void close() {
    process.destroy();
    try {
      if (!process.waitFor(20, TimeUnit.SECONDS)) {
        process.destroyForcibly();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
