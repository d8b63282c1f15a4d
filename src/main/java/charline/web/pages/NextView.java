package charline.web.pages;

import charline.answer.WindowAnswer;
import charline.plan.Suggestion;
import charline.quantity.Figures;
import charline.trial.Caution;
import charline.trial.Stratum;
import charline.web.live.LiveAnswers;
import charline.wording.DriftText;
import charline.wording.PlanText;
import charline.wording.SettingsText;
import charline.wording.VerdictText;
import java.util.List;
import java.util.Optional;

/**
 * What to burn next of the trials that were worked on last.
 *
 * @param renewing true while it is still being worked out, or a newer one is
 * @param stratum what it is about
 * @param query part of an address that names it
 * @param verdict the window in a sentence
 * @param state name of the sign of the verdict
 * @param notValid why the window must not be used any more, if so
 * @param first the patch to burn next, if any
 * @param others those after it
 * @param advice how to go on
 */
public record NextView(
    boolean renewing,
    Stratum stratum,
    String query,
    String verdict,
    String state,
    Optional<Caution> notValid,
    Optional<Card> first,
    List<Card> others,
    String advice) {
  private static final int OTHERS = 3;

  /**
   * A patch to burn.
   *
   * @param place what it is to be burned on
   * @param setting power and speed
   * @param words passes, why, and what it risks
   * @param after the setting that must have left no char first, blank for none
   * @param said names it, so that no other is taken for it once the list has changed
   */
  public record Card(String place, String setting, String words, String after, String said) {}

  /**
   * A window that changed or must not be used any more.
   *
   * @param query part of an address that names it
   * @param words what it comes to now, and came to before
   * @param state name of the sign
   */
  public record Changed(Stratum stratum, String query, String words, String state) {
    /** Empty where it is as it was. */
    static Optional<Changed> of(Stratum stratum, LiveAnswers.Verdict verdict) {
      Optional<String> words =
          verdict
              .notValid()
              .map(caution -> verdict.words() + ": do not use it now")
              .or(
                  () ->
                      verdict
                          .before()
                          .map(before -> "%s; was: %s".formatted(verdict.words(), before)));
      return words.map(
          text ->
              new Changed(
                  stratum,
                  Links.of(stratum),
                  text,
                  verdict.notValid().isPresent() ? "heed" : "unknown"));
    }
  }

  static NextView unknown(Stratum stratum) {
    return new NextView(
        true,
        stratum,
        Links.of(stratum),
        "",
        "unknown",
        Optional.empty(),
        Optional.empty(),
        List.of(),
        "");
  }

  static NextView of(WindowAnswer answer, boolean renewing) {
    Stratum stratum = answer.found().stratum();
    Optional<Caution> notValid = DriftText.notValid(answer.applicability().validity());
    List<Card> cards = answer.next().suggestions().stream().map(s -> card(s, answer)).toList();
    return new NextView(
        renewing,
        stratum,
        Links.of(stratum),
        VerdictText.plainly(answer.found(), notValid.isEmpty()),
        WindowView.state(answer.found().verdict(), notValid.isEmpty()),
        notValid,
        cards.stream().findFirst(),
        cards.stream().skip(1).limit(OTHERS).toList(),
        PlanText.advice(answer.next().advice()));
  }

  private static Card card(Suggestion s, WindowAnswer answer) {
    return new Card(
        s.place().name(),
        setting(s),
        "%s; %s; may char %s"
            .formatted(
                SettingsText.plannedPasses(s.passes(), s.purpose()),
                PlanText.motive(s.motive()),
                Figures.part(s.charRiskMean())),
        s.onlyAfter().isEmpty()
            ? ""
            : setting(answer.next().suggestions().get(s.onlyAfter().getAsInt() - 1)),
        BurnNextView.name(s));
  }

  private static String setting(Suggestion s) {
    return "%s %% at %s mm/s"
        .formatted(
            Figures.shortest(s.setting().powerPercent()),
            Figures.shortest(s.setting().speedMillimetresPerSecond()));
  }
}
