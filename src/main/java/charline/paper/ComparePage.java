package charline.paper;

import charline.answer.CompareAnswer;
import charline.trial.Caution;
import charline.trial.Stratum;
import charline.wording.CautionText;
import charline.wording.CompareText;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.TemplateOutput;
import gg.jte.output.StringOutput;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Map;

/**
 * Two ways of working on one page: self-contained HTML that loads nothing.
 *
 * @param words what was found
 * @param stamp where and when it is printed
 */
public record ComparePage(CompareText words, SheetStamp stamp) {
  private static final TemplateEngine PAGES =
      TemplateEngine.createPrecompiled(null, ContentType.Html, null, "charline.paper.templates");
  private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm");

  /** The page: the same in, the same bytes out. */
  public String html() {
    TemplateOutput output = new StringOutput();
    PAGES.render("compare.jte", Map.of("page", this), output);
    return output.toString();
  }

  /** The picture alone with its style and legend, as an HTML fragment. */
  public static String pictureHtml(CompareText words) {
    TemplateOutput output = new StringOutput();
    PAGES.render(
        "rooms.jte", Map.of("words", words, "picture", RoomPicture.of(words.answer())), output);
    return output.toString();
  }

  /** Both windows on one map. */
  public RoomPicture picture() {
    return RoomPicture.of(words.answer());
  }

  /** Hazards, with those that no paper at the beam goes without. */
  public List<Caution> cautions() {
    CompareAnswer answer = words.answer();
    Stratum first = answer.first().found().stratum();
    Stratum second = answer.second().found().stratum();
    return StandingCautions.completing(
        StandingCautions.completing(answer.precautions().cautions(), first), second);
  }

  /** Standards and rules that they name. */
  public String rules() {
    return StandingCautions.rulesOf(cautions());
  }

  /** Whose word comes before the page's. */
  public String deferral() {
    return CautionText.DEFERRAL;
  }

  /** Log, version, date and person. */
  public String origin() {
    return "Log %s. Printed %s%s, charline %s."
        .formatted(
            stamp.logName(),
            MOMENT.format(stamp.printedAt()),
            stamp.by().map(by -> " by " + by).orElse(""),
            stamp.programVersion());
  }
}
