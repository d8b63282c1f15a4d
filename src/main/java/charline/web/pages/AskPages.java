package charline.web.pages;

import charline.ask.Question;
import charline.ask.WiderQuestion;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.search.Vocabulary;
import charline.paper.OutcomeChart;
import charline.quantity.Figures;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Mark;
import charline.trial.Patch;
import charline.trial.Stratum;
import charline.web.live.LiveModels;
import charline.web.live.LogSnapshot;
import charline.wording.DaysText;
import charline.wording.QuestionText;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** The page where the log is asked in plain words, and by every filter. */
public final class AskPages {
  private static final int LONGEST_QUESTION = 300;

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
   * @param question as asked in words
   * @param filters what else can be asked, and is
   * @param active what is asked beside the words, each with the address without it
   * @param refusal why it was not understood
   * @param read how the words were read, blank for none
   * @param summary how many were found, of what
   * @param rows those of this page
   * @param chart all of them by dose; empty where none was found
   * @param empty what to try where none was found
   * @param same address that asks the same, to which a sort or a page is added
   */
  public record AskView(
      String question,
      List<Choice> filters,
      List<Active> active,
      Optional<String> refusal,
      String read,
      String summary,
      PatchRows rows,
      Optional<OutcomeChart> chart,
      Empty empty,
      String same,
      String since,
      String until,
      List<String> marks) {
    /** Whether a mark is asked for. */
    public boolean marked(Mark mark) {
      return marks.contains(mark.word());
    }

    /** The address that sorts by a column, the other way round where it does already. */
    public String sorted(String column) {
      boolean turn = rows.sort().equals(column);
      boolean falls = turn ? !rows.falling() : column.equals(PatchRows.NEWEST);
      return same + "&sort=" + column + (falls ? "&order=falling" : "&order=rising");
    }

    /** Whether filters alone say what was found, so that it can be exported. */
    public boolean exportable() {
      return question.isEmpty();
    }

    /** The filters as a part of an address. */
    public String filterQuery() {
      return same.substring(same.indexOf('=') + 1).replaceFirst("^&", "");
    }

    /** How a column is sorted, as a screen reader says it. */
    public String order(String column) {
      return rows.sort().equals(column) ? rows.falling() ? "descending" : "ascending" : null;
    }

    /** The address of another page. */
    public String page(int number) {
      return "%s&sort=%s&order=%s&page=%d"
          .formatted(same, rows.sort(), rows.falling() ? "falling" : "rising", number);
    }
  }

  /** One filter with what it may be. */
  public record Choice(String name, String label, List<String> options, String chosen) {}

  /** What is asked beside the words, with the address without it. */
  public record Active(String label, String link) {}

  /**
   * What a person can do where nothing was found.
   *
   * @param sentence what the log has
   * @param offers the same search with one thing left out, with how many it finds
   */
  public record Empty(String sentence, List<Active> offers) {}

  private void ask(Context ctx) {
    String typed = Optional.ofNullable(ctx.queryParam("q")).orElse("").strip();
    String question =
        typed.length() > LONGEST_QUESTION ? typed.substring(0, LONGEST_QUESTION) : typed;
    if (log.hasPatch(question)) {
      ctx.redirect(Links.patch(log.patch(question).patch().code()), HttpStatus.SEE_OTHER);
      return;
    }
    LogSnapshot shelf = models.shelf();
    AskFilter filter = new AskFilter(ctx);
    Optional<String> refusal = Optional.empty();
    List<PatchEntry> found = List.of();
    String read = "";
    String summary = "No patch found";
    boolean ranked = false;
    try {
      Question asked = asked(question, filter, ctx);
      found = shelf.patches(log, asked);
      Optional<Question> wider = WiderQuestion.of(asked);
      if (found.isEmpty() && wider.isPresent()) {
        found = shelf.patches(log, wider.get());
        asked = found.isEmpty() ? asked : wider.get();
      }
      ranked = asked.ranking().isPresent();
      summary =
          found.isEmpty()
              ? summary
              : summary(found, DaysText.burned(patches(found), asked, clock.getZone()));
      read = question.isEmpty() ? "" : QuestionText.sentences(asked);
    } catch (Refusal e) {
      refusal = Optional.of(e.getMessage());
    }
    String same = same(question, filter);
    String sort = Asking.text(ctx, "sort");
    PatchRows rows =
        PatchRows.of(
            found,
            sort.isEmpty() && ranked ? PatchRows.AS_ASKED : sort,
            !"rising".equals(ctx.queryParam("order")),
            page(ctx));
    pages.send(
        ctx,
        "ask",
        pages.frame(ctx, "Ask", "/ask", "work.css"),
        Map.of(
            "view",
            new AskView(
                question,
                choices(shelf, filter),
                active(question, filter),
                refusal,
                read,
                summary,
                rows,
                found.isEmpty() ? Optional.empty() : Optional.of(OutcomeChart.of(patches(found))),
                found.isEmpty() && refusal.isEmpty()
                    ? empty(shelf, question, filter, ctx)
                    : new Empty("", List.of()),
                same,
                first(filter, "since"),
                first(filter, "until"),
                filter.values().getOrDefault("outcome", List.of()))));
  }

