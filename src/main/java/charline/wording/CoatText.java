package charline.wording;

import static charline.quantity.Figures.three;

import charline.model.CoatEffect;
import charline.model.CoatTerm;
import charline.model.Coating;
import charline.model.Estimate;
import charline.model.ModelFit;
import charline.quantity.Figures;
import charline.trial.Patch;
import charline.trial.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Which coat an answer is for, and what tone and thickness were found to count. */
public final class CoatText {
  private CoatText() {}

  /** One paragraph, where the trials hold more than one kind of coat. */
  public static Optional<String> of(ModelFit clearing, List<Patch> patches) {
    if (clearing.coatEffects().isEmpty()) {
      return Optional.empty();
    }
    List<String> found = new ArrayList<>();
    for (CoatEffect effect : clearing.coatEffects()) {
      found.add(
          switch (effect.term()) {
            case TONE -> "pale takes %s the dose of dark".formatted(times(effect.factor()));
            case THICKNESS -> "twice as thick takes %s the dose".formatted(times(effect.factor()));
          });
    }
    String text =
        "For %s. Found in these trials: %s.".formatted(coat(clearing), String.join("; ", found));
    return Optional.of(has(clearing, CoatTerm.TONE) ? text + " " + counted(patches) : text);
  }

  private static String times(Estimate factor) {
    return "%s times (%s)"
        .formatted(three(factor.median()), Figures.bounds(factor.low(), factor.high()));
  }

  /** "a dark coat of 90 um", as far as the model looks at it. */
  private static String coat(ModelFit clearing) {
    Coating coat = clearing.coat();
    String tone =
        has(clearing, CoatTerm.TONE) ? "a " + coat.tone().orElseThrow().word() + " coat" : "a coat";
    return has(clearing, CoatTerm.THICKNESS)
        ? tone + " of %s um".formatted(three(coat.thicknessMicrometres().getAsDouble()))
        : tone;
  }

  private static boolean has(ModelFit clearing, CoatTerm term) {
    return clearing.coatEffects().stream().anyMatch(e -> e.term() == term);
  }

  private static String counted(List<Patch> patches) {
    List<String> parts = new ArrayList<>();
    for (Tone tone : Tone.values()) {
      long count =
          patches.stream().filter(p -> p.finish().tone().equals(Optional.of(tone))).count();
      if (count > 0) {
        parts.add(count + " " + tone.word());
      }
    }
    long unknown = patches.stream().filter(p -> p.finish().tone().isEmpty()).count();
    return "Patches: %s%s."
        .formatted(
            String.join(", ", parts),
            unknown == 0 ? "" : "; %d of unknown tone counted as mid".formatted(unknown));
  }

  /** The coat and its effects; a part that is unknown, or alike in all coats, is null. */
  public static Json json(ModelFit clearing) {
    return new Json()
        .put("tone", clearing.coat().tone().map(Tone::word))
        .put("thickness_um", clearing.coat().thicknessMicrometres())
        .put(
            "pale_over_dark",
            effect(clearing, CoatTerm.TONE).map(e -> e.factor()).map(WindowJson::estimate))
        .put(
            "thickness_weight",
            effect(clearing, CoatTerm.THICKNESS).map(e -> e.weight()).map(WindowJson::estimate));
  }

  private static Optional<CoatEffect> effect(ModelFit clearing, CoatTerm term) {
    return clearing.coatEffects().stream().filter(e -> e.term() == term).findAny();
  }
}
