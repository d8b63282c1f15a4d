package charline.log.upgrade;

import charline.picture.BarePicture;
import charline.refusal.Refusal;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.SQLException;
import java.util.HexFormat;
import java.util.Map;
import org.sqlite.Function;

/** What a step that changes photographs calls, which SQL cannot say. */
final class PhotoFunctions {
  private PhotoFunctions() {}

  /** The functions by name, each of one value, a file. */
  static Map<String, Function> byName() {
    return Map.of("bare_picture", new Bare(), "sha256", new Sha256());
  }

  /** The picture without what else its file says; what is no picture as it is. */
  private static final class Bare extends Function {
    @Override
    protected void xFunc() throws SQLException {
      byte[] file = value_blob(0);
      try {
        result(BarePicture.of(file).content());
      } catch (Refusal e) {
        result(file);
      }
    }
  }

  /** The SHA-256 of a file, as 64 hexadecimal digits. */
  private static final class Sha256 extends Function {
    @Override
    protected void xFunc() throws SQLException {
      try {
        result(
            HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(value_blob(0))));
      } catch (NoSuchAlgorithmException e) {
        throw new IllegalStateException("Every Java has SHA-256.", e);
      }
    }
  }
}
