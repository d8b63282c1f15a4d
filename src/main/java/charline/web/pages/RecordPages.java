package charline.web.pages;

import charline.answer.Dialled;
import charline.answer.Precautions;
import charline.answer.TrialQuestion;
import charline.exposure.Settings;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.PlannedPatch;
import charline.model.way.Way;
import charline.record.Plans;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Circumstances;
import charline.trial.Finish;
import charline.trial.KnobReader;
import charline.trial.Patch;
import charline.trial.Place;
import charline.trial.Plausibility;
import charline.trial.Rig;
import charline.trial.Stratum;
import charline.web.entry.DialledKnobs;
import charline.web.live.LiveModels;
import charline.web.live.LogSnapshot;
import charline.window.Requirements;
import charline.window.Strokes;
import charline.wording.NoBeamText;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/** The page where patches are recorded, and what it asks before each is fired. */
record RecordPages(Logbook log, LiveModels models, Clock clock, String person, Pages pages) {
  /** Long enough for a small fit, too short to be felt as waiting. */
  private static final Duration PATIENCE = Duration.ofMillis(150);

  void add(RoutesConfig routes) {
    routes.get("/record", this::record);
    routes.get("/live", this::live);
  }

  private void record(Context ctx) {
    LogSnapshot shelf = models.shelf();
    Optional<String> missing = RecordView.missing(shelf);
    if (missing.isPresent()) {
      Frame frame = pages.frame(ctx, "Record", "/record");
      pages.send(ctx, "record-empty", frame, Map.of("sentence", missing.get()));
      return;
    }
    Optional<PlannedPatch> plan =
        Optional.ofNullable(ctx.queryParam("plan")).map(log.planned()::open);
    Optional<PatchEntry> read = Optional.ofNullable(ctx.queryParam("reading")).map(log::patch);
    Optional<PatchEntry> like =
        plan.map(p -> pattern(shelf, p))
            .or(() -> read)
            .or(() -> Optional.ofNullable(ctx.queryParam("like")).map(log::patch))
            .or(() -> log.lastPatch(Pages.recorder(ctx, person)));
    Frame frame = pages.frame(ctx, "Record", "/record", "live.css", "record.css", "record.js");
    pages.send(
        ctx,
        "record",
        frame,
        Map.of(
            "view",
            RecordView.of(
                shelf,
                like,
                read,
                plan,
                ctx,
                Pages.recorder(ctx, person),
                Precautions.ofEach(log, shelf.finishes()),
                log.figures())));
  }

  /** A plan to copy from: on its board, else on one of its wood that was not burned yet. */
  private PatchEntry pattern(LogSnapshot shelf, PlannedPatch plan) {
    Set<UUID> burned =
        shelf.trials().patches().stream().map(p -> p.board().id()).collect(Collectors.toSet());
    List<Board> fitting =
        shelf.boards().stream().filter(b -> Stratum.covers(plan.wood(), b.wood())).toList();
    Board board =
        plan.board()
            .or(() -> fitting.stream().filter(b -> !burned.contains(b.id())).findFirst())
            .or(() -> fitting.stream().findFirst())
            .orElseThrow(
                () ->
                    Refusal.usage(
                        "%s is planned on %s, and the log has no board of %s; set one up first."
                            .formatted(plan.code(), plan.place(), plan.wood())));
    Plans plans = new Plans(log);
    Finish finish =
        plans
            .finish(plan)
            .or(() -> plans.finishes(plan).stream().findFirst())
            .orElseThrow(
                () ->
                    Refusal.usage(
                        "%s is planned for %s, and the log has no finish of it; set one up first."
                            .formatted(plan.code(), plan.family())));
    return Plans.asPattern(plan, board, finish);
  }

