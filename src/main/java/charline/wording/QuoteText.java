package charline.wording;

import charline.quantity.Figures;
import charline.quote.Quote;
import charline.quote.Quoting;
import java.util.ArrayList;
import java.util.List;

/** What the hours of a job were worked out from, in words. */
public final class QuoteText {
  private QuoteText() {}

  /** What is done, in two or three words. */
  public static String task(Quote.Task task) {
    return switch (task) {
      case BEAM -> "beam and handling";
      case COOLING -> "cooling";
      case TEST_PATCHES -> "test patches";
      case SET_UP -> "set-up";
      case MASKING -> "masking";
      case FIRE_WATCH -> "fire watch";
    };
  }

  /** What the hours of a part were worked out from. */
  public static String how(Quote.Task task, Quote quote) {
    return switch (task) {
      case BEAM -> beam(quote);
      case COOLING -> "rest between passes: the wood must be cold before the next";
      case TEST_PATCHES ->
          Quoting.TEST_PATCHES + " on a hidden spot of the piece, judged cold and wiped";
      case SET_UP -> "with extraction and clean-up, each day";
      case MASKING -> "by the area";
      case FIRE_WATCH ->
          "after the last pass of each day (NFPA 51B, 2019: 1 hour; some schemes up to 3 more)";
    };
  }

  private static String beam(Quote quote) {
    Quoting quoting = quote.basis().quoting();
    Quote.Counts passes = quote.basis().passes();
    return "%s m2 at %s m2/h per pass, %s, hand efficiency %s%s"
        .formatted(
            Figures.digits(quote.areaSquareMetres(), 6),
            Figures.digits(quote.basis().onePass().squareMetresPerHour(), 3),
            range(Figures.passes(passes.usual()), passes.low(), passes.high()),
            efficiency(quoting.efficiency()),
            quoting.edges() == 1 ? "" : ", edges x " + Figures.digits(quoting.edges(), 3));
  }

  private static String efficiency(Quote.Hours share) {
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

  /** Where less time is planned than the cautions ask for, a sentence or two each. */
  public static List<String> warnings(Quote quote) {
    Quoting quoting = quote.basis().quoting();
    return quoting.fireWatchTooShort()
        ? List.of(
            "A fire watch of %s min is less than the cautions ask for: NFPA 51B (2019) has one hour after the last pass, longer over hidden cavities; insurers and permits may ask for more. Keep the hour, and quote it."
                .formatted(Figures.digits(quoting.minutes().get(Quote.Task.FIRE_WATCH).low(), 3)))
        : List.of();
  }

  /** What the quote assumes, a sentence each. */
  public static List<String> assumptions(Quote quote) {
    Quote.Counts days = quote.basis().days();
    Quote.Counts passes = quote.basis().passes();
    List<String> all = new ArrayList<>();
    all.add(
        "The whole area is flat, of the same wood and coats as the trials, and the start setting is"
            + " kept.");
    all.add(
        "At up to %s h of beam, handling and cooling a day, the work takes %s; set-up and fire watch come on top each day, test patches and masking once."
            .formatted(
                Figures.digits(quote.basis().quoting().hoursADay(), 3),
                range(Figures.count(days.usual(), "day", "days"), days.low(), days.high())));
    if (passes.high() > passes.usual()) {
      all.add(
          "The high end counts more passes than the window has; it does not allow them: what is"
              + " left after the window's passes needs another method, at much the same pace.");
    }
    all.add(
        "Hand efficiency, set-up, masking, cooling and patch times that you did not set are common"
            + " practice with no published source; enter your own.");
    all.add("Travel, refinishing and waste disposal are not included.");
    return all;
  }
}
