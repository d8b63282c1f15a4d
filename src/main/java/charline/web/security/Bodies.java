package charline.web.security;

import io.javalin.http.Context;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a body must be like before anything reads it. */
final class Bodies {
  private static final Pattern CHARSET =
      Pattern.compile("charset\\s*=\\s*\"?([^\";\\s]*)", Pattern.CASE_INSENSITIVE);

  private static final Pattern BROKEN_ESCAPE = Pattern.compile("%(?![0-9A-Fa-f]{2})");

  private static final int MOST_UNPAIRED_BYTES = 500;

  private Bodies() {}

  /** What an unpaired device may send is a code and a name. */
  static void requireShort(Context ctx) {
    long length = ctx.req().getContentLengthLong();
    if (length < 0 || length > MOST_UNPAIRED_BYTES) {
      throw new HttpRefusal(
          413,
          "A device that is not paired may send a pairing code and a name, in at most %d bytes."
              .formatted(MOST_UNPAIRED_BYTES));
    }
  }

  static void check(Context ctx) {
    if (ctx.isMultipart()) {
      throw new HttpRefusal(
          415,
          "A photo must be sent as the picture alone, without a form around it; it was not kept.");
    }
    String type = ctx.contentType();
    Matcher charset = CHARSET.matcher(type == null ? "" : type);
    if (charset.find() && !charset.group(1).equalsIgnoreCase("utf-8")) {
      throw HttpRefusal.otherLetters();
    }
    if (ctx.path().startsWith("/entries/")
        || List.of("/photos", "/log/file").contains(ctx.path())) {
      return;
    }
    if (!ctx.isFormUrlencoded()) {
      throw new HttpRefusal(
          415, "A page must send what you type as a form; reload the page, then try again.");
    }
    if (BROKEN_ESCAPE.matcher(ctx.body()).find()) {
      throw new HttpRefusal(
          400, "In a form, a % must be followed by two hexadecimal digits; nothing was recorded.");
    }
  }
}
