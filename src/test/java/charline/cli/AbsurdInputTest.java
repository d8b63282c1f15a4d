package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import charline.cli.command.Asker;
import charline.cli.command.CommandContext;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;

/**
 * Input that every reader of numbers takes and no analysis can use: trials that say nothing, priors
 * without reason, limits at the edge. Whatever comes is an answer or a refusal, never a fault of
 * the program. {@code -Dcharline.cases=20000} tries every option with every value.
 */
class AbsurdInputTest {
  private static final int CASES = Integer.getInteger("charline.cases", 120);
  private static final String HEAD =
      "patch,burned_at,rig,board,wood,finish,family,tone,power_pct,rep_khz,pulse_ns,spot_mm,width_mm,hand_mm_s,passes,outcome,depth_um,coats\n";

  /** Patches of each coating: board, power, hand, passes, seen. */
  private static final Map<String, List<String>> PATCHES =
      Map.of(
          "latex", List.of("1 50 20 1 residue"),
          "alkyd",
              List.of(
                  "1 50 20 1 residue", "1 50 20 1 clean", "2 50 20 1 char", "2 50 20 1 residue"),
          "varnish",
              List.of("1 50 20 1 clean", "1 60 22 1 clean", "2 70 25 2 clean", "3 80 30 1 clean"),
          "primer", List.of("1 50 20 1 char", "1 60 22 1 char", "2 70 25 2 char", "3 80 30 1 char"),
          "shellac",
              List.of("1 30 40 1 residue", "1 40 40 1 residue", "2 90 9 1 char", "2 99 9 1 char"),
          "lacquer",
              List.of(
                  "1 0.001 9999 1 residue",
                  "1 100 0.01 999 char",
                  "2 100 0.02 1 clean",
                  "3 0.002 9999 1000 clean"));

  private static final List<String> FAMILIES = PATCHES.keySet().stream().sorted().toList();

  private static final List<String> VALUES =
      List.of(
          "0",
          "-1",
          "NaN",
          "1e300",
          "1e-300",
          "999999999",
          "0.000000001",
          "0.1%",
          "50%",
          "51%",
          "99.9%",
          "100%",
          "2147483648",
          "1e9m2",
          "0.0001um",
          "100000h",
          "power=100",
          "spot=0.000001,rep=1e9,width=1e6");

  @TempDir static Path folder;
  private static Shell shell;

  @BeforeAll
  static void import_the_trials() throws IOException {
    shell = new Shell(folder).at("2026-11-01T09:00:00Z");
    List<String> sheets = new ArrayList<>();
    for (String family : FAMILIES) {
      StringBuilder sheet = new StringBuilder(HEAD);
      int number = 0;
      for (String line : PATCHES.get(family)) {
        String[] at = line.split(" ");
        sheet.append(
            "%s-%d,2026-09-01T09:%02d+02:00,heron,beam %s,pine,f %s,%s,pale,%s,60,100,0.5,60,%s,%s,%s,%s,%s:pale:50um\n"
                .formatted(
                    family.substring(0, 3).toUpperCase(Locale.ROOT),
                    ++number,
                    number,
                    at[0],
                    family,
                    family,
                    at[1],
                    at[2],
                    at[3],
                    at[4],
                    number * 20,
                    family));
      }
      sheets.add(Files.writeString(folder.resolve(family + ".csv"), sheet).toString());
    }
    shell.mustDo(
        "import %s --rigs sample-trials/rigs.csv --sure".formatted(String.join(" ", sheets)));
  }

  private static void noFault(String line, Shell.Result result) {
    assertThat(result.code()).as("%s: %s", line, result).isBetween(0, 3);
    assertThat(result.out() + result.err()).as(line).doesNotContain("has a fault");
    if (result.code() > 1) {
      assertThat(result.err() + result.out()).as(line).isNotBlank();
    }
  }

  static Stream<String> questions() {
    return FAMILIES.stream()
        .flatMap(
            f ->
                Stream.of(
                    "onset " + f + " pine",
                    "removal " + f + " pine --accept-tint",
                    "onset " + f + " pine --classical ml",
                    "onset " + f + " pine --classical firth",
                    "removal " + f + " pine --classical ml",
                    "removal " + f + " pine --classical firth --risk 0.1% --confidence 99.9%",
                    "window " + f + " pine",
                    "next " + f + " pine --count 1",
                    "quote " + f + " pine --area 5"));
  }

  @ParameterizedTest
  @MethodSource("questions")
  void trials_that_say_nothing_are_no_fault(String line) {
    noFault(line, shell.run(line));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "char dose = 999999999 x/ 999999999",
        "char dose = 0.000000001 x/ 1.000000001",
        "char phi = 999999999 +/- 0.000000001",
        "char phi = -999999999 +/- 0.000000001",
        "char psi = -999999999 +/- 999999999",
        "char psi = 0 +/- 0.000000001",
        "char sigma = 0.000000001 x/ 1.000000001",
        "char sigma = 999999999 x/ 999999999",
        "char omega = 0 +/- 999999999",
        "char omega = 0 +/- 0.000000001",
        "char dose = 100000 x/ 1.01",
        "char dose = 0.00001 x/ 1000",
        "char phi = 20 +/- 0.001",
        "char psi = -20 +/- 0.001",
        "char psi = 20 +/- 20",
        "char sigma = 0.01 x/ 1.01",
        "char sigma = 100 x/ 1000",
        "char omega = 0 +/- 3",
        "char omega = 0 +/- 0.001"
      })
  void priors_without_reason_are_no_fault(String prior, @TempDir Path own) throws IOException {
    Path file = Files.writeString(own.resolve("x.prior"), prior + "\n");
    noFault(prior, shell.run("window shellac pine --prior " + file));
  }

  @Test
  void limits_at_the_edge_and_beyond_are_no_fault() {
    List<List<String>> cases = new ArrayList<>();
    for (String question :
        List.of("window", "next", "quote", "onset", "removal", "onset --classical ml")) {
      for (String option : options(question)) {
        for (String value : VALUES) {
          List<String> words = new ArrayList<>(List.of(question.split(" ")));
          words.addAll(1, List.of(FAMILIES.get(cases.size() % FAMILIES.size()), "pine"));
          if (question.equals("quote") && !option.equals("--area")) {
            words.addAll(List.of("--area", "5"));
          }
          words.addAll(List.of(option, value));
          cases.add(words);
        }
      }
    }
    Collections.shuffle(cases, new Random(13));
    for (List<String> words : cases.subList(0, Math.min(CASES, cases.size()))) {
      noFault(words.toString(), shell.run(words));
    }
  }

  /** Options of a command that take a value which is no file. */
  private static List<String> options(String question) {
    PrintStream nowhere = new PrintStream(new ByteArrayOutputStream());
    String command = question.split(" ")[0];
    CommandLine line =
        Commands.lineFor(
            new String[] {command},
            new CommandContext(Asker.NOBODY, nowhere, nowhere, Map.of(), Clock.systemUTC()));
    return line.getSubcommands().get(command).getCommandSpec().options().stream()
        .filter(o -> o.arity().max() > 0 && o.type() != Path.class)
        .map(OptionSpec::longestName)
        .filter(name -> !name.equals("--log") && !name.equals("--classical"))
        .toList();
  }
}
