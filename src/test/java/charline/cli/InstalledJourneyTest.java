package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import charline.model.Estimate;
import java.io.BufferedReader;
import java.io.IOException;
import java.net.URI;
import java.net.URL;
import java.net.URLClassLoader;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The Debian package and the image, unpacked in a clean folder and run with no Java on the path.
 * Made and tested by {@code mvn -Pdist verify}; skipped where nothing was packed.
 */
class InstalledJourneyTest {
  private static final String DIST = System.getProperty("charline.dist", "");

  @TempDir Path folder;
  private Path path;

  @BeforeEach
  void cleanPath() throws IOException {
    assumeTrue(!DIST.isEmpty(), "Nothing is packed; mvn -Pdist verify packs it.");
    path = Files.createDirectory(folder.resolve("path"));
    for (String tool : List.of("sh", "readlink")) {
      Files.copy(Path.of("/usr/bin", tool), path.resolve(tool), StandardCopyOption.COPY_ATTRIBUTES);
    }
  }

  private static Path packed(String ending) throws IOException {
    try (Stream<Path> files = Files.list(Path.of(DIST))) {
      List<Path> found =
          files
              .filter(f -> f.getFileName().toString().startsWith("charline"))
              .filter(f -> f.toString().endsWith(ending))
              .toList();
      assertThat(found).hasSize(1);
      return found.get(0);
    }
  }

  private static void must(String... words) throws Exception {
    assertThat(new ProcessBuilder(words).inheritIO().start().waitFor()).isZero();
  }

  private record Ran(int code, String text) {}

  /** With an environment of nothing but the path and a home. */
  private ProcessBuilder process(Path program, String line) {
    List<String> words = new ArrayList<>(List.of(program.toString()));
    words.addAll(Shell.words(line));
    ProcessBuilder builder = new ProcessBuilder(words).redirectErrorStream(true);
    Map<String, String> env = builder.environment();
    env.clear();
    env.put("PATH", path.toString());
    env.put("HOME", folder.toString());
    return builder.directory(folder.toFile());
  }

  private Ran run(Path program, String line) throws Exception {
    Process process = process(program, line).start();
    process.getOutputStream().close();
    String text = new String(process.getInputStream().readAllBytes());
    return new Ran(process.waitFor(), text);
  }

  private void plays(Path program) throws Exception {
    startsFromItsArchive(program, "patch show last");
    startsFromItsArchive(program, "window latex pine");
    assertThat(run(program, "--version").text())
        .startsWith("charline ")
        .contains("\nSQLite 3.", "\nJava " + Runtime.version().feature() + ".");
    Path samples = Path.of("sample-trials").toAbsolutePath();
    Ran imported =
        run(
            program,
            "import %1$s/latex-on-pine.csv --rigs %1$s/rigs.csv --power-checks %1$s/power-checks.csv"
                .formatted(samples));
    assertThat(imported.text()).contains("24 patches with 103 readings");
    assertThat(folder.resolve(".local/share/charline/log.db")).isRegularFile();
    Ran window = run(program, "window latex pine");
    assertThat(window.code()).isZero();
    assertThat(window.text()).contains("START ");
    Ran sheet = run(program, "sheet latex pine --to sheet.html");
    assertThat(sheet.code()).as(sheet.text()).isZero();
    assertThat(folder.resolve("sheet.html")).isNotEmptyFile();
    Ran refused = run(program, "find shelac");
    assertThat(refused.code()).isEqualTo(2);
    assertThat(refused.text()).startsWith("I do not know \"shelac\"").hasLineCount(1);
    serves(program);
  }

  /** Without it nothing fails, but a start takes twice as long. */
  private void startsFromItsArchive(Path program, String line) throws Exception {
    ProcessBuilder builder = process(program, line);
    builder.environment().put("JDK_JAVA_OPTIONS", "-XX:+PrintSharedArchiveAndExit");
    Process process = builder.start();
    process.getOutputStream().close();
    assertThat(new String(process.getInputStream().readAllBytes()))
        .as("start of " + line)
        .contains("archive is valid", "picocli.CommandLine app_loader");
    assertThat(process.waitFor()).isZero();
  }

