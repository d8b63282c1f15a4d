package charline.web.pages;

import charline.exposure.Emission;
import charline.exposure.SpotDefinition;
import charline.log.Change;
import charline.log.Joins;
import charline.log.Logbook;
import charline.quantity.Figures;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Coat;
import charline.trial.FamilyFacts;
import charline.trial.Finish;
import charline.trial.Knob;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import charline.trial.Tone;
import charline.trial.Upkeep;
import charline.trial.WoodFacts;
import charline.trial.WoodForm;
import charline.web.entry.DialledKnobs;
import charline.web.entry.PutRightForms;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** The page where a rig, a power check, a board or a finish is put right, with its history. */
public final class PutRightPages {
  private static final int COATS = 6;

  private final Logbook log;
  private final PutRightForms forms;
  private final String person;
  private final Pages pages;

  PutRightPages(Logbook log, String person, Pages pages) {
    this.log = log;
    this.person = person;
    this.pages = pages;
    forms = new PutRightForms(log);
  }

  /**
   * One value of the form.
   *
   * @param value what it shows at first
   * @param number true if it takes a number
   * @param required true if it must not be blank
   * @param options what may be chosen; empty for a value that is typed
   */
  public record Field(
      String name,
      String label,
      String value,
      boolean number,
      boolean required,
      List<String> options) {}

  /**
   * The page's content.
   *
   * @param kind rig, check, upkeep, board or finish
   * @param of name of it, or identity of the check or upkeep
   * @param rig the rig of a check or upkeep, else blank
   * @param title what it is
   * @param voided why it is void, if it is
   * @param others what it can be joined into, by name
   * @param form which form was refused: amend, void, bring-back, join; blank for none
   * @param trouble why
   * @param doubtful true if the person may say that they are sure
   */
  public record PutRightView(
      String kind,
      String of,
      String rig,
      String title,
      List<Field> fields,
      Optional<String> voided,
      List<String> others,
      List<Change> history,
      String form,
      String trouble,
      boolean doubtful) {
    /** Whether it can be void at all. */
    public boolean voidable() {
      return kind.equals("check") || kind.equals("board") || kind.equals("upkeep");
    }

    /** Whether that form was refused. */
    public boolean refused(String name) {
      return form.equals(name);
    }
  }

  /** What is done with a form. */
  private interface Work {
    void accept(String kind, Context ctx, String by);
  }

  void add(RoutesConfig routes) {
    routes.get("/put-right/{kind}", ctx -> show(ctx, "", "", false));
    routes.post("/put-right/{kind}", ctx -> take(ctx, "amend", this::amend));
    routes.post(
        "/put-right/{kind}/void",
        ctx -> take(ctx, "void", (kind, c, by) -> forms.takeOut(kind, c::formParam, by)));
    routes.post(
        "/put-right/{kind}/bring-back",
        ctx -> take(ctx, "bring-back", (kind, c, by) -> forms.bringBack(kind, c::formParam, by)));
    routes.post(
        "/put-right/{kind}/join",
        ctx -> take(ctx, "join", (kind, c, by) -> forms.join(joined(kind), c::formParam, by)));
  }

  private static Joins.Kind joined(String kind) {
    return Arrays.stream(Joins.Kind.values())
        .filter(k -> k.word().equals(kind))
        .findFirst()
        .orElseThrow(PutRightPages::unknown);
  }

  private static Refusal unknown() {
    return Refusal.usage("A rig, a power check, upkeep, a board or a finish can be put right.");
  }

  private void amend(String kind, Context ctx, String by) {
    switch (kind) {
      case "rig" -> forms.rig(ctx::formParam, by);
      case "check" -> forms.check(ctx::formParam, by);
      case "upkeep" -> forms.upkeep(ctx::formParam, by);
      case "board" -> forms.board(ctx::formParam, by);
      case "finish" -> forms.finish(ctx::formParam, by);
      default -> throw unknown();
    }
  }

  private void take(Context ctx, String form, Work work) {
    String kind = ctx.pathParam("kind");
    new SentForm(ctx, person)
        .take(
            by -> work.accept(kind, ctx, by),
            (trouble, doubtful) -> show(ctx, form, trouble, doubtful),
            () -> "/set-up#" + SetUpPages.PLACES.getOrDefault(kind, "rigs"));
  }

