package charline.wording;

import charline.answer.QuoteAnswer;
import charline.quantity.Figures;
import charline.quote.Counts;
import charline.quote.Lead;
import charline.quote.Price;
import charline.quote.Quote;
import charline.quote.Quoting;
import charline.quote.Span;
import charline.quote.Task;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the hours of a job were worked out from, in words. */
public final class QuoteText {
  private QuoteText() {}

  /** What is done, in two or three words. */
  public static String task(Task task) {
    return switch (task) {
      case BEAM -> "beam and handling";
      case COOLING -> "cooling";
      case REWORK -> "rework of char";
      case TEST_PATCHES -> "test patches";
      case MASKING -> "masking";
      case SANDING -> "sanding after";
      case CONTAINMENT -> "lead containment";
      case CLEARANCE -> "lead clearance";
      case CONTINGENCY -> "contingency";
      case SET_UP -> "set-up";
      case WASTE -> "waste and filters";
      case FIRE_WATCH -> "fire watch";
    };
  }

  /** What the minutes of a task are for. */
  public static String per(Task.Per per) {
    return switch (per) {
      case WORK -> "in all";
      case REST -> "between two passes";
      case SPOT -> "a charred spot";
      case PATCH -> "a patch";
      case SQUARE_METRE -> "a square metre";
      case JOB_WITH_LEAD -> "for the job";
      case DAY -> "a day";
    };
  }

  /** "10 min (5 to 20) a square metre". */
  public static String minutes(Task task, Quoting quoting) {
    return minutes(quoting.minutes().get(task)) + " " + per(task.per());
  }

  private static String minutes(Span minutes) {
    return minutes.low() == minutes.high()
        ? Figures.three(minutes.usual()) + " min"
        : "%s min (%s to %s)"
            .formatted(
                Figures.three(minutes.usual()),
                Figures.three(minutes.low()),
                Figures.three(minutes.high()));
  }

  /** What the hours of a part were worked out from. */
  public static String how(Task task, Quote quote) {
    Quoting quoting = quote.basis().quoting();
    return switch (task) {
      case BEAM -> beam(quote);
      case COOLING -> minutes(task, quoting) + ": the wood must be cold before the next";
      case REWORK -> minutes(task, quoting) + ", " + spots(quote.basis().spots());
      case TEST_PATCHES ->
          "%d on a hidden spot of the piece, judged cold and wiped, %s"
              .formatted(Quoting.TEST_PATCHES, minutes(task, quoting));
      case MASKING, SANDING -> minutes(task, quoting);
      case CONTAINMENT, CLEARANCE -> minutes(task, quoting) + ", " + lead(quoting);
      case CONTINGENCY -> Figures.share(quoting.contingency()) + " of all parts above";
      case SET_UP -> minutes(task, quoting) + ", extraction and clean-up included";
      case WASTE -> minutes(task, quoting) + ": bags, filters, vacuum";
      case FIRE_WATCH ->
          minutes(task, quoting)
              + ", after the last pass (NFPA 51B, 2019: 1 hour; name more where a permit or insurer"
              + " asks for it)";
    };
  }

  private static String spots(Span spots) {
    return "%s charred spots (%s to %s) expected"
        .formatted(
            Figures.three(spots.usual()),
            Figures.threeDown(spots.low()),
            Figures.threeUp(spots.high()));
  }

  private static String lead(Quoting quoting) {
    return quoting.lead().orElseThrow() == Lead.FOUND ? "lead was found" : "lead: not tested";
  }

  private static String beam(Quote quote) {
    Quoting quoting = quote.basis().quoting();
    Counts passes = quote.basis().passes();
    return "%s m² at %s m²/h per pass, %s, hand efficiency %s%s"
        .formatted(
            Figures.digits(quote.areaSquareMetres(), 6),
            Figures.digits(quote.basis().onePass().squareMetresPerHour(), 3),
            range(Figures.passes(passes.usual()), passes.low(), passes.high()),
            efficiency(quoting.efficiency()),
            quoting.edges() == 1 ? "" : ", edges x " + Figures.digits(quoting.edges(), 3));
  }

