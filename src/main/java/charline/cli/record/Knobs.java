package charline.cli.record;

import charline.cli.desk.Desk;
import charline.cli.desk.Typed;
import charline.exposure.DoseForm;
import charline.exposure.Emission;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.TimedArea;
import charline.log.PatchEntry;
import charline.quantity.Measure.Quantity;
import charline.refusal.Refusal;
import charline.trial.Patch;
import charline.trial.Rig;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.Option;

/** What was dialled in, as options. */
final class Knobs {
  private static final String FORMS =
      "--hand with --width, --scan with --spacing, or --area with --seconds";

  @Option(
      names = "--power",
      paramLabel = "POWER",
      description = "60%% of the rated power, or 120W on the work. Without a unit: %%.")
  private String power;

  @Option(names = "--hand", paramLabel = "SPEED", description = "Hand speed, in mm/s.")
  private String hand;

  @Option(
      names = "--width",
      paramLabel = "WIDTH",
      description = "Scan width of a hand-held pass, in mm. Default: the rig's usual one.")
  private String width;

  @Option(
      names = "--scan",
      paramLabel = "SPEED",
      description = "Spot speed of a scanner, in mm/s; goes with --spacing.")
  private String scan;

  @Option(names = "--spacing", paramLabel = "LENGTH", description = "Line spacing, in mm.")
  private String spacing;

  @Option(
      names = "--area",
      paramLabel = "AREA",
      description = "Marked area gone over once, in cm2; goes with --seconds.")
  private String area;

  @Option(names = "--seconds", paramLabel = "TIME", description = "Time for one pass, in s.")
  private String seconds;

  @Option(
      names = "--rep",
      paramLabel = "RATE",
      description = "Repetition rate, in kHz. Default: the rig's usual one.")
  private String rep;

  @Option(
      names = "--pulse",
      paramLabel = "TIME",
      description = "Pulse duration, in ns. Default: the rig's usual one.")
  private String pulse;

  @Option(
      names = "--spot",
      paramLabel = "DIAMETER",
      description = "Spot diameter on the work, in mm. Default: the rig's usual one.")
  private String spot;

  /** Refuses two ways of giving the dose at once. */
  void check() {
    List<String> given = new ArrayList<>();
    first(hand, "--hand", width, "--width").ifPresent(given::add);
    first(scan, "--scan", spacing, "--spacing").ifPresent(given::add);
    first(area, "--area", seconds, "--seconds").ifPresent(given::add);
    if (given.size() > 1) {
      throw Refusal.usage(
          "The dose must be given in one form: %s; %s are of different forms."
              .formatted(FORMS, String.join(" and ", given)));
    }
  }

  private static Optional<String> first(String a, String nameOfA, String b, String nameOfB) {
    return a != null ? Optional.of(nameOfA) : b != null ? Optional.of(nameOfB) : Optional.empty();
  }

  /**
   * Asks for power and speed where the command line leaves them open.
   *
   * @param last the patch whose values are offered
   */
  void ask(Desk desk, Rig rig, Optional<PatchEntry> last) {
    askPower(desk, last);
    if (hand == null
        && width == null
        && scan == null
        && spacing == null
        && area == null
        && seconds == null) {
      if (!desk.someoneToAsk()) {
        throw Refusal.usage(
            "The speed is missing: give " + FORMS + ", or copy a patch with --like last.");
      }
      askForm(desk, rig, last);
    }
  }

  /** Asks for the power where the command line leaves it open. */
  void askPower(Desk desk, Optional<PatchEntry> last) {
    power =
        desk.need(
            power,
            "The power is missing: give --power 60% or --power 120W.",
            "Power, in % of the rated power or in W",
            typed(last, "power"),
            text -> Typed.power(text).value());
  }

