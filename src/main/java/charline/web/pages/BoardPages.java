package charline.web.pages;

import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.quantity.Figures;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Patch;
import charline.trial.Stratum;
import charline.web.live.LiveModels;
import charline.web.live.LogSnapshot;
import charline.web.security.HttpRefusal;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;

/** The pages of boards, each with its patches in order, and of the patches burned last. */
public final class BoardPages {
  private static final int OF_A_PAGE = 60;
  private static final int RECENT = 60;

  private final Logbook log;
  private final LiveModels models;
  private final Pages pages;

  BoardPages(Logbook log, LiveModels models, Pages pages) {
    this.log = log;
    this.models = models;
    this.pages = pages;
  }

  void add(RoutesConfig routes) {
    routes.get("/boards", this::boards);
    routes.get("/board", this::board);
    routes.get("/recent", this::recent);
  }

  /**
   * Boards that were looked for.
   *
   * @param asked part of a name, a wood or a job
   * @param page the page shown, from 1
   * @param pages how many there are
   */
  public record BoardsView(String asked, List<Row> rows, int found, int page, int pages) {}

  /** One board with how many patches it carries. */
  public record Row(String name, String link, String what, String patches, String last) {}

  /**
   * One board.
   *
   * @param voided why it is void, if it is
   * @param strata what its patches are about, each with the window for the piece
   */
  public record BoardView(
      Board board,
      Optional<String> voided,
      List<PatchRows.Row> patches,
      String summary,
      List<Piece> strata) {}

  /** Trials of which a board carries patches. */
  public record Piece(String words, String query, int patches) {}

  /** The patches of one day. */
  public record Day(String day, List<PatchRows.Row> rows) {}

  private void boards(Context ctx) {
    LogSnapshot shelf = models.shelf();
    String asked = Asking.text(ctx, "q");
    String[] parts = asked.toLowerCase(Locale.ROOT).split("\\s+");
    Map<UUID, List<Patch>> burned =
        shelf.trials().patches().stream().collect(Collectors.groupingBy(p -> p.board().id()));
    List<Row> found =
        shelf.boards().stream()
            .filter(b -> Arrays.stream(parts).allMatch(part -> words(b).contains(part)))
            .map(b -> row(b, burned.getOrDefault(b.id(), List.of())))
            .toList();
    int pagesInAll = Math.max(1, (found.size() + OF_A_PAGE - 1) / OF_A_PAGE);
    String text = Asking.text(ctx, "page");
    int page = Math.min(pagesInAll, text.matches("[1-9]\\d{0,4}") ? Integer.parseInt(text) : 1);
    pages.send(
        ctx,
        "boards",
        pages.frame(ctx, "Boards", "", "work.css"),
        Map.of(
            "view",
            new BoardsView(
                asked,
                found.stream().skip((long) (page - 1) * OF_A_PAGE).limit(OF_A_PAGE).toList(),
                found.size(),
                page,
                pagesInAll)));
  }

  private static String words(Board board) {
    return (board.name() + " " + board.wood() + " " + board.job().orElse(""))
        .toLowerCase(Locale.ROOT);
  }

  private static Row row(Board board, List<Patch> patches) {
    return new Row(
        board.name(),
        "/board?of=" + Links.escaped(board.name()),
        board.wood() + board.job().map(job -> ", " + job).orElse(""),
        Figures.patches(patches.size()),
        patches.stream()
            .map(p -> p.burnedAt().toLocalDate())
            .max(LocalDate::compareTo)
            .map(day -> "last " + day)
            .orElse(""));
  }

  private void board(Context ctx) {
    Board board;
    try {
      board = log.board(Asking.text(ctx, "of"));
    } catch (Refusal e) {
      throw HttpRefusal.notThere(e.getMessage());
    }
    List<PatchEntry> burned = log.patches(Filter.onBoard(board.name()));
    Map<Stratum, Integer> strata = new LinkedHashMap<>();
    burned.forEach(e -> strata.merge(Stratum.of(e.patch()), 1, Integer::sum));
    pages.send(
        ctx,
        "board",
        pages.frame(ctx, "Board " + board.name(), "", "work.css"),
        Map.of(
            "view",
            new BoardView(
                board,
                log.voided(board),
                burned.stream().map(PatchRows.Row::of).toList(),
                Figures.patches(burned.size()) + ", in the order they were burned",
                strata.entrySet().stream()
                    .map(
                        e ->
                            new Piece(
                                e.getKey().words(),
                                Links.of(e.getKey()) + "&piece=" + Links.escaped(board.name()),
                                e.getValue()))
                    .toList()),
            "history",
            log.history(board)));
  }

  private void recent(Context ctx) {
    List<Patch> all =
        models.shelf().trials().patches().stream()
            .sorted(Comparator.comparing((Patch p) -> p.burnedAt().toInstant()).reversed())
            .toList();
    Map<String, List<PatchRows.Row>> days = new LinkedHashMap<>();
    all.stream()
        .limit(RECENT)
        .forEach(
            patch ->
                days.computeIfAbsent(
                        patch.burnedAt().toLocalDate().toString(), day -> new ArrayList<>())
                    .add(PatchRows.Row.of(patch)));
    pages.send(
        ctx,
        "recent",
        pages.frame(ctx, "Recent patches", "", "work.css"),
        Map.of(
            "days",
            days.entrySet().stream().map(d -> new Day(d.getKey(), d.getValue())).toList(),
            "more",
            all.size() > RECENT));
  }
}
