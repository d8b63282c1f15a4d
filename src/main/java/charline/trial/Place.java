package charline.trial;

import charline.refusal.Refusal;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** Where on a board a patch lies. */
public enum Place {
  FACE,
  ARRIS,
  END_GRAIN,
  MOULDING,
  KNOT;

  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /** All words, "face" first. */
  public static List<String> words() {
    return Arrays.stream(values()).map(Place::word).toList();
  }

  /**
   * The place that a word names.
   *
   * @throws Refusal if it names none
   */
  public static Place ofWord(String text) {
    String word = text.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", " ");
    return switch (word) {
      case "edge" -> ARRIS;
      case "molding", "profile" -> MOULDING;
      default ->
          Arrays.stream(values())
              .filter(place -> place.word().equals(word))
              .findFirst()
              .orElseThrow(
                  () ->
                      Refusal.usage(
                          "A place on the board must be face, arris, end grain, moulding or knot, not \"%s\"."
                              .formatted(text.strip())));
    };
  }
}
