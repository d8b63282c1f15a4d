package charline.web.pages;

import charline.answer.NextAnswer;
import charline.log.PlannedPatch;
import charline.plan.NextPatches;
import charline.plan.Purpose;
import charline.plan.Suggestion;
import charline.quantity.Figures;
import charline.trial.Caution;
import charline.trial.Stratum;
import charline.wording.BasisText;
import charline.wording.BorrowText;
import charline.wording.PlanText;
import charline.wording.PrecautionText;
import charline.wording.ProvisoText;
import charline.wording.RigSetupText;
import charline.wording.SettingsText;
import charline.wording.SpotsText;
import charline.wording.WayText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The patches to burn next as the page shows them.
 *
 * @param where on what they are to be burned
 * @param behind that a newer list is being computed, if so
 * @param poison poison and fire in short, blank for none
 * @param why where things are
 * @param how how to go on
 * @param provisos what has to be known beside it
 * @param notes what the list rests on, a sentence each
 * @param fixed rig and knobs of all of them, blank where there is none to burn
 * @param cards the patches in the order to burn them
 * @param open plans of the same coat and wood that are not burned yet
 * @param query part of the address that asks the same again
 */
public record BurnNextView(
    Stratum stratum,
    String where,
    Optional<String> behind,
    String poison,
    String why,
    String how,
    List<String> provisos,
    List<String> notes,
    String fixed,
    List<Card> cards,
    List<Plan> open,
    List<Caution> cautions,
    String query) {
  /**
   * One patch.
   *
   * @param settings power and speed
   * @param place what it is burned on, with its passes
   * @param why why, in a few words
   * @param after number of the patch that must have stayed without char first, 0 for none
   * @param risk what it may do
   * @param said names it, so that no other is taken for it once the list has changed
   */
  public record Card(
      int number,
      String settings,
      String place,
      String why,
      int after,
      String risk,
      String gain,
      String said) {
    static Card of(NextPatches next, Suggestion s) {
      return new Card(
          s.number(),
          SettingsText.settings(s.settings()),
          "%s on %s, %s J/cm² a pass"
              .formatted(
                  SettingsText.plannedPasses(s.passes(), s.purpose()),
                  s.place().name(),
                  Figures.three(s.setting().doseJoulesPerCm2())),
          PlanText.motive(s.motive()),
          s.onlyAfter().orElse(0),
          "char risk %s, at most %s (%s); clears %s"
              .formatted(
                  Figures.percent(s.charRiskMean()),
                  Figures.atMost(s.charRiskUpper()),
                  SpotsText.of(next.charredSpots(s)),
                  Figures.percent(s.clearChanceMean())),
          PlanText.gain(s.gain()),
          name(s));
    }
  }

  /** A plan as a card. */
  public record Plan(
      String code, String what, String settings, String place, String why, String planned) {
    static Plan of(PlannedPatch plan) {
      return new Plan(
          plan.code(),
          "%s on %s, rig %s".formatted(plan.family(), plan.wood(), plan.rig().name()),
          SettingsText.settings(plan.settings()),
          "%s on %s"
              .formatted(
                  SettingsText.plannedPasses(plan.passes(), Purpose.ofWord(plan.purpose())),
                  plan.place()),
          plan.reasonInFull(),
          "planned "
              + plan.plannedAt().toLocalDate()
              + plan.by().map(by -> " by " + by).orElse(""));
    }
  }

  /** Names a patch of a list. */
  static String name(Suggestion s) {
    return "%s on %s, %s"
        .formatted(
            SettingsText.settings(s.settings()), s.place().name(), SettingsText.passes(s.passes()));
  }

  static BurnNextView of(
      NextAnswer answer, boolean renewing, List<PlannedPatch> open, String query) {
    NextPatches next = answer.next();
    List<String> notes = new ArrayList<>();
    next.window()
        .flatMap(found -> WayText.of(found.charFit(), found.clearingFit(), found.patches()))
        .ifPresent(notes::add);
    next.window().stream()
        .flatMap(found -> Stream.of(found.charFit(), found.clearingFit()))
        .flatMap(Optional::stream)
        .flatMap(fit -> BorrowText.of(fit).stream())
        .forEach(notes::add);
    BasisText.of(answer.question()).ifPresent(notes::add);
    return new BurnNextView(
        answer.stratum(),
        PlanText.site(next.site()),
        renewing ? Optional.of("A newer list is being computed.") : Optional.empty(),
        PrecautionText.headline(answer.precautions()).orElse(""),
        PlanText.standing(next.standing()),
        PlanText.advice(next.advice()),
        next.window().map(ProvisoText::of).orElse(List.of()),
        notes,
        next.suggestions().isEmpty()
            ? ""
            : "%s%s; %s."
                .formatted(
                    RigSetupText.fixedForPatches(next.bench()),
                    WayText.fixed(next.window().flatMap(found -> found.charFit())),
                    RigSetupText.metered(next.bench())),
        next.suggestions().stream().map(s -> Card.of(next, s)).toList(),
        open.stream().map(Plan::of).toList(),
        answer.precautions().cautions(),
        query);
  }
}
