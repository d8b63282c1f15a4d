package charline.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import charline.refusal.Refusal;
import charline.trial.Rig;
import charline.trial.RigBuilder;
import charline.web.entry.DialledKnobs;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The page refuses what the log would refuse, in the same words, before it sends anything. */
class ScriptRulesTest {
  private static final Map<String, String> FULL =
      Map.of(
          "form",
          "hand",
          "power_unit",
          "%",
          "power",
          "60",
          "hand",
          "20",
          "width",
          "60",
          "spot",
          "0.6",
          "rep",
          "40",
          "pulse",
          "100",
          "patch",
          "25");

  /** Without usual settings, which would fill in. */
  private static final Rig BARE = RigBuilder.heron(new UUID(1, 1)).bare().build();

  private static void keep(String knob, String text) {
    Map<String, String> fields = new HashMap<>(FULL);
    fields.put(knob, text);
    DialledKnobs.read(fields::get).on(BARE);
  }

  private static String scripts() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("src/main/resources/bench"))) {
      List<String> texts = new ArrayList<>();
      for (Path file : files.filter(f -> f.toString().endsWith(".js")).sorted().toList()) {
        texts.add(Files.readString(file));
      }
      return String.join("\n", texts);
    }
  }

  /** The template literals of the scripts as patterns, any text for a value. */
  private static List<Pattern> sentences() throws IOException {
    Matcher literals = Pattern.compile("`([^`]*)`").matcher(scripts());
    return literals
        .results()
        .map(
            literal ->
                Arrays.stream(literal.group(1).split("\\$\\{[^}]*}", -1))
                    .map(Pattern::quote)
                    .collect(Collectors.joining(".+")))
        .map(Pattern::compile)
        .filter(p -> p.pattern().length() > 40) // a value alone would match anything
        .toList();
  }

  @ParameterizedTest
  @CsvSource({"hand, ''", "power, ''", "hand, -1", "width, 0", "power, 140", "hand, 0"})
  void what_a_script_refuses_it_refuses_in_the_words_of_the_log(String knob, String text)
      throws IOException {
    List<Pattern> sentences = sentences();
    assertThatThrownBy(() -> keep(knob, text))
        .isInstanceOf(Refusal.class)
        .satisfies(
            refusal ->
                assertThat(sentences).anyMatch(p -> p.matcher(refusal.getMessage()).matches()));
  }

  @Test
  void a_script_lets_the_same_knobs_be_empty() throws IOException {
    Set<String> mayBeEmpty = new TreeSet<>();
    for (String knob : FULL.keySet()) {
      if (knob.equals("form") || knob.equals("power_unit")) {
        continue;
      }
      try {
        keep(knob, "");
        mayBeEmpty.add(knob);
      } catch (Refusal e) {
        // must be given
      }
    }
    String list =
        mayBeEmpty.stream()
            .sorted((a, b) -> b.compareTo(a))
            .map(knob -> "\"" + knob + "\"")
            .collect(Collectors.joining(", ", "MAY_BE_UNSET = [", "]"));
    assertThat(scripts()).contains(list);
  }
}
