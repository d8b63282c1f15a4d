package charline.web.pages;

import charline.answer.NextAnswer;
import charline.log.Logbook;
import charline.log.PlannedPatch;
import charline.plan.Suggestion;
import charline.refusal.Refusal;
import charline.trial.Stratum;
import charline.web.live.LastKnown;
import charline.wording.PlanEntries;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a tap on "Burn this" does: the patch is planned in the log, then the form is filled. */
record PlanTaps(Logbook log, PageOptions options) {
  /** A list that only has to be looked at anew is there in this time. */
  private static final Duration PLANNING = Duration.ofSeconds(15);

  /** How long a tap waits for the newest list. */
  Duration patience() {
    return options.patience().compareTo(PLANNING) > 0 ? options.patience() : PLANNING;
  }

  /** The newest answer, or a sentence that says why there is none to plan from. */
  static <V> V newest(LastKnown.Known<V> known) {
    if (known.renewing() || known.value().isEmpty()) {
      throw Refusal.usage(
          "The log has changed, and a newer list is being computed; look at it, then choose"
              + " again.");
    }
    return known.value().get();
  }

  /** What the tapped card says, which names its patch. */
  static String said(Context ctx) {
    return Optional.ofNullable(ctx.formParam("said")).orElse("");
  }

  /** The list is not as the person saw it. */
  static Refusal gone(String said) {
    return Refusal.usage(
        "The list has changed since, and %s is not on it; choose again."
            .formatted(said.isEmpty() ? "that patch" : said));
  }

  /** Plans one patch of a list, then goes where it is recorded. */
  void burn(Context ctx, NextAnswer answer) {
    String said = said(ctx);
    Suggestion chosen =
        answer.next().suggestions().stream()
            .filter(s -> BurnNextView.name(s).equals(said))
            .findFirst()
            .orElseThrow(() -> gone(said));
    if (chosen.onlyAfter().isPresent()) {
      throw Refusal.usage(
          "Burn patch %d of the list first; this one is safe only if it did not char."
              .formatted(chosen.onlyAfter().getAsInt()));
    }
    record(ctx, reserved(List.of(entries(ctx, answer).of(chosen))).get(0));
  }

  /** Goes where a plan is recorded. */
  static void record(Context ctx, PlannedPatch plan) {
    ctx.redirect("/record?plan=" + Links.escaped(plan.code()), HttpStatus.SEE_OTHER);
  }

  /** The plans with their codes; one that is open already is not planned again. */
  List<PlannedPatch> reserved(List<PlannedPatch> wanted) {
    return log.inTransaction(
        () -> {
          List<PlannedPatch> open = new ArrayList<>(log.planned().open());
          List<PlannedPatch> plans = new ArrayList<>();
          for (PlannedPatch plan : wanted) {
            Optional<PlannedPatch> known = open.stream().filter(plan::asksTheSameAs).findFirst();
            known.ifPresent(open::remove);
            plans.add(known.orElseGet(() -> log.planned().reserve(List.of(plan)).get(0)));
          }
          return plans;
        });
  }

  PlanEntries entries(Context ctx, NextAnswer answer) {
    return new PlanEntries(answer, log::newId, moment(), by(ctx));
  }

  OffsetDateTime moment() {
    return OffsetDateTime.now(options.clock()).truncatedTo(ChronoUnit.SECONDS);
  }

  /** Who plans. */
  String by(Context ctx) {
    return Pages.by(ctx, options.person());
  }

  /** Plans of a coat on a wood that are not burned yet. */
  List<PlannedPatch> open(Stratum stratum) {
    return log.planned().open().stream()
        .filter(plan -> plan.family().equals(stratum.family()))
        .filter(plan -> plan.wood().equals(stratum.wood()))
        .toList();
  }
}
