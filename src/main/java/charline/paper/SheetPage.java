package charline.paper;

import charline.trial.Caution;
import charline.wording.CautionText;
import java.util.List;
import java.util.Optional;

/**
 * The words of a sheet, every number formatted with its unit. The template only places them.
 *
 * @param verdict word of the verdict, also the name of its style with blanks as hyphens
 * @param title finish and wood
 * @param subtitle kind of light, rig and lens
 * @param before poison and fire in short, the first words of the page
 * @param warning what must be read before anything else, for some rigs
 * @param start the start setting, only where there is a window
 * @param refusal what is said instead of a start setting
 * @param mapTitle heading of the map
 * @param map the map, empty where there is none
 * @param sure how sure, on how much evidence; raw counts first
 * @param judging how to tell the outcomes apart
 * @param stops when to stop
 * @param cautions hazards, the gravest first
 * @param rules standards and rules that the cautions name
 * @param validity when the sheet stops being valid
 * @param otherBoard what another board takes
 * @param origin trials, log, version, date
 * @param signOff what a person signs for
 * @param tight true where the words need the smaller type
 */
public record SheetPage(
    String verdict,
    String title,
    String subtitle,
    Optional<String> before,
    Optional<String> warning,
    Optional<StartPanel> start,
    Optional<Refusal> refusal,
    String mapTitle,
    Optional<MapPicture> map,
    List<Line> sure,
    List<JudgedMark> judging,
    List<String> stops,
    List<Caution> cautions,
    String rules,
    List<String> validity,
    String otherBoard,
    List<Line> origin,
    String signOff,
    boolean tight) {
  /** Names of the page's styles. */
  public String style() {
    return verdict.replace(' ', '-') + (tight ? " tight" : "");
  }

  SheetPage with(
      Optional<MapPicture> drawn, List<Line> evidence, List<JudgedMark> counted, boolean small) {
    return new SheetPage(
        verdict,
        title,
        subtitle,
        before,
        warning,
        start,
        refusal,
        mapTitle,
        drawn,
        evidence,
        counted,
        stops,
        cautions,
        rules,
        validity,
        otherBoard,
        origin,
        signOff,
        small);
  }

  /** Whose word comes before the sheet's. */
  public String deferral() {
    return CautionText.DEFERRAL;
  }

  /** A label and what belongs to it. */
  public record Line(String label, String text) {
    public Line {
      text = text.replace(" %", "\u00a0%"); // or the sign may start the next line
    }
  }

  /**
   * The start setting.
   *
   * @param knobs what is set or kept by hand, largest on the page
   * @param fixed what is left as it is
   * @param gives what one pass then does
   */
  public record StartPanel(List<Knob> knobs, String fixed, String gives) {}

  /**
   * One knob.
   *
   * @param name its name
   * @param value where to start
   * @param unit unit of the value
   * @param range where to stay
   * @param hint how to check it at the bench
   */
  public record Knob(String name, String value, String unit, String range, String hint) {}

  /**
   * What stands in place of a start setting.
   *
   * @param headline the answer in one short sentence
   * @param reason why
   * @param nextStep what to do now
   * @param rules what holds until then
   */
  public record Refusal(String headline, String reason, String nextStep, List<String> rules) {}

  /**
   * An outcome with its sign, how many trials on the map show it (blank without map), how to tell.
   */
  public record JudgedMark(PatchSign sign, String count, String text) {}
}
