package charline.model;

import charline.quantity.Figures;
import charline.refusal.Refusal;
import charline.trial.Patch;
import charline.trial.Stratum;
import charline.trial.Tone;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Refuses to answer for a coat that was not tried. */
final class CoatsTried {
  /** A gauge reading is not kept to more than this. */
  private static final double SLACK = 0.005;

  private CoatsTried() {}

  /**
   * @throws Refusal naming what was tried
   */
  static void require(Coating asked, Stratum stratum, List<Patch> patches) {
    asked.tone().ifPresent(tone -> requireTone(tone, stratum, patches));
    asked.thicknessMicrometres().ifPresent(um -> requireThickness(um, stratum, patches));
  }

  private static void requireTone(Tone tone, Stratum stratum, List<Patch> patches) {
    if (patches.stream().noneMatch(p -> p.finish().tone().equals(Optional.of(tone)))) {
      String tried =
          Arrays.stream(Tone.values())
              .filter(t -> patches.stream().anyMatch(p -> p.finish().tone().equals(Optional.of(t))))
              .map(Tone::word)
              .collect(Collectors.joining(" and "));
      throw Refusal.usage(
          "The tone must be one that was tried, not %s: patches of %s have %s."
              .formatted(
                  tone.word(),
                  stratum.words(),
                  tried.isEmpty() ? "no tone recorded" : tried + " coats only"));
    }
  }

  private static void requireThickness(double um, Stratum stratum, List<Patch> patches) {
    double[] known = CoatDesign.thicknesses(patches);
    if (known.length == 0) {
      throw Refusal.usage(
          "The thickness must be one that was tried, not %s um: no patch of %s has one recorded."
              .formatted(Figures.plain(um), stratum.words()));
    }
    double thickest = known[known.length - 1];
    if (um < known[0] * (1 - SLACK) || um > thickest * (1 + SLACK)) {
      throw Refusal.usage(
          "The thickness must be within what was tried, not %s um: coats of %s have %s to %s um."
              .formatted(
                  Figures.plain(um),
                  stratum.words(),
                  Figures.plain(known[0]),
                  Figures.plain(thickest)));
    }
  }
}
