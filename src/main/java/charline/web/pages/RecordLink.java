package charline.web.pages;

import charline.exposure.Pulses;
import charline.quantity.Figures;
import charline.window.RigSetup;
import charline.window.SpeedKnob;
import java.util.OptionalDouble;

/** The address of the Record page with a setting dialled. */
final class RecordLink {
  private RecordLink() {}

  /**
   * With a power and a speed on a rig.
   *
   * @param like code of the patch whose board and finish are on the bench
   * @param bench rig and fixed knobs
   */
  static String of(String like, RigSetup bench, double powerPercent, double speed, int passes) {
    boolean scan = bench.speed().kind() == SpeedKnob.Kind.SCAN;
    String link =
        "/record?like=%s&rig=%s&power=%s&pace=%s&form=%s&across=%s&spot=%s&passes=%d"
            .formatted(
                Links.escaped(like),
                Links.escaped(bench.rig().name()),
                Figures.shortest(powerPercent),
                Figures.shortest(speed),
                scan ? "scan" : "hand",
                Figures.shortest(bench.speed().acrossMillimetres()),
                Figures.shortest(bench.spot().diameterMillimetres()),
                passes);
    return link + bench.pulses().map(RecordLink::pulses).orElse("");
  }

  private static String pulses(Pulses pulses) {
    String rate = "&rep=" + Figures.shortest(pulses.repetitionKilohertz());
    OptionalDouble duration = pulses.durationNanoseconds();
    return duration.isPresent()
        ? rate + "&pulse=" + Figures.shortest(duration.getAsDouble())
        : rate;
  }
}
