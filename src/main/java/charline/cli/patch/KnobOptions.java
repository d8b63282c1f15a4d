package charline.cli.patch;

import charline.cli.command.CommandContext;
import charline.cli.command.OptionDialect;
import charline.cli.command.TypedValues;
import charline.exposure.HandPass;
import charline.exposure.PowerSetting;
import charline.log.PatchEntry;
import charline.refusal.Refusal;
import charline.trial.DoseKnobs;
import charline.trial.Knob;
import charline.trial.KnobReader;
import charline.trial.Rig;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Option;

/** Options for the knobs and the size of the patch. */
final class KnobOptions {
  private static final OptionDialect OPTIONS = OptionDialect.INSTANCE;

  @Option(
      names = "--power",
      paramLabel = "POWER",
      description = "60%% of the rated power, or 120W on the work. Without a unit: %%.")
  private String power;

  private final Map<Knob, String> given = new EnumMap<>(Knob.class);

  @Option(names = "--hand", paramLabel = "SPEED", description = "Hand speed, in mm/s.")
  void hand(String text) {
    give(Knob.HAND, text);
  }

  @Option(
      names = "--width",
      paramLabel = "WIDTH",
      description = "Scan width of a hand-held pass, in mm. Default: the rig's usual one.")
  void width(String text) {
    give(Knob.WIDTH, text);
  }

  @Option(
      names = "--scan",
      paramLabel = "SPEED",
      description = "Spot speed of a scanner, in mm/s; needs --spacing.")
  void scan(String text) {
    give(Knob.SCAN, text);
  }

  @Option(names = "--spacing", paramLabel = "LENGTH", description = "Line spacing, in mm.")
  void spacing(String text) {
    give(Knob.SPACING, text);
  }

  @Option(
      names = "--area",
      paramLabel = "AREA",
      description = "Marked area that one pass covers, in cm2; needs --seconds.")
  void area(String text) {
    give(Knob.AREA, text);
  }

  @Option(names = "--seconds", paramLabel = "TIME", description = "Time for one pass, in s.")
  void seconds(String text) {
    give(Knob.SECONDS, text);
  }

  @Option(
      names = "--rep",
      paramLabel = "RATE",
      description = "Repetition rate, in kHz. Default: the rig's usual one.")
  void rep(String text) {
    give(Knob.RATE, text);
  }

  @Option(
      names = "--pulse",
      paramLabel = "TIME",
      description = "Pulse duration, in ns. Default: the rig's usual one.")
  void pulse(String text) {
    give(Knob.PULSE, text);
  }

  @Option(
      names = "--spot",
      paramLabel = "DIAMETER",
      description = "Spot diameter on the work, in mm. Default: the rig's usual one.")
  void spot(String text) {
    give(Knob.SPOT, text);
  }

  @Option(
      names = "--patch-area",
      paramLabel = "AREA",
      description = "Size of the patch, in cm2; char risk counts per patch-sized area.")
  void size(String text) {
    give(Knob.PATCH_AREA, text);
  }

  @Option(
      names = "--figure",
      paramLabel = "WORD",
      description =
          "Scan figure: line, circle, spiral, ring, zigzag, sine, or with --sure your own word.")
  void figure(String text) {
    give(Knob.FIGURE, text);
  }

  @Option(
      names = "--lines",
      paramLabel = "RATE",
      description = "Lines or turns per second; to and fro are two lines.")
  void lines(String text) {
    give(Knob.LINES, text);
  }

  @Option(
      names = "--standoff",
      paramLabel = "LENGTH",
      description = "Distance from head to work, in mm.")
  void standOff(String text) {
    give(Knob.STAND_OFF, text);
  }

  @Option(
      names = "--defocus",
      paramLabel = "LENGTH",
      description =
          "Distance of the work from focus, in mm. Where the rig's optics are known, the spot"
              + " follows.")
  void defocus(String text) {
    give(Knob.DEFOCUS, text);
  }

  @Option(names = "--rest", paramLabel = "TIME", description = "Rest between two passes, in s.")
  void rest(String text) {
    give(Knob.REST, text);
  }

  @Option(
      names = "--place",
      paramLabel = "WORD",
      description = "Place on the board: face, arris, end grain, moulding or knot.")
  void place(String text) {
    give(Knob.PLACE, text);
  }

  @Option(names = "--part", paramLabel = "WORD", description = "sap or heart.")
  void part(String text) {
    give(Knob.WOOD_PART, text);
  }

  @Option(names = "--wetted", paramLabel = "YES/NO", description = "Whether you wetted the finish.")
  void wetted(String text) {
    give(Knob.WETTED, text);
  }

  @Option(names = "--air", paramLabel = "YES/NO", description = "Whether air was blown at it.")
  void air(String text) {
    give(Knob.AIR, text);
  }

  @Option(
      names = "--extraction",
      paramLabel = "YES/NO",
      description = "Whether the fumes were extracted.")
  void extraction(String text) {
    give(Knob.EXTRACTION, text);
  }

  @Option(
      names = "--temperature",
      paramLabel = "DEGREES",
      description = "Temperature of the wood, in C, or such as 60F.")
  void temperature(String text) {
    give(Knob.TEMPERATURE, text);
  }

