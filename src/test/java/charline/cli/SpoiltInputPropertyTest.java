package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import charline.cli.command.Asker;
import charline.cli.command.CommandContext;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;

/**
 * Trial sheets and command lines spoilt by chance, the chance seeded. Whatever comes is answered
 * with one of the exit codes 0 to 3 and in sentences, never with a stack trace; and what is refused
 * leaves every byte of the log as it was. {@code -Dcharline.cases=20000} tries as many of each.
 */
class SpoiltInputPropertyTest {
  private static final int CASES = Integer.getInteger("charline.cases", 120);
  private static final List<Charset> CHARSETS =
      List.of(
          StandardCharsets.UTF_8,
          StandardCharsets.ISO_8859_1,
          StandardCharsets.UTF_16,
          StandardCharsets.UTF_16LE,
          Charset.forName("IBM037"));
  private static final List<String> HOSTILE =
      List.of(
          "",
          " ",
          "NaN",
          "-1",
          "0",
          "1e999",
          "1e-999",
          "999999999999999999999",
          "1,5",
          "1.234,5",
          "-0",
          "0x1F",
          "12mm/s",
          "3e3W",
          "60%",
          "%",
          "%%",
          "%s%n",
          "\"",
          "'",
          ",",
          ";",
          "\t",
          "=1+1",
          "+1",
          "@SUM(A1)",
          "=cmd|' /C x'!A0",
          "\u0000",
          "\u001b[31m",
          "\u202e",
          "\ufeff",
          "Ünïcödé",
          "\ud83d\ude80",
          "\ud800",
          "../../etc",
          "$(x)",
          "`x`",
          "--",
          "-",
          "@x",
          "'; DROP TABLE patch; --",
          "latex",
          "pine",
          "clean",
          "char+clean",
          "char",
          "tint",
          "Heron",
          "boathouse-1",
          "P-0001",
          "last",
          "2026-02-30",
          "2026-06-01",
          "9999-12-31",
          "0000-00-00",
          "x".repeat(70_000));

  @TempDir Path folder;
  private Path log;
  private byte[] recorded;
  private Shell shell;

  @BeforeEach
  void record() throws IOException {
    log = folder.resolve("boathouse.db");
    shell = Shell.withBench(folder);
    shell.mustDo("import --rigs sample-trials/rigs.csv");
    shell.mustDo(
        "patch add --board boathouse-1 --finish wall-latex --rig Heron --power 60% --hand 22mm/s"
            + " --passes 1 --outcome residue");
    recorded = Files.readAllBytes(log);
  }

  private void answeredInSentences(String what, Shell.Result result) throws IOException {
    assertThat(result.code()).as(what).isBetween(0, 3);
    assertThat(result.err() + result.out())
        .as(what)
        .doesNotContain("has a fault", "Exception", "\tat ");
    if (result.code() == 0) {
      Files.write(log, recorded);
    } else {
      assertThat(Arrays.equals(Files.readAllBytes(log), recorded))
          .as("%s left the log as it was: %s", what, result)
          .isTrue();
    }
    if (result.code() > 1) {
      assertThat(result.err()).as(what).isNotBlank();
    }
  }

  @Test
  void a_spoilt_trial_sheet_is_taken_whole_or_refused_whole() throws IOException {
    List<String> lines = Files.readAllLines(Path.of("sample-trials/shellac-on-oak.csv"));
    Path sheet = folder.resolve("sheet.csv");
    int refused = 0;
    for (int i = 0; i < CASES; i++) {
      Random random = new Random(i);
      Files.write(sheet, spoilt(lines, random));
      Shell.Result result = shell.run("import " + sheet);
      answeredInSentences("sheet of seed " + i, result);
      refused += result.code() == 0 ? 0 : 1;
    }
    assertThat(refused).as("most are spoilt past use").isBetween(CASES / 2, CASES - 1);
  }

