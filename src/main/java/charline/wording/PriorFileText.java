package charline.wording;

import charline.answer.PriorLine;
import charline.answer.Priors;
import charline.model.Event;
import java.util.Arrays;
import java.util.List;

/** Priors as the file that {@link charline.answer.PriorFile} reads. */
public final class PriorFileText {
  private PriorFileText() {}

  /**
   * The file, with what each line means and why.
   *
   * @param use how this face uses such a file, as in "USE. These alone ..."
   */
  public static String of(Priors priors, String use) {
    StringBuilder text = new StringBuilder();
    remark(
        text,
        "What the models assume before any patch. You may change or leave out lines; "
            + use
            + ". These alone never make a window: it takes patches.");
    for (PriorLine parameter : PriorLine.values()) {
      text.append('\n');
      remark(
          text,
          parameter.word() + ": " + parameter.meaning() + ". Why: " + parameter.reason() + ".");
      text.append(parameter.write(Event.CHAR, priors.charring())).append('\n');
      text.append(parameter.write(Event.CLEARING, priors.clearing())).append('\n');
    }
    return text.toString();
  }

  /** The same line by line as JSON. */
  public static List<Json> json(Priors priors) {
    return Arrays.stream(PriorLine.values())
        .map(
            parameter ->
                new Json()
                    .put("parameter", parameter.word())
                    .put("meaning", parameter.meaning())
                    .put("char", parameter.write(Event.CHAR, priors.charring()))
                    .put("clearing", parameter.write(Event.CLEARING, priors.clearing()))
                    .put("why", parameter.reason()))
        .toList();
  }

  private static void remark(StringBuilder text, String words) {
    Table.fold(words, Table.WIDTH - 2).forEach(l -> text.append("# ").append(l).append('\n'));
  }
}