  private void show(Context ctx, String form, String trouble, boolean doubtful) {
    Map<String, String> given = form.equals("amend") ? SentForm.given(ctx) : Map.of();
    PutRightView plain = view(ctx.pathParam("kind"), param(ctx, "of"), param(ctx, "rig"));
    PutRightView view =
        new PutRightView(
            plain.kind(),
            plain.of(),
            plain.rig(),
            plain.title(),
            plain.fields().stream()
                .map(
                    f ->
                        new Field(
                            f.name(),
                            f.label(),
                            given.getOrDefault(f.name(), f.value()),
                            f.number(),
                            f.required(),
                            f.options()))
                .toList(),
            plain.voided(),
            plain.others(),
            plain.history(),
            form,
            trouble,
            doubtful);
    pages.send(
        ctx,
        "put-right",
        pages.frame(ctx, "Put right", "/set-up", "work.css", "refusal.js"),
        Map.of("view", view));
  }

  private static String param(Context ctx, String name) {
    String typed = ctx.formParam(name);
    String asked = typed == null ? ctx.queryParam(name) : typed;
    return asked == null ? "" : asked;
  }

  private PutRightView view(String kind, String of, String rigName) {
    return switch (kind) {
      case "rig" -> rig(log.rig(of));
      case "check" -> check(log.rig(rigName), of);
      case "upkeep" -> upkeep(log.rig(rigName), of);
      case "board" -> board(log.board(of));
      case "finish" -> finish(log.finish(of));
      default -> throw unknown();
    };
  }

  private PutRightView rig(Rig rig) {
    List<Field> fields = new ArrayList<>();
    fields.add(text("name", "Name", rig.name(), true));
    fields.add(number("rated", "Rated power at 100 %, W", OptionalDouble.of(rig.ratedWatts())));
    fields.add(
        number("wavelength", "Wavelength, nm", OptionalDouble.of(rig.wavelengthNanometres())));
    fields.add(number("spot", "Usual spot diameter on the work, mm", rig.spotMillimetres()));
    fields.add(
        choice(
            "spot_means",
            "The maker measures the spot as",
            rig.spotDefinition().word(),
            Arrays.stream(SpotDefinition.values()).map(SpotDefinition::word).toList()));
    if (rig.emission() == Emission.PULSED) {
      fields.add(number("rep", "Usual repetition rate, kHz", rig.repetitionKilohertz()));
      fields.add(number("pulse", "Usual pulse duration, ns", rig.pulseNanoseconds()));
      fields.add(number("max_pulse", "Largest pulse energy, mJ", rig.largestPulseMillijoules()));
    }
    fields.add(number("width", "Usual scan width, mm", rig.scanWidthMillimetres()));
    fields.add(text("lens", "Lens", rig.lens().orElse(""), false));
    Map<Knob, String> usual = DialledKnobs.words(rig.usual());
    for (Knob knob : Knob.USUAL_OF_RIG) {
      fields.add(usual(knob, usual.getOrDefault(knob, "")));
    }
    fields.add(
        number(
            Knob.FOCUS_SPOT.key(),
            "Spot diameter at focus, mm",
            rig.optics().focusSpotMillimetres()));
    fields.add(number(Knob.BEAM_QUALITY.key(), "Beam quality M²", rig.optics().beamQuality()));
    return plain(
        "rig",
        rig.name(),
        "",
        "Rig " + rig.name(),
        fields,
        Optional.empty(),
        log.rigs().stream().map(Rig::name).toList(),
        log.history(rig));
  }

  private static Field usual(Knob knob, String value) {
    if (knob.isYesOrNo()) {
      return choice(
          knob.key(),
          knob.words(),
          value,
          Stream.concat(Stream.of(""), knob.answers().stream()).toList());
    }
    String unit = knob.isNumber() ? ", " + knob.unit() : "";
    // A defocus may be below 0, which a pad of digits cannot type.
    boolean digits = knob.isNumber() && knob != Knob.DEFOCUS;
    return new Field(knob.key(), "Usual " + knob.noun() + unit, value, digits, false, List.of());
  }

  private PutRightView upkeep(Rig rig, String id) {
    Upkeep upkeep = forms.upkeep(rig, id);
    return plain(
        "upkeep",
        id,
        rig.name(),
        "Upkeep of rig %s on %s".formatted(rig.name(), upkeep.at().toLocalDate()),
        List.of(
            text("what", "What was done", upkeep.work(), true),
            number("hours", "Hours that the source had run", upkeep.hours()),
            text("note", "Note", upkeep.note().orElse(""), false)),
        log.rigEntries().voidUpkeep(rig).stream()
            .filter(v -> v.upkeep().equals(upkeep))
            .map(v -> v.why())
            .findFirst(),
        List.of(),
        log.history(rig).stream().filter(c -> c.what().startsWith("upkeep.")).toList());
  }