  private static byte[] spoilt(List<String> good, Random random) {
    List<String> lines = new ArrayList<>(good);
    for (int times = 1 + random.nextInt(3); times > 0; times--) {
      spoil(lines, random);
    }
    String end = random.nextInt(4) == 0 ? "\r\n" : "\n";
    Charset charset = CHARSETS.get(random.nextInt(8) < 5 ? 0 : random.nextInt(CHARSETS.size()));
    byte[] bytes = (String.join(end, lines) + end).getBytes(charset);
    for (int flips = random.nextInt(3) == 0 ? random.nextInt(4) : 0; flips > 0; flips--) {
      bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
    }
    return random.nextInt(10) == 0 ? Arrays.copyOf(bytes, random.nextInt(bytes.length)) : bytes;
  }

  private static void spoil(List<String> lines, Random random) {
    int at = random.nextInt(lines.size());
    String line = lines.get(at);
    switch (random.nextInt(10)) {
      case 0 -> lines.set(at, cell(line, HOSTILE.get(random.nextInt(HOSTILE.size())), random));
      case 1 -> lines.set(at, cell(line, "\"" + line, random));
      case 2 -> lines.replaceAll(l -> l.replace(',', ';').replace('.', ','));
      case 3 -> lines.set(0, "\ufeff" + lines.get(0));
      case 4 -> lines.add(line);
      case 5 -> lines.set(at, line.substring(0, random.nextInt(line.length() + 1)));
      case 6 -> lines.set(at, line + ",".repeat(random.nextInt(300)));
      case 7 -> Collections.swap(lines, at, random.nextInt(lines.size()));
      case 8 -> lines.replaceAll(l -> l.replace(',', '\t'));
      default -> lines.set(at, cell(line, Double.toString(random.nextGaussian() * 1e3), random));
    }
  }

  private static String cell(String line, String value, Random random) {
    String[] cells = line.split(",", -1);
    cells[random.nextInt(cells.length)] = value;
    return String.join(",", cells);
  }

  @Test
  void a_spoilt_command_line_is_answered_in_sentences_and_changes_nothing() throws IOException {
    List<String> commands = new ArrayList<>(Commands.all());
    commands.remove("demo"); // takes nothing but a folder, and plays for seconds
    for (int i = 0; i < CASES; i++) {
      Random random = new Random(i);
      List<String> words = line(commands.get(random.nextInt(commands.size())), random);
      answeredInSentences("seed " + i + ": " + words, shell.run(words));
    }
  }

  /** A command with some of its options and words of any kind; files lie in the test's folder. */
  private List<String> line(String command, Random random) {
    List<String> words = new ArrayList<>(List.of(command.split(" ")));
    CommandLine line = line(words);
    List<OptionSpec> options = line.getCommandSpec().options();
    for (int n = random.nextInt(6); n > 0; n--) {
      OptionSpec option = options.get(random.nextInt(options.size()));
      words.add(option.longestName());
      if (option.arity().max() > 0) {
        words.add(option.type() == Path.class ? place(random) : value(random));
      }
    }
    boolean files = List.of("import", "merge", "backup").contains(command);
    for (int n = random.nextInt(3); n > 0; n--) {
      words.add(files ? place(random) : value(random));
    }
    if (command.equals("bench")) {
      words.addAll(List.of("--port", "none")); // or it would serve for ever
    }
    if (command.equals("sheet")) {
      words.addAll(List.of("--to", place(random)));
    }
    return words;
  }

  private String place(Random random) {
    return folder
        .resolve(List.of("a.csv", "b.db", "none/c", ".", "d.html").get(random.nextInt(5)))
        .toString();
  }

  private static String value(Random random) {
    String value = HOSTILE.get(random.nextInt(HOSTILE.size()));
    return random.nextInt(5) == 0 ? value + HOSTILE.get(random.nextInt(HOSTILE.size())) : value;
  }

  private static CommandLine line(List<String> words) {
    PrintStream nowhere = new PrintStream(new ByteArrayOutputStream());
    CommandContext desk =
        new CommandContext(Asker.NOBODY, nowhere, nowhere, Map.of(), Clock.systemUTC());
    CommandLine line = Commands.lineFor(words.toArray(String[]::new), desk);
    for (String word : words) {
      line = line.getSubcommands().get(word);
    }
    return line;
  }
}
