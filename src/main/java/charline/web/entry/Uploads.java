package charline.web.entry;

import charline.refusal.Refusal;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;

/**
 * Files that a device sent, for as long as a person looks at what would come of them: an hour, and
 * the last twelve. They lie in a private folder that goes when the page is closed.
 */
public final class Uploads implements AutoCloseable {
  private static final int KEPT = 12;
  private static final Duration HOUR = Duration.ofHours(1);
  private static final int BLOCK = 64 * 1024;
  private static final int LONGEST_NAME = 80;

  private final Clock clock;
  private final Map<String, Upload> uploads = new LinkedHashMap<>();
  private Path folder;

  public Uploads(Clock clock) {
    this.clock = clock;
  }

  /**
   * One file.
   *
   * @param id names it in an address
   * @param file where it lies, under the name that it had on the device
   */
  public record Upload(String id, Path file, Instant at) {}

  /**
   * Takes a file in.
   *
   * @param name that it had on the device
   * @param most how many bytes it may have
   */
  public Upload keep(String name, InputStream content, long most) {
    String id = UUID.randomUUID().toString();
    Path file = home().resolve(id).resolve(plain(name));
    try {
      Files.createDirectory(file.getParent());
      copy(content, file, most);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (Refusal e) {
      discard(file);
      throw e;
    }
    Upload upload = new Upload(id, file, clock.instant());
    synchronized (uploads) {
      uploads.put(id, upload);
      forget();
    }
    return upload;
  }

  private static void copy(InputStream content, Path file, long most) throws IOException {
    try (var out = Files.newOutputStream(file)) {
      byte[] block = new byte[BLOCK];
      long all = 0;
      for (int read = content.read(block); read >= 0; read = content.read(block)) {
        all += read;
        if (all > most) {
          throw Refusal.usage(
              "A file must be at most %d MB large; this one is larger, so import it at the serving machine."
                  .formatted(most / 1_000_000));
        }
        out.write(block, 0, read);
      }
    }
  }

  /** A name that is a name and no way to another folder. */
  private static String plain(String name) {
    String last = name.replaceAll(".*[/\\\\]", "").replaceAll("[^\\p{L}\\p{N}._ -]", "_").strip();
    String some = last.isEmpty() || last.startsWith(".") ? "file" + last : last;
    return some.length() > LONGEST_NAME ? some.substring(some.length() - LONGEST_NAME) : some;
  }

  /** The file of an identity; refuses one that is gone. */
  public Path of(String id) {
    synchronized (uploads) {
      forget();
      Upload upload = uploads.get(id);
      if (upload == null) {
        throw Refusal.usage("That file is not here any more; choose it again.");
      }
      return upload.file();
    }
  }

  private void forget() {
    Instant since = clock.instant().minus(HOUR);
    for (Iterator<Upload> i = uploads.values().iterator(); i.hasNext(); ) {
      Upload each = i.next();
      if (uploads.size() > KEPT || each.at().isBefore(since)) {
        discard(each.file());
        i.remove();
      }
    }
  }

  private static void discard(Path file) {
    try {
      Files.deleteIfExists(file);
      Files.deleteIfExists(file.getParent());
    } catch (IOException e) {
      return; // the folder goes with the page
    }
  }

  private synchronized Path home() {
    try {
      if (folder == null) {
        folder = Files.createTempDirectory("charline-files");
      }
      return folder;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A new place for a file of the page's own, in the same folder. */
  public Path fresh(String name) {
    try {
      return Files.createDirectory(home().resolve(UUID.randomUUID().toString())).resolve(name);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Takes away what {@link #fresh} gave. */
  public void done(Path file) {
    discard(file);
  }

  @Override
  public void close() {
    synchronized (uploads) {
      uploads.values().forEach(u -> discard(u.file()));
      uploads.clear();
    }
    try {
      if (folder != null) {
        Files.deleteIfExists(folder);
      }
    } catch (IOException e) {
      return; // an empty folder more among the temporary ones
    }
  }
}