  private PutRightView check(Rig rig, String id) {
    PowerCheck check = forms.check(rig, id);
    List<Field> fields = new ArrayList<>();
    fields.add(number("percent", "Power on the dial, %", OptionalDouble.of(check.percent())));
    fields.add(number("metered", "The meter shows, W", OptionalDouble.of(check.meteredWatts())));
    if (rig.emission() == Emission.PULSED) {
      fields.add(
          number(
              "rep", "Repetition rate, kHz (blank: the usual one)", check.repetitionKilohertz()));
      fields.add(
          number("pulse", "Pulse duration, ns (blank: the usual one)", check.pulseNanoseconds()));
    }
    return plain(
        "check",
        id,
        rig.name(),
        "Power check of rig %s on %s".formatted(rig.name(), check.at().toLocalDate()),
        fields,
        log.rigEntries().voidChecks(rig).stream()
            .filter(v -> v.check().equals(check))
            .map(v -> v.why())
            .findFirst(),
        List.of(),
        log.history(rig).stream().filter(c -> c.what().startsWith("power_check.")).toList());
  }

  private PutRightView board(Board board) {
    return plain(
        "board",
        board.name(),
        "",
        "Board " + board.name(),
        List.of(
            text("name", "Name", board.name(), true),
            choice(
                "wood",
                "Wood",
                board.wood(),
                log.reference().woods().stream().map(WoodFacts::name).toList()),
            choice(
                "form",
                "Form",
                board.form().word(),
                Arrays.stream(WoodForm.values()).map(WoodForm::word).toList()),
            number("moisture", "Moisture, % (if metered)", board.moisturePercent()),
            text("condition", "Condition, in your words", board.condition().orElse(""), false),
            text("job", "Job it belongs to", board.job().orElse(""), false)),
        log.voided(board),
        log.boards().stream().map(Board::name).toList(),
        log.history(board));
  }

  private PutRightView finish(Finish finish) {
    List<String> families = log.reference().families().stream().map(FamilyFacts::name).toList();
    List<String> orNone = Stream.concat(Stream.of(""), families.stream()).toList();
    List<String> tones =
        Stream.concat(Stream.of(""), Arrays.stream(Tone.values()).map(Tone::word)).toList();
    List<Field> fields = new ArrayList<>();
    fields.add(text("name", "Name", finish.name(), true));
    fields.add(choice("family", "Counted as", finish.family(), families));
    for (int i = 1; i <= COATS; i++) {
      Optional<Coat> coat =
          i <= finish.coats().size() ? Optional.of(finish.coats().get(i - 1)) : Optional.empty();
      String which = i == 1 ? "Outermost coat" : "Coat " + i;
      fields.add(choice("coat" + i, which, coat.map(Coat::family).orElse(""), orNone));
      fields.add(
          choice(
              "tone" + i,
              which + ", tone",
              coat.flatMap(Coat::tone).map(Tone::word).orElse(""),
              tones));
      fields.add(
          new Field(
              "thickness" + i,
              which + ", thickness in µm",
              coat.map(c -> shown(c.thicknessMicrometres())).orElse(""),
              true,
              false,
              List.of()));
    }
    return plain(
        "finish",
        finish.name(),
        "",
        "Finish " + finish.name(),
        fields,
        Optional.empty(),
        log.finishes().stream().map(Finish::name).toList(),
        log.history(finish));
  }

  private static PutRightView plain(
      String kind,
      String of,
      String rig,
      String title,
      List<Field> fields,
      Optional<String> voided,
      List<String> all,
      List<Change> history) {
    List<String> others = all.stream().filter(name -> !name.equals(of)).toList();
    return new PutRightView(kind, of, rig, title, fields, voided, others, history, "", "", false);
  }

  private static Field text(String name, String label, String value, boolean required) {
    return new Field(name, label, value, false, required, List.of());
  }

  private static Field number(String name, String label, OptionalDouble value) {
    boolean required = List.of("rated", "wavelength", "percent", "metered").contains(name);
    return new Field(name, label, shown(value), true, required, List.of());
  }

  private static Field choice(String name, String label, String value, List<String> options) {
    return new Field(name, label, value, false, false, options);
  }

  private static String shown(OptionalDouble value) {
    return value.isPresent() ? Figures.plain(value.getAsDouble()) : "";
  }
}
