package charline.paper;

import charline.answer.PieceAnswer;
import charline.answer.WindowAnswer;
import charline.plan.NextPatches;
import charline.trial.Caution;
import charline.window.Box;
import charline.window.JobRisk;
import charline.window.Recommendation;
import charline.window.Verdict;
import charline.wording.PrecautionText;
import gg.jte.Content;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.TemplateOutput;
import gg.jte.output.StringOutput;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The one-page window sheet: self-contained HTML that loads nothing and prints on one page.
 *
 * <p>A verdict without a window gets a sheet too, and never a start setting. The cautions given are
 * completed by those that no sheet goes without: beam, fire, lead and fume.
 *
 * @param recommendation the answer to print
 * @param cautions hazards of this family, wood and kind of laser, the gravest first
 * @param stamp where and when it is printed
 * @param job risk over a whole job, printed beside the risk per area
 * @param next the patches to burn next, printed where there is no window
 * @param piece what the patches of the piece say and changed, where it is for one
 * @param before poison and fire in short, read before anything else
 */
public record WindowSheet(
    Recommendation recommendation,
    List<Caution> cautions,
    SheetStamp stamp,
    Optional<JobRisk> job,
    Optional<NextPatches> next,
    Optional<PieceAnswer> piece,
    Optional<String> before) {
  private static final TemplateEngine PAGES =
      TemplateEngine.createPrecompiled(null, ContentType.Html, null, "charline.paper.templates");

  public WindowSheet {
    cautions = List.copyOf(cautions);
  }

  /** A sheet that says nothing of a job. */
  public WindowSheet(Recommendation recommendation, List<Caution> cautions, SheetStamp stamp) {
    this(
        recommendation,
        cautions,
        stamp,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /** The sheet of an answer. */
  public static WindowSheet of(WindowAnswer answer, List<Caution> cautions, SheetStamp stamp) {
    return new WindowSheet(
        answer.found(),
        cautions,
        stamp,
        answer.job(),
        Optional.of(answer.next()),
        answer.piece(),
        PrecautionText.inShort(answer.precautions()));
  }

  /** The page for whatever paper the printer holds. */
  public String html() {
    return html(Paper.ANY);
  }

  /** The page for a paper: the same in, the same bytes out. */
  public String html(Paper paper) {
    return rendered("sheet.jte", Map.of("page", page(paper), "paper", paper));
  }

  /**
   * The page as part of a site.
   *
   * @param head what the site adds to the head, such as a script that prints the page
   */
  public String html(Paper paper, Content head) {
    return rendered("sheet.jte", Map.of("page", page(paper), "paper", paper, "head", head));
  }

  /** The words of the page. */
  SheetPage page(Paper paper) {
    return new SheetWords(this).page(paper);
  }

  /**
   * The map alone with its legend, as an HTML fragment with its own style; empty where the
   * recommendation has none.
   */
  public static Optional<String> mapHtml(Recommendation recommendation) {
    return MapPicture.of(recommendation, MapPicture.USUAL_PLOT_HEIGHT)
        .map(map -> rendered("map.jte", Map.of("map", map, "tallied", true)));
  }

  /** The box to print: none unless the verdict is a window, whatever else was passed. */
  static Optional<Box> box(Recommendation recommendation) {
    return recommendation.chosen().filter(b -> recommendation.verdict() == Verdict.WINDOW);
  }

  private static String rendered(String template, Map<String, Object> values) {
    TemplateOutput output = new StringOutput();
    PAGES.render(template, values, output);
    return output.toString();
  }
}