  private void serves(Path program) throws Exception {
    Process bench = process(program, "bench --port 0").start();
    try (BufferedReader said = bench.inputReader(StandardCharsets.UTF_8)) {
      String line = said.readLine();
      assertThat(line).startsWith("The bench page of ");
      String address = line.substring(line.lastIndexOf("http://"));
      for (String page : List.of("", "record", "ask", "sheet?family=latex&wood=pine")) {
        var request = HttpRequest.newBuilder(URI.create(address + page)).build();
        var answer = HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofString());
        assertThat(answer.statusCode()).as(page + answer.body()).isEqualTo(200);
      }
    } finally {
      bench.destroy();
      bench.waitFor();
    }
  }

  @Test
  void the_debian_package_plays_where_there_is_no_java() throws Exception {
    Path root = folder.resolve("root");
    must("dpkg-deb", "-x", packed(".deb").toString(), root.toString());
    plays(root.resolve("usr/bin/charline"));
    assertThat(root.resolve("usr/share/man/man1/charline.1.gz")).isNotEmptyFile();
    assertThat(root.resolve("usr/share/doc/charline/copyright"))
        .content()
        .contains("Apache License", "sqlite-jdbc", "picocli", "fastutil");
    Path completion = root.resolve("usr/share/bash-completion/completions/charline");
    assertThat(completed(completion, "patch am")).isEqualTo("amend");
    assertThat(completed(completion, "patch add --outc")).isEqualTo("--outcome");
    assertThat(completed(completion, "mer")).isEqualTo("merge");
    assertThat(completed(completion, "rig add heron --kind p")).isEqualTo("pulsed");
    assertThat(root.resolve("usr/share/zsh/vendor-completions/_charline")).isNotEmptyFile();
    assertThat(root.resolve("usr/share/fish/vendor_completions.d/charline.fish")).isNotEmptyFile();
  }

  @Test
  void the_image_plays_from_a_folder_with_a_blank_in_its_name() throws Exception {
    Path place = Files.createDirectory(folder.resolve("my programs"));
    must("tar", "-xzf", packed(".tar.gz").toString(), "-C", place.toString());
    plays(place.resolve("charline/bin/charline"));
    comparesAsHere(place.resolve("charline/lib/charline.jar"));
    assertThat(place.resolve("charline/share/bom.json"))
        .content()
        .contains("\"CycloneDX\"", "pkg:maven/org.xerial/sqlite-jdbc@");
  }

  /** Packing spells out how records compare. */
  private static void comparesAsHere(Path jar) throws Exception {
    List<Estimate> here =
        List.of(
            new Estimate(1, 0.5, 2),
            new Estimate(1, 0.5, 2),
            new Estimate(1, 0.5, 3),
            new Estimate(0.0, Double.NaN, 2),
            new Estimate(-0.0, Double.NaN, 2),
            new Estimate(0.0, Double.NaN, 2));
    try (URLClassLoader loader =
        new URLClassLoader(new URL[] {jar.toUri().toURL()}, ClassLoader.getPlatformClassLoader())) {
      Class<?> packed = loader.loadClass(Estimate.class.getName());
      List<Object> there = new ArrayList<>();
      for (Estimate one : here) {
        there.add(
            packed
                .getConstructor(double.class, double.class, double.class)
                .newInstance(one.median(), one.low(), one.high()));
      }
      for (int one = 0; one < here.size(); one++) {
        assertThat(there.get(one)).hasSameHashCodeAs(here.get(one)).isNotEqualTo(here.get(one));
        for (int other = 0; other < here.size(); other++) {
          assertThat(there.get(one).equals(there.get(other)))
              .as("%s and %s", here.get(one), here.get(other))
              .isEqualTo(here.get(one).equals(here.get(other)));
        }
      }
    }
  }

  /** What bash would make of a line when the tab key is pressed. */
  private static String completed(Path completion, String line) throws Exception {
    String script =
        """
        compopt() { :; }
        source "$1"
        COMP_WORDS=(charline $2)
        COMP_CWORD=$((${#COMP_WORDS[@]} - 1))
        _charline charline "${COMP_WORDS[COMP_CWORD]}" "${COMP_WORDS[COMP_CWORD - 1]}"
        echo "${COMPREPLY[*]}"
        """;
    Process bash =
        new ProcessBuilder("bash", "-c", script, "bash", completion.toString(), line)
            .redirectErrorStream(true)
            .start();
    return new String(bash.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
  }
}