  private void live(Context ctx) {
    LogSnapshot shelf = models.shelf();
    Rig rig = shelf.rig(named(ctx, "rig")).orElseThrow(() -> gone("rig"));
    Board board = shelf.board(named(ctx, "board")).orElseThrow(() -> gone("board"));
    Finish finish = shelf.finish(named(ctx, "finish")).orElseThrow(() -> gone("finish"));
    Map<String, Object> words = new LinkedHashMap<>();
    Precautions known = Precautions.of(log, finish, board, rig.emission());
    words.put("poison", PoisonLine.of(known));
    if (known.barred()) {
      LiveRiskText.say(
          words,
          "stop",
          "No beam on this finish yet",
          NoBeamText.nextStep(known.bars(), PoisonLine.RECORD_SAMPLE));
      Pages.json(ctx, words);
      return;
    }
    try {
      DialledKnobs dial = DialledKnobs.read(ctx::queryParam);
      int passes = passes(ctx);
      KnobReader.Result dialled = dial.on(rig);
      Settings settings = dialled.orRefuse();
      Stratum stratum =
          new Stratum(
              finish.family(),
              board.wood(),
              rig.emission(),
              (int) Math.round(rig.wavelengthNanometres()));
      Way way = way(rig, dialled.circumstances());
      List<Patch> burned = shelf.trials().with(way.placeOrFace()).of(stratum);
      Optional<String> untried = LiveRiskText.untried(stratum, burned, way);
      words.putAll(
          LiveRiskText.of(
              stratum,
              known(shelf, stratum, board, way),
              new Dialled(rig, settings, OffsetDateTime.now(clock), passes, Strokes.SINGLE),
              Requirements.USUAL));
      untried.ifPresent(sentence -> words.put("note", sentence));
      LiveRiskText.doubt(words, dial.doubts());
      LiveRiskText.doubt(words, Plausibility.aboutPower(rig, settings, OffsetDateTime.now(clock)));
      LiveRiskText.doubt(words, Plausibility.about(dialled.circumstances(), settings));
      LiveRiskText.doubt(words, log.usual(rig).doubts(settings, dialled.size()));
    } catch (Refusal e) {
      LiveRiskText.refuse(words, e.getMessage());
    }
    Pages.json(ctx, words);
  }

  /**
   * Models of the board on the bench where it has patches of the stratum, else of any board; those
   * also answer until the first of its own are ready.
   */
  private LiveModels.Known known(LogSnapshot shelf, Stratum stratum, Board board, Way way) {
    boolean burned =
        shelf.trials().with(way.placeOrFace()).of(stratum).stream()
            .anyMatch(p -> p.board().id().equals(board.id()));
    TrialQuestion any = TrialQuestion.about(stratum.family(), stratum.wood()).with(way);
    if (burned) {
      LiveModels.Known known = models.of(stratum, any.forPiece(board.name()), PATIENCE).asking(way);
      if (known.models().isPresent()) {
        return known;
      }
    }
    LiveModels.Known general = models.of(stratum, any, PATIENCE).asking(way);
    return new LiveModels.Known(general.models(), general.renewing() || burned);
  }

  /** How the pass is to be made, as far as it is dialled or usual for the rig. */
  private static Way way(Rig rig, Circumstances dialled) {
    Way asked =
        Way.UNSAID
            .onRig(rig.name())
            .with(dialled.head().figure().or(() -> rig.usual().head().figure()))
            .with(dialled.conditions().place().orElse(Place.FACE));
    return dialled.conditions().wetted().map(asked::wetted).orElse(asked);
  }

  private static String named(Context ctx, String what) {
    String name = ctx.queryParam(what);
    return name == null ? "" : name;
  }

  private static Refusal gone(String what) {
    return Refusal.usage("Choose a " + what + " first.");
  }

  private static int passes(Context ctx) {
    String text = ctx.queryParam("passes");
    if (text == null || !text.matches("[1-9]\\d{0,3}")) {
      throw Refusal.usage("Passes must be a whole number, 1 or more.");
    }
    return Integer.parseInt(text);
  }
}
