package charline.web.pages;

import charline.ask.Question;
import charline.ask.Ranking;
import charline.ask.WiderQuestion;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.search.Vocabulary;
import charline.refusal.Refusal;
import charline.trial.Mark;
import charline.trial.Stratum;
import charline.web.live.LiveModels;
import charline.web.live.LogSnapshot;
import charline.wording.QuestionText;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The page where the log is asked in plain words or by tapping them. */
public final class AskPages {
  private static final int LONGEST_QUESTION = 300;
  private static final int MOST_CARDS = 60;

  private final Logbook log;
  private final LiveModels models;
  private final Clock clock;
  private final String person;
  private final Pages pages;

  AskPages(Logbook log, LiveModels models, Clock clock, String person, Pages pages) {
    this.log = log;
    this.models = models;
    this.clock = clock;
    this.person = person;
    this.pages = pages;
  }

  void add(RoutesConfig routes) {
    routes.get("/ask", this::ask);
  }

  /**
   * The page's content.
   *
   * @param question as asked
   * @param groups words to tap, by what they are about
   * @param refusal why the question was not understood
   * @param summary how many were found
   * @param found the newest that were found
   */
  public record AskView(
      String question,
      List<Group> groups,
      Optional<String> refusal,
      String summary,
      List<PatchEntry> found) {}

  /** Words of one kind. */
  public record Group(String label, List<Word> words) {}

  /** A word to tap: the question that it leads to, and whether it is asked already. */
  public record Word(String text, String question, boolean asked) {}

  private void ask(Context ctx) {
    String typed = Optional.ofNullable(ctx.queryParam("q")).orElse("").strip();
    String question =
        typed.length() > LONGEST_QUESTION ? typed.substring(0, LONGEST_QUESTION) : typed;
    if (log.hasPatch(question)) {
      ctx.redirect(Links.patch(log.patch(question).patch().code()), HttpStatus.SEE_OTHER);
      return;
    }
    Optional<String> refusal = Optional.empty();
    List<PatchEntry> found = List.of();
    String read = "";
    boolean newest = true;
    try {
      Question asked =
          question.isEmpty()
              ? Question.EVERYTHING.ranked(Ranking.byTime(true, 0))
              : Question.parse(List.of(question), Vocabulary.of(log), asker(ctx), clock);
      found = asked.patches(log);
      Optional<Question> wider = WiderQuestion.of(asked);
      if (found.isEmpty() && wider.isPresent()) {
        found = wider.get().patches(log);
        asked = found.isEmpty() ? asked : wider.get();
      }
      newest = asked.ranking().map(r -> r.by().isEmpty() && r.falling()).orElse(true);
      found = asked.ranking().isPresent() ? found : newestFirst(found);
      read = question.isEmpty() ? "" : QuestionText.sentences(asked) + " ";
    } catch (Refusal e) {
      refusal = Optional.of(e.getMessage());
    }
    pages.send(
        ctx,
        "ask",
        pages.frame(ctx, "Ask", "/ask"),
        Map.of(
            "view",
            new AskView(
                question,
                groups(question),
                refusal,
                read + summary(found, newest),
                found.stream().limit(MOST_CARDS).toList())));
  }

  /** Who asks: the name that the device sends, else that of the serving machine. */
  private Optional<String> asker(Context ctx) {
    return Optional.ofNullable(ctx.queryParam("by"))
        .filter(by -> !by.isBlank())
        .or(() -> Optional.of(person));
  }

  private static List<PatchEntry> newestFirst(List<PatchEntry> found) {
    List<PatchEntry> newest = new ArrayList<>(found);
    Collections.reverse(newest);
    return newest;
  }

  private static String summary(List<PatchEntry> found, boolean newest) {
    String words =
        switch (found.size()) {
          case 0 -> "No patch found.";
          case 1 -> "1 patch found.";
          default -> found.size() + " patches found" + (newest ? ", the newest first." : ".");
        };
    return found.size() > MOST_CARDS
        ? words + " The first " + MOST_CARDS + " are shown; narrow the question to see the others."
        : words;
  }

  private List<Group> groups(String question) {
    LogSnapshot shelf = models.shelf();
    return Stream.of(
            group(question, "Outcome", Arrays.stream(Mark.values()).map(Mark::word)),
            group(question, "Coating", shelf.strata().keySet().stream().map(Stratum::family)),
            group(question, "Wood", shelf.strata().keySet().stream().map(Stratum::wood)),
            group(question, "Time", Stream.of("today", "yesterday", "last week", "last month")))
        .filter(g -> !g.words().isEmpty())
        .toList();
  }

  private static Group group(String question, String label, Stream<String> words) {
    return new Group(
        label, words.distinct().sorted().map(w -> word(question, w)).collect(Collectors.toList()));
  }

  /** Tapping a word adds it to the question, or takes it out again. */
  private static Word word(String question, String word) {
    String padded = " " + question.toLowerCase(Locale.ROOT) + " ";
    boolean asked = padded.contains(" " + word + " ");
    String next =
        asked ? padded.replaceFirst(" " + Pattern.quote(word) + " ", " ") : question + " " + word;
    return new Word(word, next.strip(), asked);
  }
}
