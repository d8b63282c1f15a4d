package charline.web.pages;

import charline.trial.Stratum;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;

/** Addresses of pages. */
public final class Links {
  private Links() {}

  /** A text as part of an address. */
  public static String escaped(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
  }

  /** The page of one patch. */
  public static String patch(String code) {
    return "/patch/" + escaped(code);
  }

  /** Query part that names a stratum. */
  public static String of(Stratum s) {
    return "family=%s&wood=%s&light=%s-%d"
        .formatted(
            escaped(s.family()), escaped(s.wood()), s.emission().word(), s.wavelengthNanometres());
  }
}
