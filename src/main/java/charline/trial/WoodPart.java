package charline.trial;

import charline.refusal.Refusal;
import java.util.List;
import java.util.Locale;

/** Which part of the tree a patch lies on. */
public enum WoodPart {
  SAP,
  HEART;

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Both words. */
  public static List<String> words() {
    return List.of(SAP.word(), HEART.word());
  }

  /**
   * The part that a word names.
   *
   * @throws Refusal if it names none
   */
  public static WoodPart ofWord(String text) {
    return switch (text.strip().toLowerCase(Locale.ROOT)) {
      case "sap", "sapwood" -> SAP;
      case "heart", "heartwood" -> HEART;
      default ->
          throw Refusal.usage(
              "A part of the wood must be sap or heart, not \"%s\".".formatted(text.strip()));
    };
  }
}
