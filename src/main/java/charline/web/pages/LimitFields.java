package charline.web.pages;

import charline.answer.TrialQuestion;
import charline.exposure.Figure;
import charline.quantity.Figures;
import charline.trial.Knob;
import charline.trial.Patch;
import charline.trial.Place;
import charline.trial.Tone;
import charline.window.JobLimit;
import charline.window.Requirements;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * The fields that ask a window for other limits, as they stand now.
 *
 * @param asked the limits of a patch-sized area
 * @param overlap of strokes, in percent
 * @param job area of a job in m², blank where none was given
 * @param jobRisk its limit in percent, blank where it has none
 * @param width scan width in mm, blank where it was not typed
 * @param tone of the coat that the answer is for, blank for that of most patches
 * @param thickness of its coats in µm, blank for the middle of those tried
 * @param figure that the answer is for, blank for that of most patches
 * @param figures to choose from
 * @param place that the answer is for
 * @param borrow whether the log's other trials lend what they know
 * @param piece board that the answer is for, blank for any
 * @param boards to choose from, each with patches of the stratum
 * @param rig that the answer is for, blank for the one most patches were burned on
 * @param rigs to choose from
 * @param fixed what each knob is fixed at, but for the scan width, blank where it is not
 * @param priors as they were typed, blank for the usual ones
 */
public record LimitFields(
    Requirements asked,
    String overlap,
    String job,
    String jobRisk,
    String width,
    String tone,
    String thickness,
    String figure,
    List<String> figures,
    String place,
    boolean borrow,
    String piece,
    List<String> boards,
    String rig,
    List<String> rigs,
    Map<Knob, String> fixed,
    String priors) {
  /**
   * The fields as a question fills them.
   *
   * @param patches of the stratum
   * @param rigs to choose from
   * @param priors as they were typed, blank for the usual ones
   */
  static LimitFields of(
      TrialQuestion question, List<Patch> patches, List<String> rigs, String priors) {
    Optional<JobLimit> job = question.job();
    OptionalDouble risk = job.map(JobLimit::charRisk).orElse(OptionalDouble.empty());
    OptionalDouble width = question.fixed().of(Knob.WIDTH);
    OptionalDouble thickness = question.way().coat().thicknessMicrometres();
    return new LimitFields(
        question.asked(),
        Asking.percent(question.strokes().overlap()),
        job.map(limit -> Figures.shortest(limit.areaSquareMetres())).orElse(""),
        risk.isPresent() ? Asking.percent(risk.getAsDouble()) : "",
        width.isPresent() ? Figures.shortest(width.getAsDouble()) : "",
        question.way().coat().tone().map(Tone::word).orElse(""),
        thickness.isPresent() ? Figures.shortest(thickness.getAsDouble()) : "",
        question.way().figure().map(Figure::word).orElse(""),
        patches.stream()
            .flatMap(patch -> patch.manner().figure().stream())
            .map(Figure::word)
            .distinct()
            .sorted()
            .toList(),
        question.way().placeOrFace().word(),
        question.borrow(),
        question.piece().orElse(""),
        patches.stream().map(patch -> patch.board().name()).distinct().sorted().toList(),
        question.rig().orElse(""),
        rigs,
        fixed(question),
        priors);
  }

  private static Map<Knob, String> fixed(TrialQuestion question) {
    Map<Knob, String> fixed = new LinkedHashMap<>();
    Asking.FIXED.stream()
        .filter(knob -> knob != Knob.WIDTH)
        .forEach(
            knob -> {
              OptionalDouble value = question.fixed().of(knob);
              fixed.put(knob, value.isPresent() ? Figures.shortest(value.getAsDouble()) : "");
            });
    return fixed;
  }

  /** Whether anything is asked that few people need. */
  public boolean special() {
    return !rig.isEmpty()
        || !priors.isEmpty()
        || !width.isEmpty()
        || fixed.values().stream().anyMatch(text -> !text.isEmpty());
  }

  /** Places to choose from. */
  public List<String> places() {
    return Place.words();
  }

  /** Tones to choose from. */
  public List<String> tones() {
    return Stream.of(Tone.values()).map(Tone::word).toList();
  }

  /** Shares to choose from, in percent, with the one that was asked. */
  public List<String> risks() {
    return with(asked.charRisk(), "0.1", "1", "2", "5", "10");
  }

  /** Shares to choose from, in percent, with the one that was asked. */
  public List<String> clearing() {
    return with(asked.clearChance(), "80", "90", "95");
  }

  /** Shares to choose from, in percent, with the one that was asked. */
  public List<String> confidences() {
    return with(asked.confidence(), "80", "90", "95");
  }

  private static List<String> with(double asked, String... usual) {
    return Stream.concat(Stream.of(usual), Stream.of(Asking.percent(asked)))
        .distinct()
        .sorted((a, b) -> Double.compare(Double.parseDouble(a), Double.parseDouble(b)))
        .toList();
  }

  /** Whether a share to choose is the one asked. */
  public boolean chosen(String percent, double share) {
    return percent.equals(Asking.percent(share));
  }
}
