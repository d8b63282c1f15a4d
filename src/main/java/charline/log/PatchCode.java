package charline.log;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The log's own codes, as written on the masking tape: P-0001, P-0002, ... */
public final class PatchCode {
  private static final Pattern SHORT = Pattern.compile("(?i)(?:p-?)?(\\d{1,9})");

  /**
   * Codes are counted on from the highest up to this one. A higher one was brought in from outside;
   * to count on from it would lead to where no code is left.
   */
  public static final int LAST_COUNTED = 99_999_999;

  private PatchCode() {}

  public static String of(long number) {
    return String.format(Locale.ROOT, "P-%04d", number);
  }

  /** The code meant by "42", "p42" or "P-42". */
  public static Optional<String> spelledOut(String typed) {
    Matcher matcher = SHORT.matcher(typed.strip());
    return matcher.matches() ? Optional.of(of(Long.parseLong(matcher.group(1)))) : Optional.empty();
  }
}
