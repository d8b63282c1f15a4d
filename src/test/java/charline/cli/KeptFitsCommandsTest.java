package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** An answer that was kept is the answer that is computed now, byte for byte. */
class KeptFitsCommandsTest {
  private static final FileTime LONG_AGO = FileTime.fromMillis(1_000_000_000_000L);

  @TempDir static Path folder;
  private static Shell shell;
  private static Path fits;

  @BeforeAll
  static void import_some_trials() {
    shell = new Shell(folder);
    shell.mustDo(
        "import sample-trials/latex-on-pine.csv sample-trials/shellac-on-oak.csv --rigs"
            + " sample-trials/rigs.csv --power-checks sample-trials/power-checks.csv");
    shell.mustDo(
        "board add \"Winterbourne pantry door\" --wood pine --job \"Winterbourne cottage\"");
    shell.mustDo(
        "patch add --like LP-01 --board \"Winterbourne pantry door\" --outcome residue --note"
            + " \"Aunt Prudence saw it\" --by Barnabas --sure");
    fits = folder.resolve("fits");
  }

  private static Shell.Result ask(String line, Path kept) {
    return shell.set("CHARLINE_CACHE", kept.toString()).run(line);
  }

  /** Where nothing can be kept, all is computed now. */
  private static Shell.Result fresh(String line) throws IOException {
    Path file = folder.resolve("no folder");
    if (!Files.exists(file)) {
      Files.writeString(file, "a file");
    }
    return ask(line, file);
  }

  private static List<Path> files() throws IOException {
    try (Stream<Path> files = Files.list(fits)) {
      return files.sorted().toList();
    }
  }

  /** Marks all files as old, so that one written since then is seen. */
  private static Map<Path, FileTime> aged() throws IOException {
    Map<Path, FileTime> times = new TreeMap<>();
    for (Path file : files()) {
      Files.setLastModifiedTime(file, LONG_AGO);
      times.put(file, LONG_AGO);
    }
    return times;
  }

  private static List<Path> untouched(Map<Path, FileTime> times) throws IOException {
    List<Path> untouched = new ArrayList<>();
    for (Path file : times.keySet()) {
      if (Files.getLastModifiedTime(file).equals(LONG_AGO)) {
        untouched.add(file);
      }
    }
    return untouched;
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "window latex pine --json",
        "window latex pine --piece \"Winterbourne pantry door\" --json",
        "window shellac oak --prior PRIORS --json",
        "window --all --json",
        "next latex pine --json",
        "next latex pine --piece \"Winterbourne pantry door\" --json",
        "onset latex pine --json",
        "removal latex pine --piece \"Winterbourne pantry door\"",
        "risk latex pine --power 60% --hand 22mm/s --passes 2 --json",
        "quote latex pine --area 4.5m2 --json",
        "quote shellac oak --area 4.5m2"
      })
  void asked_again_it_is_the_same(String question) throws IOException {
    Path priors = folder.resolve("shop.prior");
    if (!Files.exists(priors)) {
      Files.writeString(priors, shell.run("prior show").out());
    }
    String line = question.replace("PRIORS", priors.toString());
    Shell.Result fresh = fresh(line);
    assertThat(fresh.code()).as(fresh.err()).isLessThan(2);
    assertThat(ask(line, fits)).isEqualTo(fresh);
    List<Path> kept = files();
    assertThat(ask(line, fits)).isEqualTo(fresh);
    assertThat(files()).as("nothing was computed that was not kept").isEqualTo(kept);
  }

  @Test
  void with_every_file_damaged_it_is_the_same() throws IOException {
    String line = "window latex pine --piece \"Winterbourne pantry door\" --json";
    Shell.Result sound = ask(line, fits);
    Map<Path, byte[]> before = new TreeMap<>();
    Random random = new Random(3);
    for (Path file : files()) {
      byte[] bytes = Files.readAllBytes(file);
      before.put(file, bytes.clone());
      bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
      Files.write(
          file,
          random.nextInt(3) == 0 ? Arrays.copyOf(bytes, random.nextInt(bytes.length)) : bytes);
    }
    assertThat(ask(line, fits)).isEqualTo(sound);
    int renewed = 0;
    for (Map.Entry<Path, byte[]> each : before.entrySet()) {
      renewed += Arrays.equals(Files.readAllBytes(each.getKey()), each.getValue()) ? 1 : 0;
      Files.write(each.getKey(), each.getValue());
    }
    assertThat(renewed).as("files written anew as they were").isGreaterThanOrEqualTo(7);
  }

  @Test
  void a_second_answer_reads_what_the_first_kept() throws IOException {
    String line = "window latex pine --json";
    ask(line, fits);
    Map<Path, FileTime> times = aged();
    ask(line, fits);
    assertThat(files()).containsExactlyElementsOf(times.keySet());
    List<Path> read = new ArrayList<>(times.keySet());
    read.removeAll(untouched(times));
    // What strata say of boards for two events, both fits, window, doubled priors, list, validity.
    assertThat(read).hasSize(2 + 2 + 1 + 1 + 1 + 1);
  }

  @Test
  void a_changed_patch_is_never_answered_by_an_old_fit() throws IOException {
    String line = "window latex pine --json";
    ask(line, fits);
    shell.mustDo("board add pantry-2 --wood pine");
    shell.mustDo(
        "patch add --like LP-01 --board pantry-2 --passes 9 --outcome char --power 90% --sure");
    String code = "pantry-2";
    try {
      Shell.Result fresh = fresh(line);
      assertThat(ask(line, fits)).isEqualTo(fresh);
      assertThat(fresh.out()).as("it counts").isNotBlank();
      assertThat(Shell.part(fresh.json(), "evidence").get("boards")).isNotNull();
    } finally {
      String patch = lastPatchOn(code);
      shell.mustDo("patch void %s --why \"a test of tests\"".formatted(patch));
    }
    assertThat(ask(line, fits)).isEqualTo(fresh(line));
  }

  private static String lastPatchOn(String board) {
    String found = shell.run("find --board %s --json".formatted(board)).out();
    return found.replaceAll("(?s).*?\"patch\"\\s*:\\s*\"([^\"]+)\".*", "$1");
  }

  @Test
  void no_client_job_note_person_or_board_is_named_in_what_is_kept() throws IOException {
    ask("window latex pine --json", fits);
    ask("window latex pine --piece \"Winterbourne pantry door\" --json", fits);
    ask("onset latex pine", fits);
    for (Path file : files()) {
      String bytes = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
      for (String name : List.of("Winterbourne", "Prudence", "Barnabas", "Ada", "boathouse")) {
        for (Charset charset : List.of(StandardCharsets.UTF_8, StandardCharsets.UTF_16BE)) {
          assertThat(
                  bytes.contains(new String(name.getBytes(charset), StandardCharsets.ISO_8859_1)))
              .as("%s in %s", name, file)
              .isFalse();
        }
      }
    }
  }
}
