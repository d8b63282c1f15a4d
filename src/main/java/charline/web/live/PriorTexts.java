package charline.web.live;

import charline.answer.PriorFile;
import charline.answer.Priors;
import charline.refusal.Refusal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.CRC32;

/**
 * Priors that people typed or pasted, by a short name made from what they say, so that an address
 * names them without holding them. The last fifty are kept until the page is closed.
 */
public final class PriorTexts {
  private static final int KEPT = 50;
  private static final int LONGEST = 6000;
  private static final String NAME = "priors-[0-9a-f]{8}";

  private final Map<String, String> texts = new LinkedHashMap<>();

  /**
   * The priors of a text, or those of a name that it had before.
   *
   * @throws Refusal if the text is no priors, or the name is not known any more
   */
  public Priors of(String typed) {
    if (typed.matches(NAME)) {
      return read(typed, text(typed));
    }
    if (typed.length() > LONGEST) {
      throw Refusal.usage(
          "Priors must be at most %d characters long, not %d; leave the remarks out."
              .formatted(LONGEST, typed.length()));
    }
    CRC32 sum = new CRC32();
    sum.update(typed.getBytes(StandardCharsets.UTF_8));
    String name = "priors-%08x".formatted(sum.getValue());
    Priors read = read(name, typed);
    keep(name, typed);
    return read;
  }

  private static Priors read(String name, String text) {
    return PriorFile.read(text.lines().toList(), Path.of(name));
  }

  /** The text of priors; blank for the usual ones. */
  public String text(Priors priors) {
    return priors.file().map(file -> text(file.toString())).orElse("");
  }

  private synchronized String text(String name) {
    String text = texts.get(name);
    if (text == null) {
      throw Refusal.usage(
          "The priors %s are not known any more, as the bench was started anew; paste them again."
              .formatted(name));
    }
    return text;
  }

  private synchronized void keep(String name, String text) {
    texts.remove(name);
    texts.put(name, text);
    while (texts.size() > KEPT) {
      texts.remove(texts.keySet().iterator().next());
    }
  }
}
