package charline.web.pages;

import charline.answer.Precautions;
import charline.exposure.Emission;
import charline.exposure.Figure;
import charline.log.PatchEntry;
import charline.log.PlannedPatch;
import charline.paper.PatchSign;
import charline.plan.Purpose;
import charline.quantity.Figures;
import charline.trial.Board;
import charline.trial.DoseKnobs;
import charline.trial.Finish;
import charline.trial.Knob;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.trial.Rig;
import charline.web.entry.DialledKnobs;
import charline.web.live.LogSnapshot;
import charline.wording.PlanText;
import charline.wording.SettingsText;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * What the Record page shows at first.
 *
 * @param choices rig, board and finish to choose from, with the ones that stand
 * @param dial the knobs as they stand
 * @param passes where the pass counter begins
 * @param reading the patch that a further reading is for, if the page was opened for one
 * @param person who stands in where the device does not know who is at the bench
 * @param plan the plan that the patch fulfils, if the page was opened for one
 * @param fresh the board that the patch is planned on, where it is still to be found
 * @param figures scan figures to choose from
 */
public record RecordView(
    List<Choice> choices,
    DialledKnobs dial,
    int passes,
    Optional<Further> reading,
    String person,
    Optional<Planned> plan,
    Optional<String> fresh,
    List<String> figures) {

  /** One thing to choose, by name. */
  public record Choice(String key, String label, String chosen, List<Option> options) {}

  /** One name with what a device needs to know of it; of a finish, poison and fire in short. */
  public record Option(
      String name,
      String hint,
      String kind,
      String spot,
      String rep,
      String pulse,
      String width,
      Map<Knob, String> made,
      String poison) {
    /** What is usual of a rig in how passes are made, blank if nothing is. */
    public String made(Knob knob) {
      return made.getOrDefault(knob, "");
    }
  }

  /** A patch that takes a further reading; last seen as outcome, a bar and the passes. */
  public record Further(String id, String code, String lastSeen) {}

  /** A planned patch, with what it is for. */
  public record Planned(String code, String words) {
    static Planned of(PlannedPatch plan) {
      return new Planned(
          plan.code(),
          "Plan %s: %s, %s on %s. %s."
              .formatted(
                  plan.code(),
                  PlanText.settings(plan),
                  SettingsText.plannedPasses(plan.passes(), Purpose.ofWord(plan.purpose())),
                  plan.place(),
                  plan.reasonInFull()));
    }
  }

  /** An outcome to tap. */
  public record Tap(PatchSign sign, String hint) {}

  static RecordView of(
      LogSnapshot shelf,
      Optional<PatchEntry> like,
      Optional<PatchEntry> read,
      Optional<PlannedPatch> plan,
      Context ctx,
      String person,
      Map<String, Precautions> known,
      List<String> ownFigures) {
    Optional<Patch> base = like.map(PatchEntry::patch);
    Optional<Rig> named = Optional.ofNullable(ctx.queryParam("rig")).flatMap(shelf::rig);
    Rig rig =
        named
            .or(() -> base.flatMap(p -> shelf.rig(p.rig().name())))
            .orElseGet(() -> shelf.rigs().get(0));
    // What another rig was dialled to says nothing of this one.
    DialledKnobs dial =
        base.filter(p -> p.rig().id().equals(rig.id()))
            .map(DialledKnobs::of)
            .orElseGet(() -> DialledKnobs.of(rig));
    return new RecordView(
        List.of(
            new Choice(
                "board",
                "Board",
                Optional.ofNullable(ctx.queryParam("board"))
                    .flatMap(shelf::board)
                    .map(Board::name)
                    .or(() -> base.map(p -> p.board().name()))
                    .orElse(shelf.boards().get(0).name()),
                shelf.boards().stream().map(b -> plain(b.name(), b.wood())).toList()),
            new Choice(
                "finish",
                "Finish",
                base.map(p -> p.finish().name()).orElse(shelf.finishes().get(0).name()),
                shelf.finishes().stream()
                    .map(f -> finish(f, known.getOrDefault(f.name(), Precautions.NONE)))
                    .toList()),
            new Choice(
                "rig", "Rig", rig.name(), shelf.rigs().stream().map(RecordView::option).toList())),
        turned(dial, ctx),
        read.map(e -> e.patch().lastReading().passes() + 1).or(() -> passes(ctx)).orElse(1),
        read.map(PatchEntry::patch).map(RecordView::further),
        person,
        plan.map(Planned::of),
        Optional.ofNullable(ctx.queryParam("fresh"))
            .or(() -> plan.filter(p -> p.board().isEmpty()).map(PlannedPatch::place))
            .filter(name -> name.matches("new board \\d{1,3}")),
        Stream.concat(Figure.words().stream(), ownFigures.stream()).distinct().toList());
  }

  private static Optional<Integer> passes(Context ctx) {
    return Optional.ofNullable(ctx.queryParam("passes"))
        .filter(text -> text.matches("[1-9]\\d{0,3}"))
        .map(Integer::valueOf);
  }

  /** A link may bring settings along, such as the start of a window. */
  private static DialledKnobs turned(DialledKnobs dial, Context ctx) {
    String power = ctx.queryParam("power");
    String pace = ctx.queryParam("pace");
    if (power == null || pace == null) {
      return dial;
    }
    String form = ctx.queryParam("form");
    return DialledKnobs.read(
        key ->
            switch (key) {
              case "power" -> power;
              case "power_unit" -> "%";
              case "form" -> "scan".equals(form) ? "scan" : "hand";
              case "hand", "scan" ->
                  key.equals("scan".equals(form) ? "scan" : "hand") ? pace : null;
              case "width", "spacing" ->
                  ctx.queryParam("across") != null
                          && key.equals("scan".equals(form) ? "spacing" : "width")
                      ? ctx.queryParam("across")
                      : dial.text(key);
              case "spot", "rep", "pulse" ->
                  Optional.ofNullable(ctx.queryParam(key)).orElseGet(() -> dial.text(key));
              default -> dial.text(key);
            });
  }

  private static Option plain(String name, String hint) {
    return new Option(name, hint, "", "", "", "", "", Map.of(), "");
  }

  /** The page of the finish that stands, with its cautions in full. */
  public String poisonLink() {
    return "/finish?name=" + Links.escaped(choices.get(1).chosen());
  }

  private static Option finish(Finish finish, Precautions known) {
    return new Option(
        finish.name(), finish.family(), "", "", "", "", "", Map.of(), PoisonLine.of(known));
  }

  /** Poison and fire of the finish that stands, blank where there is none. */
  public String poison() {
    Choice finishes = choices.get(1);
    return finishes.options().stream()
        .filter(o -> o.name().equals(finishes.chosen()))
        .map(Option::poison)
        .findFirst()
        .orElse("");
  }

  private static Option option(Rig rig) {
    return new Option(
        rig.name(),
        rig.emission().word(),
        rig.emission().word(),
        text(rig.spotMillimetres()),
        text(rig.repetitionKilohertz()),
        text(rig.pulseNanoseconds()),
        text(rig.scanWidthMillimetres()),
        DialledKnobs.words(rig.usual()),
        "");
  }

  private static String text(OptionalDouble value) {
    return value.isPresent() ? Figures.plain(value.getAsDouble()) : "";
  }

  private static Further further(Patch patch) {
    Reading last = patch.lastReading();
    return new Further(
        patch.id().toString(),
        patch.code(),
        "%s|%d".formatted(last.outcome().text(), last.passes()));
  }

  /** What must be set up before anything can be recorded; empty if all is there. */
  static Optional<String> missing(LogSnapshot shelf) {
    List<String> missing = new ArrayList<>();
    if (shelf.rigs().isEmpty()) {
      missing.add("a rig");
    }
    if (shelf.boards().isEmpty()) {
      missing.add("a board");
    }
    if (shelf.finishes().isEmpty()) {
      missing.add("a finish");
    }
    return missing.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "A patch needs a rig, a board and a finish; set up "
                + String.join(" and ", missing)
                + " first.");
  }

  /** The ways to give the speed. */
  public List<DoseKnobs> forms() {
    return List.of(DoseKnobs.values());
  }

  /** Knobs that mostly stay, below the others. */
  public List<Knob> lesser() {
    return List.of(Knob.SPOT, Knob.RATE, Knob.PULSE, Knob.PATCH_AREA);
  }

  /** How passes are made, beside the settings; all of it may be left out. */
  public List<Knob> made() {
    return Knob.CIRCUMSTANCES;
  }

  /** Knobs of which a rig has a usual value for how passes are made. */
  public List<Knob> usualOfRig() {
    return Knob.USUAL_OF_RIG;
  }

  /** The words to choose from; empty where something is typed. */
  public List<String> answers(Knob knob) {
    return knob == Knob.FIGURE ? figures : knob.answers();
  }

  /** True for knobs that only a pulsed rig has. */
  public boolean pulsedOnly(Knob knob) {
    return knob == Knob.RATE || knob == Knob.PULSE;
  }

  /** True if the rig that stands is pulsed. */
  public boolean pulsed() {
    Choice rigs = choices.get(2);
    return rigs.options().stream()
        .filter(o -> o.name().equals(rigs.chosen()))
        .anyMatch(o -> o.kind().equals(Emission.PULSED.word()));
  }

  /** The outcomes, each with how to tell it. */
  public List<Tap> taps() {
    return List.of(
        new Tap(PatchSign.CLEAN, "bare wood, unharmed"),
        new Tap(PatchSign.TINT, "colour in the grain"),
        new Tap(PatchSign.CHAR, "dark that stays"),
        new Tap(PatchSign.RESIDUE, "finish left"));
  }
}
