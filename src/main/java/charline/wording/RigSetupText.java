package charline.wording;

import static charline.quantity.Figures.plain;

import charline.exposure.Pulses;
import charline.model.Evidence;
import charline.quantity.Figures;
import charline.window.RigSetup;
import charline.window.SpeedKnob;
import charline.window.Strokes;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The bench and the evidence in a line each. */
public final class RigSetupText {
  private RigSetupText() {}

  /** "spot 0.6 mm (1/e2), 40 kHz, 100 ns, width 60 mm". */
  static String fixed(RigSetup bench) {
    return fixed(bench, "width");
  }

  /**
   * The same with another word for the width of a hand-held pass.
   *
   * @param width such as "scan width"
   */
  public static String fixed(RigSetup bench, String width) {
    List<String> parts = new ArrayList<>();
    parts.add(
        "spot %s mm (%s)"
            .formatted(
                plain(bench.spot().diameterMillimetres()), bench.spot().definition().word()));
    bench.pulses().ifPresent(pulses -> parts.addAll(pulses(pulses)));
    parts.add(
        (bench.speed().kind() == SpeedKnob.Kind.HAND ? width : "line spacing")
            + " "
            + plain(bench.speed().acrossMillimetres())
            + " mm");
    if (bench.strokes().overlap() > 0) {
      parts.add("strokes overlap " + Figures.share(bench.strokes().overlap()));
    }
    return String.join(", ", parts);
  }

  /** The same for patches, each of which is one stroke. */
  public static String fixedForPatches(RigSetup bench) {
    String knobs = fixed(bench.withStrokes(Strokes.SINGLE));
    return bench.strokes().overlap() == 0
        ? knobs
        : knobs
            + ", each patch one stroke (the work in strokes overlapping %s)"
                .formatted(Figures.share(bench.strokes().overlap()));
  }

  private static List<String> pulses(Pulses pulses) {
    List<String> parts = new ArrayList<>();
    parts.add(plain(pulses.repetitionKilohertz()) + " kHz");
    pulses.durationNanoseconds().ifPresent(ns -> parts.add(plain(ns) + " ns"));
    return parts;
  }

  /** "24 patches on 4 boards, 61 readings: 9 charred, 15 cleared". */
  public static String counted(Evidence evidence) {
    return "%s on %s, %s: %d charred, %d cleared"
        .formatted(
            Figures.count(evidence.patches(), "patch", "patches"),
            Figures.count(evidence.boards(), "board", "boards"),
            Figures.count(evidence.readings(), "reading", "readings"),
            evidence.charredPatches(),
            evidence.clearedPatches());
  }

  /** "Hand speed", to begin a line with. */
  public static String speedLabel(RigSetup bench) {
    String words = bench.speed().kind().words();
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  /** "power as metered on 2026-06-01", or that it never was. */
  public static String metered(RigSetup bench) {
    return MeteredText.on(bench.rig(), bench.pulses(), bench.at())
        .map("power as "::concat)
        .orElse("power as dialled, never metered");
  }
}
