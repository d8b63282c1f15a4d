package charline.web.pages;

import charline.record.Photos;
import charline.web.security.HttpRefusal;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/**
 * A photo on its way in: it waits in a temporary file of its own, so that a phone on a slow network
 * keeps no memory. The file is gone when this is closed.
 */
final class PhotoUpload implements AutoCloseable {
  /** A phone may be slow for this long, and must then have sent at the least rate on average. */
  private static final long PATIENCE_SECONDS = 60;

  private static final long LEAST_BYTES_PER_SECOND = 2048;
  private static final int BUFFER_BYTES = 16 * 1024;

  private final Path file;

  private PhotoUpload(Path file) {
    this.file = file;
  }

  /**
   * Takes the body of a request in.
   *
   * @throws HttpRefusal 413 if it is too large, 408 if it comes too slowly
   */
  static PhotoUpload receive(Context ctx) throws IOException {
    String declared = ctx.header("Content-Length");
    if (declared != null
        && declared.matches("\\d{1,18}")
        && Long.parseLong(declared) > Photos.MOST_BYTES) {
      throw new HttpRefusal(413, Photos.TOO_LARGE);
    }
    PhotoUpload upload = new PhotoUpload(Files.createTempFile("charline-photo", ""));
    boolean whole = false;
    try (InputStream in = ctx.bodyInputStream();
        OutputStream out = Files.newOutputStream(upload.file)) {
      copy(in, out);
      whole = true;
    } finally {
      if (!whole) {
        upload.close();
      }
    }
    return upload;
  }

  private static void copy(InputStream in, OutputStream out) throws IOException {
    long start = System.nanoTime();
    byte[] buffer = new byte[BUFFER_BYTES];
    long bytes = 0;
    for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
      bytes += read;
      if (bytes > Photos.MOST_BYTES) {
        throw new HttpRefusal(413, Photos.TOO_LARGE);
      }
      long seconds = TimeUnit.NANOSECONDS.toSeconds(System.nanoTime() - start);
      if (seconds > PATIENCE_SECONDS && bytes < seconds * LEAST_BYTES_PER_SECOND) {
        throw new HttpRefusal(
            408,
            "The photo came too slowly, so it was not kept; send it again nearer to the bench.");
      }
      out.write(buffer, 0, read);
    }
  }

  /** The file as it came. */
  byte[] content() {
    try {
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() throws IOException {
    Files.deleteIfExists(file);
  }
}
