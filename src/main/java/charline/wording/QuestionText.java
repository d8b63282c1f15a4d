package charline.wording;

import charline.ask.Question;
import charline.ask.Ranking;
import charline.log.search.Amount;
import charline.log.search.Attribute;
import charline.log.search.Condition;
import charline.log.search.Condition.All;
import charline.log.search.Condition.Burned;
import charline.log.search.Condition.Coats;
import charline.log.search.Condition.Either;
import charline.log.search.Condition.Has;
import charline.log.search.Condition.Judged;
import charline.log.search.Condition.Marks;
import charline.log.search.Condition.Measured;
import charline.log.search.Condition.Named;
import charline.log.search.Condition.Not;
import charline.log.search.Condition.Noted;
import charline.log.search.Condition.Seen;
import charline.log.search.Condition.Underneath;
import charline.log.search.Feature;
import charline.log.search.NumberRange;
import charline.quantity.Figures;
import charline.trial.Mark;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** How a question was read, in full sentences, so that a slip shows before its answer is used. */
public final class QuestionText {
  private static final int NAMES = 6;

  private static final Map<Attribute, String> LEADS =
      Map.ofEntries(
          Map.entry(Attribute.FAMILY, "of "),
          Map.entry(Attribute.WOOD, "on "),
          Map.entry(Attribute.RIG, "burned with rig "),
          Map.entry(Attribute.BOARD, "on board "),
          Map.entry(Attribute.FINISH, "of finish "),
          Map.entry(Attribute.JOB, "for job "),
          Map.entry(Attribute.BURNED_BY, "burned by "),
          Map.entry(Attribute.JUDGED_BY, "judged by "),
          Map.entry(Attribute.PERSON, "burned or judged by "),
          Map.entry(Attribute.TONE, "with an outermost coat that is "),
          Map.entry(Attribute.FORM, "on boards that are "),
          Map.entry(Attribute.CONDITION, "on boards whose condition is "),
          Map.entry(Attribute.LIGHT, "burned with a rig that is "),
          Map.entry(Attribute.FIGURE, "burned with the figure "),
          Map.entry(Attribute.PLACE, "on the "),
          Map.entry(Attribute.WOOD_PART, "on wood that is "));

  private QuestionText() {}

  /** "You ask for patches of latex, on pine or one of its species, that were clean at the end." */
  public static String sentences(Question question) {
    StringBuilder text = new StringBuilder("You ask for ").append(wanted(question)).append('.');
    question.remarks().forEach(remark -> text.append(' ').append(remark));
    return text.toString();
  }

  /** "patches of latex, on pine", or "the patch with the lowest dose among those ...". */
  public static String wanted(Question question) {
    String among = patches(question.condition());
    return question
        .ranking()
        .map(r -> ranked(r, among))
        .orElse(question.purpose() == Question.Purpose.COUNT ? "the number of " + among : among);
  }

  /** "all patches", "patches of latex, on pine". */
  public static String patches(Condition condition) {
    List<String> phrases = phrases(condition);
    return phrases.isEmpty() ? "all patches" : "patches " + String.join(", ", phrases);
  }

  private static String ranked(Ranking ranking, String among) {
    String order =
        ranking
            .by()
            .map(a -> (ranking.falling() ? "highest " : "lowest ") + words(a, ranking.falling()))
            .orElse(ranking.falling() ? "newest" : "oldest");
    if (ranking.limit() == 0) {
      return "%s, %s first".formatted(among, order);
    }
    if (ranking.by().isEmpty()) {
      return ranking.limit() == 1
          ? "the %s of %s".formatted(order, among)
          : "the %d %s of %s".formatted(ranking.limit(), order, among);
    }
    return ranking.limit() == 1
        ? "what has the %s of %s".formatted(order, among)
        : "the %d that have the %s of %s".formatted(ranking.limit(), order, among);
  }

  private static String words(Amount amount, boolean most) {
    return amount != Amount.PASSES
        ? amount.words()
        : most ? "number of passes" : "number of passes to the first clean reading";
  }

