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

  private Bodies() {}

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
