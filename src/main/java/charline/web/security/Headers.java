package charline.web.security;

import static java.util.stream.Collectors.joining;

import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.List;

/** What every answer tells the browser to refuse. */
public final class Headers {
  private static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'%s; img-src 'self' blob: data:;"
          + " connect-src 'self'; manifest-src 'self'; form-action 'self'; base-uri 'none';"
          + " frame-src 'self'; frame-ancestors 'none'";

  private Headers() {}

  /** The strictest: only files of this server, nothing inline. */
  static void strict(Context ctx) {
    ctx.header("Content-Security-Policy", POLICY.formatted(""));
    ctx.header("X-Content-Type-Options", "nosniff");
    ctx.header("X-Frame-Options", "DENY");
    ctx.header("Referrer-Policy", "same-origin");
    ctx.header("Cross-Origin-Opener-Policy", "same-origin");
    ctx.header("Cross-Origin-Resource-Policy", "same-origin");
    ctx.header("Permissions-Policy", "geolocation=(), microphone=(), payment=(), usb=()");
    ctx.header("Cache-Control", "no-store");
  }

  /**
   * Lets some inline styles through, each by its checksum, and no others.
   *
   * @param styles each as it is between its tags
   */
  public static void allowStyles(Context ctx, List<String> styles) {
    ctx.header(
        "Content-Security-Policy",
        POLICY.formatted(styles.stream().map(style -> " " + hash(style)).collect(joining())));
  }

  /** Lets pages of this server show the answer in a frame, as a preview does. */
  public static void allowFrame(Context ctx) {
    ctx.header(
        "Content-Security-Policy",
        ctx.res()
            .getHeader("Content-Security-Policy")
            .replace("frame-ancestors 'none'", "frame-ancestors 'self'"));
    ctx.header("X-Frame-Options", "SAMEORIGIN");
  }

  /** For what was uploaded: shown as the picture it is, and never as anything else. */
  public static void pictureOnly(Context ctx, String fileName) {
    ctx.header("Content-Security-Policy", "default-src 'none'; sandbox");
    ctx.header("Content-Disposition", "inline; filename=\"" + fileName + "\"");
  }

  private static String hash(String text) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return "'sha256-" + Base64.getEncoder().encodeToString(digest) + "'";
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Every Java has SHA-256.", e);
    }
  }
}