  private void askForm(Desk desk, Rig rig, Optional<PatchEntry> last) {
    Optional<DoseForm> lastForm = last.map(p -> p.patch().settings().form());
    if (lastForm.filter(LineScan.class::isInstance).isPresent()) {
      scan = asked(desk, "--scan", "Spot speed, in mm/s", Quantity.SPEED, typed(last, "scan"));
      spacing =
          asked(desk, "--spacing", "Line spacing, in mm", Quantity.LENGTH, typed(last, "spacing"));
    } else if (lastForm.filter(TimedArea.class::isInstance).isPresent()) {
      area = asked(desk, "--area", "Marked area, in cm2", Quantity.AREA, typed(last, "area"));
      seconds =
          asked(desk, "--seconds", "Time per pass, in s", Quantity.TIME, typed(last, "seconds"));
    } else {
      hand = asked(desk, "--hand", "Hand speed, in mm/s", Quantity.SPEED, typed(last, "hand"));
      if (rig.scanWidthMillimetres().isEmpty()) {
        width = asked(desk, "--width", "Scan width, in mm", Quantity.LENGTH, typed(last, "width"));
      }
    }
  }

  /** Asks for the scan width where that of the copied patch belongs to another rig. */
  void askWidth(Desk desk, Rig rig, PatchEntry copied) {
    boolean open = !given(hand, width) && !given(scan, spacing) && !given(area, seconds);
    boolean byHand = hand != null || open && copied.patch().settings().form() instanceof HandPass;
    boolean known =
        width != null
            || rig.scanWidthMillimetres().isPresent()
            || new Source(rig, Optional.of(copied), Map.of()).stays("width");
    if (desk.someoneToAsk() && byHand && !known) {
      width = asked(desk, "--width", "Scan width, in mm", Quantity.LENGTH, Optional.empty());
    }
  }

  private static String asked(
      Desk desk, String option, String question, Quantity quantity, Optional<String> offered) {
    return desk.need(
        null, option + " is missing.", question, offered, t -> Typed.measure(option, t, quantity));
  }

  private static Optional<String> typed(Optional<PatchEntry> last, String knob) {
    return last.map(entry -> entry.typed().get(knob));
  }

  /**
   * The settings, each from the command line, else from a patch, else from the rig.
   *
   * @param rig the rig they are dialled in on
   * @param base patch that stands in for what is not given
   * @param typed gets what was typed, by knob
   */
  Settings settings(Rig rig, Optional<PatchEntry> base, Map<String, String> typed) {
    check();
    Source source = new Source(rig, base, typed);
    return new Settings(power(source), form(source), spot(source), pulses(source));
  }

  private PowerSetting power(Source source) {
    if (power != null) {
      source.typed.put("power", power.strip());
      return Typed.power(power);
    }
    source.copyTyped("power");
    return source.settings().orElseThrow(() -> missing("--power")).power();
  }

  private DoseForm form(Source source) {
    Optional<DoseForm> known = source.settings().map(Settings::form);
    Optional<HandPass> byHand = only(known, HandPass.class);
    Optional<LineScan> byScan = only(known, LineScan.class);
    Optional<TimedArea> byTime = only(known, TimedArea.class);
    boolean open = !given(hand, width) && !given(scan, spacing) && !given(area, seconds);
    if (given(hand, width) || open && byHand.isPresent()) {
      return new HandPass(
          source.ofHead(
              "width",
              "scan width",
              width,
              Quantity.LENGTH,
              number(byHand.map(HandPass::scanWidthMillimetres)),
              source.rig.scanWidthMillimetres()),
          source.value(
              "hand",
              hand,
              Quantity.SPEED,
              number(byHand.map(HandPass::handSpeedMillimetresPerSecond)),
              OptionalDouble.empty()));
    }
    if (given(scan, spacing) || open && byScan.isPresent()) {
      return new LineScan(
          source.value(
              "scan",
              scan,
              Quantity.SPEED,
              number(byScan.map(LineScan::spotSpeedMillimetresPerSecond)),
              OptionalDouble.empty()),
          source.value(
              "spacing",
              spacing,
              Quantity.LENGTH,
              number(byScan.map(LineScan::lineSpacingMillimetres)),
              OptionalDouble.empty()));
    }
    if (given(area, seconds) || open && byTime.isPresent()) {
      return new TimedArea(
          source.value(
              "area",
              area,
              Quantity.AREA,
              number(byTime.map(TimedArea::areaSquareCentimetres)),
              OptionalDouble.empty()),
          source.value(
              "seconds",
              seconds,
              Quantity.TIME,
              number(byTime.map(TimedArea::secondsPerPass)),
              OptionalDouble.empty()));
    }
    throw missing("--hand");
  }

