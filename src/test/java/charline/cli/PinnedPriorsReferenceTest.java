package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.model.ReferenceStrata;
import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Answers with priors from a file, asked for at the command line, against six posteriors that were
 * computed by other software (SOURCE.md beside the data): nothing is learned beside the file, so
 * they agree, whatever else the log holds.
 */
class PinnedPriorsReferenceTest {
  private static final String DATA = "/reference/posterior-passes-to-event/";
  private static final Map<String, String> ANSWERS = new HashMap<>();

  @TempDir static Path folder;
  private static Shell all;
  private static Path priors;

  @BeforeAll
  static void import_all_six_as_one_log() throws IOException {
    priors = copy("make.prior");
    all = log("all", copy("trials.csv"));
  }

  private static Path copy(String name) throws IOException {
    Path file = folder.resolve(name);
    try (InputStream in = PinnedPriorsReferenceTest.class.getResourceAsStream(DATA + name)) {
      Files.copy(in, file);
    }
    return file;
  }

  private static Shell log(String name, Path sheet) throws IOException {
    Shell shell = new Shell(Files.createDirectory(folder.resolve(name)));
    shell.mustDo(
        "rig add rig-200 --kind pulsed --rated 200W --spot 0.6mm --rep 40kHz --pulse 100ns"
            + " --width 60mm");
    return shell.mustDo("import " + sheet);
  }

  static Stream<String> strata() {
    return ReferenceStrata.expected().keySet().stream();
  }

  private static String answer(String command, String stratum) {
    return ANSWERS.computeIfAbsent(
        "%s %s --json --prior %s".formatted(command, stratum.replace("|", " "), priors),
        line -> all.run(line).out());
  }

  @ParameterizedTest
  @MethodSource("strata")
  void onset_and_removal_agree(String stratum) throws IOException {
    Map<String, Map<String, Object>> expected = ReferenceStrata.expected().get(stratum);
    agrees(model(answer("onset", stratum), "model"), expected.get("char"));
    agrees(model(answer("removal", stratum), "model"), expected.get("clearing"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"latex|pine", "varnish|oak"})
  void the_window_rests_on_the_same_models(String stratum) throws IOException {
    Map<String, Map<String, Object>> expected = ReferenceStrata.expected().get(stratum);
    agrees(
        (Map<?, ?>) model(answer("window", stratum), "models").get("char"), expected.get("char"));
    agrees(
        (Map<?, ?>) model(answer("window", stratum), "models").get("clearing"),
        expected.get("clearing"));
  }

  /** Tolerances as where the models are compared without a command. */
  private static void agrees(Map<?, ?> ours, Map<String, Object> expected) {
    assertThat(((Number) ours.get("f0_j_cm2")).doubleValue())
        .isCloseTo(((Number) expected.get("f0_j_cm2")).doubleValue(), within(1e-8));
    for (String key : List.of("dose_even_j_cm2", "phi", "psi", "sigma", "omega")) {
      List<?> q = (List<?>) expected.get(key);
      double low = ((Number) q.get(0)).doubleValue();
      double high = ((Number) q.get(2)).doubleValue();
      Map<?, ?> estimate = (Map<?, ?>) ours.get(key);
      List<String> names = List.of("low", "median", "high");
      for (int k = 0; k < names.size(); k++) {
        assertThat(((Number) estimate.get(names.get(k))).doubleValue())
            .as(key + " " + names.get(k))
            .isCloseTo(((Number) q.get(k)).doubleValue(), within(0.05 * (high - low)));
      }
    }
  }

  private static Map<?, ?> model(String json, String key) throws IOException {
    return (Map<?, ?>) JSON.std.mapFrom(json).get(key);
  }

  @ParameterizedTest
  @CsvSource({"latex, pine", "varnish, oak"})
  void the_other_five_strata_change_nothing(String family, String wood) throws IOException {
    List<String> lines = Files.readAllLines(folder.resolve("trials.csv"));
    String own = ",%s,%s on %s,".formatted(wood, family, wood);
    Path sheet = folder.resolve(family + ".csv");
    Files.write(
        sheet,
        Stream.concat(lines.stream().limit(1), lines.stream().filter(l -> l.contains(own)))
            .toList());
    Shell alone = log(family, sheet);
    for (String command : List.of("window", "onset", "removal")) {
      String line = "%s %s %s --json --prior %s".formatted(command, family, wood, priors);
      assertThat(alone.run(line).out()).as(line).isEqualTo(answer(command, family + "|" + wood));
    }
  }

  /** Without the file they do: how much boards differ is learned from them. */
  @Test
  void without_a_file_the_others_tell_how_much_boards_differ() throws IOException {
    String line = "onset latex pine --json";
    assertThat(model(all.run(line).out(), "model").get("omega"))
        .isNotEqualTo(model(answer("onset", "latex|pine"), "model").get("omega"));
  }
}
