package charline.wording;

import charline.answer.AskedRisk;
import charline.quantity.Figures;
import charline.window.Proviso;
import charline.window.Recommendation;
import java.util.List;

/** What has to be known beside a verdict, a sentence or two each. */
public final class ProvisoText {
  private ProvisoText() {}

  /** All that go with a window, the weightiest first. */
  public static List<String> of(Recommendation found) {
    return of(found.provisos(), "the start setting");
  }

  /** All that go with the risk of one setting, likewise. */
  public static List<String> of(AskedRisk risk) {
    return of(risk.provisos(), "this setting");
  }

  private static List<String> of(List<Proviso> provisos, String setting) {
    return provisos.stream().map(proviso -> of(proviso, setting)).toList();
  }

  private static String of(Proviso proviso, String setting) {
    if (proviso instanceof Proviso.HangsOnTail tail) {
      return "At a char risk of %s, %d patches most likely show no char at all: this answer hangs on the tail that the model assumes, which no patch has tested. Take it as a guess, and watch every area."
          .formatted(Figures.share(tail.charRisk()), tail.patches());
    }
    if (proviso instanceof Proviso.CoatContradicted coat) {
      return CoatContradictionText.of(coat.what());
    }
    if (proviso instanceof Proviso.TintLeavesLess tint) {
      return "With tint accepted %s clears at least %s, without it %s: a patch without tint is clear either way, so too few were left with tint to tell. Ask without accepting it."
          .formatted(setting, Figures.atLeast(tint.accepting()), Figures.atLeast(tint.without()));
    }
    Proviso.SeamBeyondTrials seam = (Proviso.SeamBeyondTrials) proviso;
    return "A seam between two strokes gets %s, and no patch was read beyond %d: burn one to %d passes without a rest, or let each stroke cool before the next."
        .formatted(Figures.passes(seam.passes()), seam.mostTried(), seam.passes());
  }
}