  @Option(
      names = "--strokes",
      paramLabel = "TIMES",
      description =
          "Times of single strokes, in s, such as \"4.1 3.9 4.3\": the hand speed follows from"
              + " them.")
  void strokes(String text) {
    give(Knob.STROKES, text);
  }

  @Option(
      names = "--stroke-length",
      paramLabel = "LENGTH",
      description = "Length of a stroke that you timed, in mm.")
  void strokeLength(String text) {
    give(Knob.STROKE, text);
  }

  private void give(Knob knob, String text) {
    if (text != null) { // an option that was not given is set to null first
      given.put(knob, text);
    }
  }

  /** Refuses two ways of giving the dose at once. */
  void check() {
    KnobReader.contradiction(OPTIONS, given)
        .ifPresent(
            problem -> {
              throw Refusal.usage(problem.sentence());
            });
  }

  private boolean nothingOf(DoseKnobs pair) {
    return pair.both().stream().noneMatch(given::containsKey);
  }

  private boolean open() {
    return List.of(DoseKnobs.values()).stream().allMatch(this::nothingOf)
        && !given.containsKey(Knob.STROKES);
  }

  /**
   * Asks for power and speed where the command line leaves them open.
   *
   * @param last the patch whose values are offered
   */
  void ask(CommandContext desk, Rig rig, Optional<PatchEntry> last) {
    askPower(desk, last);
    if (open()) {
      if (!desk.someoneToAsk()) {
        throw Refusal.usage(
            "The speed is missing: give %s, or copy a patch with --like last."
                .formatted(KnobReader.forms(OPTIONS)));
      }
      askForm(desk, rig, last);
    }
  }

  /** Asks for the power where the command line leaves it open. */
  void askPower(CommandContext desk, Optional<PatchEntry> last) {
    power =
        desk.need(
            power,
            "The power is missing: give --power 60% or --power 120W.",
            "Power, in % of the rated power or in W",
            typed(last, Knob.POWER_PCT),
            text -> TypedValues.power(text).value());
  }

  private void askForm(CommandContext desk, Rig rig, Optional<PatchEntry> last) {
    DoseKnobs pair =
        last.map(p -> DoseKnobs.of(p.patch().settings().form())).orElse(DoseKnobs.HAND);
    switch (pair) {
      case SCAN -> pair.both().forEach(knob -> ask(desk, knob, typed(last, knob)));
      case TIMED -> List.of(Knob.AREA, Knob.SECONDS).forEach(k -> ask(desk, k, typed(last, k)));
      case HAND -> {
        ask(desk, Knob.HAND, typed(last, Knob.HAND));
        if (rig.scanWidthMillimetres().isEmpty()) {
          ask(desk, Knob.WIDTH, typed(last, Knob.WIDTH));
        }
      }
    }
  }

  /** Asks for the scan width where that of the copied patch belongs to another rig. */
  void askWidth(CommandContext desk, Rig rig, PatchEntry copied) {
    boolean byHand =
        given.containsKey(Knob.HAND)
            || open() && copied.patch().settings().form() instanceof HandPass;
    boolean known =
        given.containsKey(Knob.WIDTH)
            || rig.scanWidthMillimetres().isPresent()
            || KnobReader.stays(copied(copied), Knob.WIDTH, rig);
    if (desk.someoneToAsk() && byHand && !known) {
      ask(desk, Knob.WIDTH, Optional.empty());
    }
  }

  private void ask(CommandContext desk, Knob knob, Optional<String> offered) {
    given.put(
        knob,
        desk.need(
            null,
            OPTIONS.name(knob) + " is missing.",
            "%s, in %s".formatted(knob.words(), knob.unit()),
            offered,
            text -> OPTIONS.number(knob, text)));
  }

  private static Optional<String> typed(Optional<PatchEntry> last, Knob knob) {
    return last.map(entry -> entry.typed().get(knob.key()));
  }

  private static KnobReader.Copied copied(PatchEntry entry) {
    return new KnobReader.Copied(entry.patch(), entry.typed(), false);
  }

  /**
   * The settings, each from the command line, else from a patch, else from the rig.
   *
   * @param rig the rig they are dialled in on
   * @param base patch whose values replace those not given
   */
  KnobReader.Result read(Rig rig, Optional<PatchEntry> base) {
    return readFrom(rig, base.map(KnobOptions::copied));
  }

  /** The settings of a patch that is put right: what was measured on it stays. */
  KnobReader.Result amend(Rig rig, PatchEntry old) {
    return readFrom(rig, Optional.of(new KnobReader.Copied(old.patch(), old.typed(), true)));
  }

  private KnobReader.Result readFrom(Rig rig, Optional<KnobReader.Copied> base) {
    check();
    Map<Knob, String> all = new EnumMap<>(Knob.class);
    all.putAll(given);
    if (power != null) {
      boolean percent = TypedValues.power(power).unit() == PowerSetting.Unit.PERCENT;
      all.put(percent ? Knob.POWER_PCT : Knob.POWER_W, power);
    }
    KnobReader.Result read = KnobReader.read(OPTIONS, all, rig, base);
    read.orRefuse();
    return read;
  }
}