  private static String efficiency(Span share) {
    return share.low() == share.high()
        ? Figures.share(share.usual())
        : "%s (%s to %s)"
            .formatted(
                Figures.share(share.usual()),
                Figures.share(share.low()),
                Figures.share(share.high()));
  }

  private static String range(String usual, int low, int high) {
    return low == high ? usual : "%s (%d to %d)".formatted(usual, low, high);
  }

  /** "2 days (1 to 4) of up to 8 h". */
  public static String days(Quote quote) {
    Counts days = quote.basis().days();
    return "%s of up to %s h"
        .formatted(
            range(Figures.count(days.usual(), "day", "days"), days.low(), days.high()),
            Figures.digits(quote.basis().quoting().hoursADay(), 3));
  }

  /** What the second person's hours are. */
  public static String secondPerson(Quote quote) {
    return Figures.share(quote.basis().quoting().secondPerson()) + " of the hours on site";
  }

  /** What costs money, in two or three words. */
  public static String item(Price.Item item) {
    return switch (item) {
      case HOURS -> "hours on site";
      case SECOND_PERSON -> "second person";
      case MACHINE -> "machine, by the day";
      case WASTE -> "waste and filters";
    };
  }

  /** What a task costs in time or money, with two decimals, so that parts add up as printed. */
  public static String hundredths(double value) {
    return Figures.decimals(value, 2);
  }

  /** The same, and where the quote leaves out what the log calls for. */
  public static List<String> warnings(QuoteAnswer answer) {
    Quote quote = answer.quote().orElseThrow();
    List<String> all = new ArrayList<>();
    boolean free = quote.basis().quoting().lead().equals(Optional.of(Lead.FREE));
    Lead known = answer.window().precautions().lead();
    if (free && known != Lead.FREE) {
      all.add(
          "Quoted as free of lead, as you said; %s. Containment and clearance are not in these hours: keep the test report with the quote, and record it with the coat."
              .formatted(
                  known == Lead.FOUND
                      ? "a sample in the log found lead"
                      : "the log has no test of these coats"));
    }
    all.addAll(warnings(quote));
    return all;
  }

  /** Where less time is planned than the cautions ask for, a sentence or two each. */
  public static List<String> warnings(Quote quote) {
    Quoting quoting = quote.basis().quoting();
    List<String> all = new ArrayList<>();
    if (quoting.lead().filter(lead -> lead == Lead.NOT_TESTED).isPresent()) {
      all.add(
          "Lead: not tested. Containment and clearance are quoted as if it had been found. Have"
              + " every coat tested by a certified person before the first patch; local codes and"
              + " licensed firms come first.");
    }
    if (quoting.lead().filter(lead -> lead == Lead.FOUND).isPresent()) {
      all.add(
          "Lead was found. Who may do this work, how it is contained and who clears it is for local"
              + " codes and licensed firms to say; the hours are a placeholder for theirs.");
    }
    if (quoting.fireWatchTooShort()) {
      all.add(
          "A fire watch of %s min is less than the cautions ask for: NFPA 51B (2019) has one hour after the last pass, longer over hidden cavities; insurers and permits may ask for more. Keep the hour, and quote it."
              .formatted(Figures.digits(quoting.minutes().get(Task.FIRE_WATCH).low(), 3)));
    }
    return all;
  }

  /** What the quote assumes, a sentence each. */
  public static List<String> assumptions(Quote quote) {
    Counts passes = quote.basis().passes();
    List<String> all = new ArrayList<>();
    all.add(
        "The whole area is flat, of the same wood and coats as the trials, and the start setting is"
            + " kept.");
    all.add(
        "The work takes %s, set-up, waste and fire watch of every day included; the other parts come once."
            .formatted(days(quote)));
    if (passes.high() > passes.usual()) {
      all.add(
          "The high end counts more passes than the window has; it does not allow them: what is"
              + " left after the window's passes needs another method, at much the same pace.");
    }
    all.add(
        "The low end expects no charred spot, the high end as many as the bound of the char risk"
            + " allows.");
    all.add(
        "Times and shares that you did not set are common practice with no published source; enter"
            + " your own.");
    all.add("Travel and refinishing are not included.");
    return all;
  }
}
