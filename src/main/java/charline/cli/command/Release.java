package charline.cli.command;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** Which charline this is. */
public final class Release {
  private Release() {}

  /** The version that the program was built as. */
  public static String version() {
    Properties release = new Properties();
    try (InputStream in = Release.class.getResourceAsStream("release.properties")) {
      release.load(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return release.getProperty("version");
  }
}
