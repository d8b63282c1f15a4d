package charline.answer;

import charline.exposure.Emission;
import charline.log.Logbook;
import charline.quote.Lead;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Caution;
import charline.trial.Finish;
import charline.trial.Patch;
import charline.trial.Sample;
import charline.trial.SampleResult;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a person must know before the beam is on.
 *
 * @param cautions most serious first
 * @param tests what the coats may hold and whether that was tested
 * @param bars why the beam stays off; none where it need not
 * @param notFor other finishes of the family that this answer is not for, and why
 */
public record Precautions(
    List<Caution> cautions, List<Tested> tests, List<NoBeam> bars, List<NoBeam> notFor) {
  private static final String LEAD = "lead";

  /** Where nothing is known of the coats. */
  public static final Precautions NONE =
      new Precautions(List.of(), List.of(), List.of(), List.of());

  public Precautions {
    cautions = List.copyOf(cautions);
    tests = List.copyOf(tests);
    bars = List.copyOf(bars);
    notFor = List.copyOf(notFor);
  }

  /** Of a finish, whatever it is on. */
  public static Precautions of(Logbook log, Finish finish) {
    return new CoatTests(log).of(finish);
  }

  /** Of each of several finishes, by its name. */
  public static Map<String, Precautions> ofEach(Logbook log, List<Finish> finishes) {
    CoatTests tests = new CoatTests(log);
    Map<String, Precautions> each = new LinkedHashMap<>();
    finishes.forEach(finish -> each.put(finish.name(), tests.of(finish)));
    return each;
  }

  /** Of a finish on a board under one kind of light. */
  public static Precautions of(Logbook log, Finish finish, Board board, Emission emission) {
    return new CoatTests(log).of(finish).with(log.reference().cautions(finish, board, emission));
  }

  /** Of everything that patches were burned on. */
  static Precautions of(Logbook log, List<Patch> patches) {
    return new CoatTests(log).of(patches);
  }

  /**
   * Of a coating family that nothing was burned of yet.
   *
   * @param woods words of the log; empty where all are pooled
   */
  static Precautions of(
      Logbook log, String family, List<String> woods, List<Board> boards, Emission emission) {
    return new CoatTests(log).of(family, woods, boards, emission);
  }

  /** Of the coats that a question is about, burned or not. */
  static Precautions of(Logbook log, Strata strata, TrialQuestion question) {
    FamilyAndWood about = question.named();
    List<Patch> burned =
        strata.everywhere().of(about).values().stream().flatMap(List::stream).toList();
    return burned.isEmpty()
        ? of(
            log,
            about.family(),
            about.woods(),
            List.of(),
            question.light().map(Light::emission).orElse(Emission.PULSED))
        : of(log, burned);
  }

  /** True if the beam stays off. */
  public boolean barred() {
    return !bars.isEmpty();
  }

  /** Each face says why before it asks further; models from before a sample may still ask. */
  void requireOpen() {
    if (barred()) {
      throw Refusal.nothingFound(
          "The beam stays off some of these coats; look at their finishes, then ask again.");
    }
  }

  /** What tests say of lead; coats that need none hold none. */
  public Lead lead() {
    List<Optional<SampleResult>> results =
        tests.stream()
            .filter(tested -> tested.substance().equalsIgnoreCase(LEAD))
            .map(tested -> tested.sample().map(Sample::result))
            .toList();
    if (results.contains(Optional.of(SampleResult.FOUND))) {
      return Lead.FOUND;
    }
    return results.stream().allMatch(Optional.of(SampleResult.FREE)::equals)
        ? Lead.FREE
        : Lead.NOT_TESTED;
  }

  Precautions with(List<Caution> others) {
    return new Precautions(others, tests, bars, notFor);
  }
}