  private Spot spot(Source source) {
    Optional<Spot> known = source.settings().map(Settings::spot);
    Rig rig = source.rig;
    if (spot == null && known.isPresent() && source.stays("spot")) {
      source.copyTyped("spot");
      return known.get();
    }
    return new Spot(
        source.ofHead(
            "spot",
            "spot",
            spot,
            Quantity.LENGTH,
            number(known.map(Spot::diameterMillimetres)),
            rig.spotMillimetres()),
        rig.spotDefinition());
  }

  private Optional<Pulses> pulses(Source source) {
    Rig rig = source.rig;
    if (rig.emission() == Emission.CONTINUOUS) {
      if (rep != null || pulse != null) {
        throw Refusal.usage(
            "Rig %s is cw and has no pulses, so --rep and --pulse do not go with it."
                .formatted(rig.name()));
      }
      return Optional.empty();
    }
    Optional<Pulses> known = source.settings().flatMap(Settings::pulses);
    OptionalDouble knownRate = number(known.map(Pulses::repetitionKilohertz));
    OptionalDouble knownPulse =
        known
            .filter(p -> source.stays("pulse"))
            .map(Pulses::durationNanoseconds)
            .orElse(OptionalDouble.empty());
    double rate =
        source.ofHead(
            "rep", "repetition rate", rep, Quantity.RATE, knownRate, rig.repetitionKilohertz());
    boolean durationKnown =
        pulse != null || knownPulse.isPresent() || rig.pulseNanoseconds().isPresent();
    return Optional.of(
        new Pulses(
            rate,
            durationKnown
                ? OptionalDouble.of(
                    source.value(
                        "pulse",
                        pulse,
                        Quantity.PULSE_DURATION,
                        knownPulse,
                        rig.pulseNanoseconds()))
                : OptionalDouble.empty()));
  }

  private static boolean given(String a, String b) {
    return a != null || b != null;
  }

  private static <T extends DoseForm> Optional<T> only(Optional<DoseForm> form, Class<T> kind) {
    return form.filter(kind::isInstance).map(kind::cast);
  }

  private static OptionalDouble number(Optional<Double> value) {
    return value.map(OptionalDouble::of).orElse(OptionalDouble.empty());
  }

  private static Refusal missing(String option) {
    return Refusal.usage(
        "%s is missing, and neither the rig nor a copied patch has a value for it."
            .formatted(option));
  }

  /** Where a value comes from that the command line leaves open. */
  private record Source(Rig rig, Optional<PatchEntry> base, Map<String, String> typed) {
    Optional<Settings> settings() {
      return base.map(entry -> entry.patch().settings());
    }

    /** Whether a copied value that belongs to the head may stand on this rig. */
    boolean stays(String knob) {
      return base.filter(
              entry -> entry.typed().containsKey(knob) || entry.patch().rig().id().equals(rig.id()))
          .isPresent();
    }

    void copyTyped(String knob) {
      base.map(entry -> entry.typed().get(knob)).ifPresent(text -> typed.put(knob, text));
    }

    /**
     * A value that belongs to the head. Another rig has another head: its own usual value counts,
     * unless the person typed the copied one.
     */
    double ofHead(
        String knob,
        String words,
        String given,
        Quantity quantity,
        OptionalDouble copied,
        OptionalDouble usual) {
      if (stays(knob)) {
        return value(knob, given, quantity, copied, usual);
      }
      if (given == null && copied.isPresent() && usual.isEmpty()) {
        Patch other = base.orElseThrow().patch();
        throw Refusal.usage(
            "The %s is missing: that of %s belongs to rig %s, and rig %s has no usual one; give --%s."
                .formatted(words, other.code(), other.rig().name(), rig.name(), knob));
      }
      return value(knob, given, quantity, OptionalDouble.empty(), usual);
    }

    double value(
        String knob, String given, Quantity quantity, OptionalDouble copied, OptionalDouble usual) {
      if (given != null) {
        typed.put(knob, given.strip());
        return Typed.measure("--" + knob, given, quantity);
      }
      if (copied.isPresent()) {
        copyTyped(knob);
        return copied.getAsDouble();
      }
      return usual.orElseThrow(() -> missing("--" + knob));
    }
  }
}
