package charline.web.security;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/** Tokens and codes, new with every start. */
final class Secrets {
  private static final int TOKEN_BYTES = 32;
  private static final int CODE_END = 100_000_000;

  private final SecureRandom random = new SecureRandom();
  private final byte[] key = new byte[TOKEN_BYTES];

  Secrets() {
    random.nextBytes(key);
  }

  /** 256 random bits. */
  String token() {
    byte[] bytes = new byte[TOKEN_BYTES];
    random.nextBytes(bytes);
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }

  /** Eight digits to be read off a screen and typed. */
  String code() {
    return "%08d".formatted(random.nextInt(CODE_END));
  }

  /** What forms of a seat carry: known to its pages only. */
  String formToken(String seat) {
    return Base64.getUrlEncoder().withoutPadding().encodeToString(sealed(seat));
  }

  /**
   * What is kept of a token: enough to know it again, not enough to make it. The token is random
   * through and through, so that its plain hash cannot be guessed back.
   */
  static String trace(String token) {
    try {
      return Base64.getEncoder()
          .encodeToString(
              MessageDigest.getInstance("SHA-256").digest(token.getBytes(StandardCharsets.UTF_8)));
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("Every Java has SHA-256.", e);
    }
  }

  static boolean same(String a, String b) {
    return MessageDigest.isEqual(
        a.getBytes(StandardCharsets.UTF_8), b.getBytes(StandardCharsets.UTF_8));
  }

  private byte[] sealed(String text) {
    try {
      Mac mac = Mac.getInstance("HmacSHA256");
      mac.init(new SecretKeySpec(key, "HmacSHA256"));
      return mac.doFinal(text.getBytes(StandardCharsets.UTF_8));
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("Every Java has HmacSHA256.", e);
    }
  }
}
