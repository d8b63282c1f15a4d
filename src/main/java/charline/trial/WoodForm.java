package charline.trial;

import charline.refusal.Refusal;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** What kind of piece a board is. */
public enum WoodForm {
  SOLID,
  VENEER,
  PLYWOOD,
  MDF;

  private static final Map<String, WoodForm> PANELS =
      Map.of("mdf", MDF, "hdf", MDF, "plywood", PLYWOOD, "blockboard", PLYWOOD);

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The form that a panel product is; empty for wood. */
  public static Optional<WoodForm> ofPanel(String wood) {
    return Optional.ofNullable(PANELS.get(wood));
  }

  /**
   * The form a word names.
   *
   * @throws Refusal if it names none
   */
  public static WoodForm ofWord(String word) {
    for (WoodForm f : values()) {
      if (f.word().equalsIgnoreCase(word.strip())) {
        return f;
      }
    }
    throw Refusal.usage(
        "A board's form must be solid, veneer, plywood or mdf, not \"" + word + "\".");
  }
}
