package charline.wording;

import charline.answer.Precautions;
import charline.answer.Tested;
import charline.trial.Caution;
import charline.trial.Sample;
import charline.trial.SampleResult;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Poison and fire in words: short, to be read first, and in full. */
public final class PrecautionText {
  private PrecautionText() {}

  /**
   * What is read first: "lead: not tested; isocyanates when heated". Empty where there is nothing
   * that the coat or the wood adds to every other.
   */
  public static Optional<String> inShort(Precautions known) {
    List<String> parts = new ArrayList<>(tests(known));
    known.cautions().stream().flatMap(c -> c.inShort().stream()).distinct().forEach(parts::add);
    known.notFor().forEach(bar -> parts.add(NoBeamText.notFor(bar)));
    return parts.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", parts));
  }

  /** The same as a sentence that begins a terminal's answer or a page. */
  public static Optional<String> headline(Precautions known) {
    return inShort(known).map(words -> "BEFORE THE BEAM: " + words + ".");
  }

  /** Whether each substance was tested, one entry each: "lead: found (2026-05-04, L-17)". */
  public static List<String> tests(Precautions known) {
    Map<String, List<Tested>> bySubstance = new LinkedHashMap<>();
    known
        .tests()
        .forEach(t -> bySubstance.computeIfAbsent(t.substance(), s -> new ArrayList<>()).add(t));
    List<String> all = new ArrayList<>();
    bySubstance.forEach(
        (substance, results) ->
            all.add(
                substance
                    + ": "
                    + results.stream()
                        .map(t -> result(t.sample()) + where(t, results))
                        .collect(Collectors.joining(", "))));
    return all;
  }

  private static String where(Tested tested, List<Tested> results) {
    return results.size() == 1 ? "" : " in " + String.join(" and ", tested.finishes());
  }

  /** "not tested", "found (2026-05-04, L-17)", "not found (2026-05-04)", "inconclusive (...)". */
  public static String result(Optional<Sample> sample) {
    return sample
        .map(
            s ->
                "%s (%s%s%s)"
                    .formatted(
                        result(s.result()),
                        s.takenOn(),
                        ", " + s.reference().orElse(s.code()),
                        s.value().map(v -> ", " + v).orElse("")))
        .orElse("not tested");
  }

  /** A result as an answer to "is it there": free means not found. */
  public static String result(SampleResult result) {
    return result == SampleResult.FREE ? "not found" : result.word();
  }

  /** What the coat and the wood bring, in full; what comes with every patch is left out. */
  public static List<String> inFull(Precautions known) {
    return ofCoatAndWood(known).map(c -> sentence(c, c.text())).toList();
  }

  /** The same in a sentence or two each. */
  public static List<String> inBrief(Precautions known) {
    return ofCoatAndWood(known).map(PrecautionText::inBrief).toList();
  }

  private static Stream<Caution> ofCoatAndWood(Precautions known) {
    return known.cautions().stream().filter(caution -> !caution.always());
  }

  /** "Caution, lead: ..." in a sentence or two. */
  public static String inBrief(Caution caution) {
    return sentence(caution, caution.onPaper());
  }

  private static String sentence(Caution caution, String text) {
    return "Caution, %s: %s".formatted(caution.topic().toLowerCase(Locale.ROOT), text);
  }

  /** Cautions as JSON, most serious first. */
  public static List<Json> json(List<Caution> cautions) {
    return cautions.stream()
        .map(
            caution ->
                new Json()
                    .put("topic", caution.topic())
                    .put("in_short", caution.inShort())
                    .put("text", caution.text())
                    .put("source", caution.source()))
        .toList();
  }

  /** Adds cautions and tests to an answer. */
  public static Json put(Json json, Precautions known) {
    return json.put("before_the_beam", inShort(known))
        .put("tests", known.tests().stream().map(PrecautionText::json).toList())
        .put("cautions", json(known.cautions()));
  }

  private static Json json(Tested tested) {
    return new Json()
        .put("substance", tested.substance())
        .put("result", tested.sample().map(s -> s.result().word()).orElse("not tested"))
        .put("taken_on", tested.sample().map(s -> s.takenOn().toString()))
        .put("reference", tested.sample().flatMap(Sample::reference))
        .put("sample", tested.sample().map(Sample::code))
        .put("finishes", tested.finishes());
  }
}