  private static List<String> phrases(Condition condition) {
    if (!(condition instanceof All all)) {
      return List.of(phrase(condition));
    }
    return all.parts().stream()
        .sorted(Comparator.comparingInt(QuestionText::place))
        .map(QuestionText::phrase)
        .toList();
  }

  /** Coats first, then wood, then what was seen; times last. */
  private static int place(Condition condition) {
    if (condition instanceof Named named) {
      return named.attribute().ordinal();
    }
    if (condition instanceof Coats || condition instanceof Underneath) {
      return 0;
    }
    return condition instanceof Seen ? 30 : condition instanceof Burned ? 50 : 40;
  }

  private static String phrase(Condition condition) {
    if (condition instanceof Not not) {
      return denied(not.part());
    }
    if (condition instanceof Either any) {
      return either(any.parts());
    }
    if (condition instanceof All all) {
      return all.parts().isEmpty() ? "of any kind" : String.join(" and ", phrases(all));
    }
    if (condition instanceof Named named) {
      return LEADS.get(named.attribute()) + called(named);
    }
    if (condition instanceof Seen seen) {
      return "that " + seen(seen, true);
    }
    return leaf(condition);
  }

  private static String either(List<Condition> parts) {
    Set<Condition> voids = Set.of(new Has(Feature.VOID), new Not(new Has(Feature.VOID)));
    if (voids.equals(Set.copyOf(parts))) {
      return "with void ones among them";
    }
    return "either "
        + parts.stream().map(QuestionText::phrase).collect(Collectors.joining(", or "));
  }

  private static String called(Named named) {
    if (named.values().size() <= NAMES || named.attribute() == Attribute.WOOD) {
      return named.said();
    }
    List<String> names = new ArrayList<>(new TreeSet<>(named.values()));
    return "%s or %d others"
        .formatted(String.join(", ", names.subList(0, NAMES - 2)), names.size() - NAMES + 2);
  }

  private static String denied(Condition part) {
    if (part instanceof Seen seen) {
      return "that " + seen(seen, false);
    }
    if (part instanceof Either any && any.parts().stream().allMatch(Seen.class::isInstance)) {
      return any.parts().stream()
          .map(p -> "that " + seen((Seen) p, false))
          .collect(Collectors.joining(" and "));
    }
    if (part instanceof Has has) {
      return without(has.feature());
    }
    return "but not " + phrase(part);
  }

  private static String leaf(Condition condition) {
    if (condition instanceof Coats coats) {
      return coats(coats);
    }
    if (condition instanceof Underneath under) {
      return "with %s somewhere under the outermost coat".formatted(or(under.families()));
    }
    if (condition instanceof Burned burned) {
      return "burned " + period(burned.since(), burned.until());
    }
    if (condition instanceof Judged judged) {
      return "judged " + period(judged.since(), judged.until());
    }
    if (condition instanceof Measured measured) {
      return measured.range().isAny()
          ? "whose %s is known".formatted(measured.amount().words())
          : measured(measured);
    }
    if (condition instanceof Noted noted) {
      return "with \"%s\" in a note".formatted(noted.text());
    }
    return with(((Has) condition).feature());
  }

  /** "with a speed below 30 mm/s", "with a power of 50 %", "with 2 passes in all". */
  private static String measured(Measured measured) {
    if (measured.amount() == Amount.PASSES) {
      return "with " + passes(measured.range()) + " in all";
    }
    String range = measured.range().words(measured.amount().unit());
    boolean compared = Character.isLetter(range.charAt(0));
    return "with a %s %s%s".formatted(measured.amount().words(), compared ? "" : "of ", range);
  }

  private static String coats(Coats coats) {
    List<String> steps = coats.families().stream().map(QuestionText::or).toList();
    if (steps.size() == 1 && !coats.top() && !coats.bottom()) {
      return "with %s among the coats".formatted(steps.get(0));
    }
    return "with the coats "
        + String.join(" over ", steps)
        + (coats.bottom() ? " right on the wood" : "")
        + (coats.top() ? ", " + steps.get(0) + " outermost" : "");
  }

  private static String or(Set<String> words) {
    return String.join(" or ", new TreeSet<>(words));
  }

