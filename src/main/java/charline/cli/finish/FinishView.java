package charline.cli.finish;

import charline.answer.Precautions;
import charline.cli.command.Hints;
import charline.cli.render.JsonReply;
import charline.quantity.Figures;
import charline.trial.Coat;
import charline.trial.Finish;
import charline.trial.Tone;
import charline.wording.Facts;
import charline.wording.Json;
import charline.wording.NoBeamText;
import charline.wording.PrecautionText;
import charline.wording.Table;
import java.io.PrintStream;
import java.util.List;
import java.util.stream.Collectors;

/** A finish as text and as JSON. */
final class FinishView {
  private FinishView() {}

  /** "pale latex 90 um over pale primer". */
  static String stack(Finish finish) {
    return finish.coats().isEmpty()
        ? "coats not recorded"
        : finish.coats().stream().map(FinishView::coat).collect(Collectors.joining(" over "));
  }

  private static String coat(Coat coat) {
    return coat.tone().map(tone -> tone.word() + " ").orElse("")
        + coat.name()
        + coat.called().map(own -> " (" + coat.family() + ")").orElse("")
        + (coat.thicknessMicrometres().isEmpty()
            ? ""
            : " " + Figures.plain(coat.thicknessMicrometres().getAsDouble()) + " um");
  }

  static String text(Finish finish) {
    Facts facts = new Facts("Finish " + finish.name()).add("counted as", finish.family());
    for (int i = 0; i < finish.coats().size(); i++) {
      facts.add(i == 0 ? "outermost coat" : "below it", coat(finish.coats().get(i)));
    }
    return facts.text();
  }

  /** Poison and fire in its coats, short and in full, and whether the beam stays off. */
  static String warning(Precautions known) {
    StringBuilder text = new StringBuilder();
    PrecautionText.headline(known).ifPresent(words -> Table.line(text, words));
    if (known.barred()) {
      Table.line(text, NoBeamText.inFull(known.bars(), Hints.RECORD_SAMPLE));
    }
    PrecautionText.inFull(known).forEach(caution -> Table.line(text, caution));
    return text.toString();
  }

  /** Says that a finish was recorded, and what to beware of. */
  static void recorded(
      Finish finish, String sentence, Precautions known, JsonReply reply, PrintStream out) {
    reply.print(
        out,
        () -> json(finish).put("cautions", warning(known).lines().toList()),
        () -> Table.paragraph(sentence) + "\n" + warning(known));
  }

  static Json json(Finish finish) {
    List<Json> coats =
        finish.coats().stream()
            .map(
                coat ->
                    new Json()
                        .put("family", coat.family())
                        .put("called", coat.called())
                        .put("tone", coat.tone().map(Tone::word))
                        .put("thickness_um", coat.thicknessMicrometres()))
            .toList();
    return new Json()
        .put("finish", finish.name())
        .put("family", finish.family())
        .put("coats", coats);
  }

  /** A coat as it may be typed again: "latex:pale:90um". */
  private static String typed(Coat coat) {
    String tone = coat.tone().map(Tone::word).orElse("");
    String thickness =
        coat.thicknessMicrometres().isPresent()
            ? ":" + Figures.shortest(coat.thicknessMicrometres().getAsDouble()) + "um"
            : "";
    return coat.name() + (tone.isEmpty() && thickness.isEmpty() ? "" : ":" + tone) + thickness;
  }

  /** The same in one line per finish, for CSV; each coat with its own thickness. */
  static Json flat(Finish finish) {
    return new Json()
        .put("finish", finish.name())
        .put("family", finish.family())
        .put("tone", finish.tone().map(Tone::word))
        .put("thickness_um", finish.thicknessMicrometres())
        .put("coats", String.join(" + ", finish.coats().stream().map(FinishView::typed).toList()));
  }
}