  /** What the words and the filters ask for together. */
  private Question asked(String question, AskFilter filter, Context ctx) {
    Question words =
        question.isEmpty()
            ? Question.EVERYTHING
            : Question.parse(List.of(question), Vocabulary.of(log), asker(ctx), clock);
    return words.narrowed(filter.condition(log, clock));
  }

  /** Who asks: the name that the device sends, else that of the serving machine. */
  private Optional<String> asker(Context ctx) {
    return Optional.of(Pages.recorder(ctx, person));
  }

  private static String same(String question, AskFilter filter) {
    return "/ask?q=" + Links.escaped(question) + filter.query();
  }

  private static String first(AskFilter filter, String name) {
    return filter.values().getOrDefault(name, List.of("")).get(0);
  }

  private static int page(Context ctx) {
    String text = Asking.text(ctx, "page");
    return text.matches("[1-9]\\d{0,4}") ? Integer.parseInt(text) : 1;
  }

  private static String summary(List<PatchEntry> entries, String burned) {
    long boards = patches(entries).stream().map(patch -> patch.board().id()).distinct().count();
    return "%s on %s, %s"
        .formatted(Figures.patches(entries.size()), Figures.boards(boards), burned);
  }

  private static List<Patch> patches(List<PatchEntry> entries) {
    return entries.stream().map(PatchEntry::patch).toList();
  }

  private static List<Active> active(String question, AskFilter filter) {
    List<Active> active = new ArrayList<>();
    filter
        .values()
        .forEach(
            (name, values) ->
                values.forEach(
                    value ->
                        active.add(
                            new Active(
                                name + ": " + value,
                                same(question, filter.without(name, value))))));
    return active;
  }

  private Empty empty(LogSnapshot shelf, String question, AskFilter filter, Context ctx) {
    List<PatchEntry> all = shelf.entries();
    if (all.isEmpty()) {
      return new Empty("The log has no patch yet.", List.of());
    }
    List<Active> offers = new ArrayList<>();
    filter
        .values()
        .forEach(
            (name, values) ->
                values.forEach(
                    value ->
                        offer(shelf, question, filter.without(name, value), value, offers, ctx)));
    if (!question.isEmpty() && !filter.values().isEmpty()) {
      offer(shelf, "", filter, "the words", offers, ctx);
    }
    return new Empty("The log has " + summary(all, DaysText.burned(patches(all))) + ".", offers);
  }

  private void offer(
      LogSnapshot shelf,
      String question,
      AskFilter filter,
      String without,
      List<Active> offers,
      Context ctx) {
    try {
      int found = shelf.patches(log, asked(question, filter, ctx)).size();
      if (found > 0) {
        offers.add(
            new Active(
                "without %s: %s".formatted(without, Figures.patches(found)),
                same(question, filter)));
      }
    } catch (Refusal e) {
      return; // what is left is not understood either
    }
  }

  private static List<Choice> choices(LogSnapshot shelf, AskFilter filter) {
    return Stream.of(
            choice(
                filter, "family", "Coating", shelf.strata().keySet().stream().map(Stratum::family)),
            choice(filter, "wood", "Wood", shelf.strata().keySet().stream().map(Stratum::wood)),
            choice(filter, "rig", "Rig", shelf.rigs().stream().map(r -> r.name())),
            choice(filter, "board", "Board", shelf.boards().stream().map(Board::name)),
            choice(filter, "finish", "Finish", shelf.finishes().stream().map(f -> f.name())),
            choice(filter, "job", "Job", shelf.boards().stream().flatMap(b -> b.job().stream())),
            choice(
                filter,
                "by",
                "Burned or judged by",
                shelf.trials().patches().stream()
                    .flatMap(p -> p.readings().stream())
                    .flatMap(r -> r.by().stream())))
        .filter(c -> !c.options().isEmpty())
        .toList();
  }

  private static Choice choice(
      AskFilter filter, String name, String label, Stream<String> options) {
    return new Choice(name, label, options.distinct().sorted().toList(), first(filter, name));
  }

  /** Words that a question may hold, for the template. */
  public static List<Mark> marks() {
    return Arrays.asList(Mark.values());
  }
}