  private static String with(Feature feature) {
    return switch (feature) {
      case SOOT -> "on which soot was noted";
      case PHOTO -> "with a photo";
      case PLANNED -> "that were planned";
      case VOID -> "that are void";
      case NOTE -> "with a note";
      case WETTED -> "that were wetted";
      case AIR -> "burned with air assist";
      case EXTRACTION -> "burned with extraction on";
    };
  }

  private static String without(Feature feature) {
    return switch (feature) {
      case SOOT -> "on which no soot was noted";
      case PHOTO -> "without a photo";
      case PLANNED -> "that were not planned";
      case VOID -> "that are not void";
      case NOTE -> "without a note";
      case WETTED -> "that were not wetted";
      case AIR -> "burned without air assist, or where it was not noted";
      case EXTRACTION -> "burned without extraction, or where it was not noted";
    };
  }

  private static String seen(Seen seen, boolean wanted) {
    String marks = marks(seen.marks());
    String after = seen.passes().isAny() ? "" : "after " + passes(seen.passes());
    return switch (seen.which()) {
      case LAST ->
          "%s %s at the last reading%s"
              .formatted(wanted ? "were" : "were not", marks, after.isEmpty() ? "" : ", " + after);
      case SOME ->
          seen.marks().equals(Marks.ANY)
              ? "were read " + after
              : after.isEmpty()
                  ? "were %s at %s".formatted(marks, wanted ? "some reading" : "no reading")
                  : "were %s%s %s".formatted(wanted ? "" : "not ", marks, after);
      case FIRST ->
          "were %s%s for the first time %s"
              .formatted(wanted ? "" : "not ", marks, after.isEmpty() ? "at any reading" : after);
    };
  }

  private static String passes(NumberRange range) {
    String words = range.words("").replace("above", "more than").replace("below", "fewer than");
    return words + (words.endsWith("1") && !words.endsWith("11") ? " pass" : " passes");
  }

  private static String marks(Marks marks) {
    if (marks.equals(Marks.ANY)) {
      return "read";
    }
    if (marks.equals(Marks.CLEARED)) {
      return "cleared";
    }
    if (marks.equals(Marks.NOT_CLEAN)) {
      return "other than clean";
    }
    if (marks.equals(Marks.NOT_CHARRED)) {
      return "free of char";
    }
    List<String> words = new ArrayList<>();
    for (Mark mark : EnumSet.allOf(Mark.class)) {
      if (marks.with().contains(mark)) {
        words.add(mark == Mark.CLEAN ? "clean" : "marked " + mark.word());
      }
    }
    for (Mark mark : EnumSet.allOf(Mark.class)) {
      if (marks.without().contains(mark)) {
        words.add("free of " + mark.word());
      }
    }
    return String.join(" and ", words);
  }

  /** "on 2026-04-15", "from 2026-04-06 to 2026-04-12", "on or after 2026-03-01". */
  private static String period(Optional<OffsetDateTime> since, Optional<OffsetDateTime> until) {
    if (since.isEmpty()) {
      return until.map(u -> "before " + moment(u)).orElse("at any time");
    }
    if (until.isEmpty()) {
      return "on or after " + moment(since.get());
    }
    if (!isMidnight(since.get()) || !isMidnight(until.get())) {
      return "from %s to %s".formatted(moment(since.get()), moment(until.get()));
    }
    String first = moment(since.get());
    String last = until.get().minusNanos(1).toLocalDate().toString();
    return first.equals(last) ? "on " + first : "from %s to %s".formatted(first, last);
  }

  private static boolean isMidnight(OffsetDateTime moment) {
    return moment.toLocalTime().equals(LocalTime.MIDNIGHT);
  }

  private static String moment(OffsetDateTime moment) {
    return isMidnight(moment)
        ? moment.toLocalDate().toString()
        : moment.toLocalDate() + " " + moment.toLocalTime().truncatedTo(ChronoUnit.MINUTES);
  }

  /** "3 patches". */
  public static String count(int found) {
    return Figures.count(found, "patch", "patches");
  }
}
