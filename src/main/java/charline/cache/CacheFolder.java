package charline.cache;

import charline.log.database.PrivateFile;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.zip.CRC32;

/**
 * The files: each carries what it is, its own name, the length of what it keeps, that, and a
 * checksum of all before.
 */
final class CacheFolder {
  private static final byte[] KIND = "charline cache 1".getBytes(StandardCharsets.US_ASCII);
  private static final String ENDING = ".kept";
  private static final String ASIDE = ".new-";
  private static final Pattern OWN_FILE =
      Pattern.compile("[0-9a-f]{64}" + Pattern.quote(ENDING) + "(" + ASIDE + "[0-9a-f-]+)?");

  /** A file used since then need not be marked as used again. */
  private static final Duration LATELY = Duration.ofHours(1);

  private final Path folder;
  private final long mostBytes;

  /**
   * @param mostBytes of all files together, and of one
   */
  CacheFolder(Path folder, long mostBytes) {
    this.folder = folder.toAbsolutePath();
    this.mostBytes = mostBytes;
  }

  private Path file(String name) {
    return folder.resolve(name + ENDING);
  }

  /**
   * What is kept under a name.
   *
   * @param name 64 hexadecimal digits
   * @return empty where there is nothing, or nothing that can be trusted
   */
  Optional<ByteBuffer> read(String name) {
    Path file = file(name);
    try {
      BasicFileAttributes known = Files.readAttributes(file, BasicFileAttributes.class);
      if (!known.isRegularFile() || known.size() > mostBytes || !ownersAlone()) {
        return Optional.empty();
      }
      Optional<ByteBuffer> kept = checked(name, Files.readAllBytes(file));
      if (kept.isPresent()
          && known.lastModifiedTime().toInstant().isBefore(Instant.now().minus(LATELY))) {
        use(file);
      }
      return kept;
    } catch (IOException | RuntimeException e) {
      return Optional.empty();
    }
  }

  private static void use(Path file) {
    try {
      Files.setLastModifiedTime(file, FileTime.from(Instant.now()));
    } catch (IOException e) {
      return; // it only goes earlier
    }
  }

  private static Optional<ByteBuffer> checked(String name, byte[] bytes) {
    ByteBuffer all = ByteBuffer.wrap(bytes);
    byte[] head = head(name);
    if (bytes.length < head.length + Integer.BYTES + Long.BYTES
        || !Arrays.equals(head, 0, head.length, bytes, 0, head.length)) {
      return Optional.empty();
    }
    int end = bytes.length - Long.BYTES;
    CRC32 sum = new CRC32();
    sum.update(bytes, 0, end);
    int length = all.getInt(head.length);
    int start = head.length + Integer.BYTES;
    return length == end - start && all.getLong(end) == sum.getValue()
        ? Optional.of(all.slice(start, length))
        : Optional.empty();
  }

  private static byte[] head(String name) {
    byte[] own = name.getBytes(StandardCharsets.US_ASCII);
    byte[] head = Arrays.copyOf(KIND, KIND.length + own.length);
    System.arraycopy(own, 0, head, KIND.length, own.length);
    return head;
  }

  /** Writes a file aside and moves it to its name, over whatever was there. */
  void write(String name, byte[] value) throws IOException {
    byte[] head = head(name);
    ByteBuffer all =
        ByteBuffer.allocate(head.length + Integer.BYTES + value.length + Long.BYTES)
            .put(head)
            .putInt(value.length)
            .put(value);
    CRC32 sum = new CRC32();
    sum.update(all.array(), 0, all.position());
    all.putLong(sum.getValue());
    makeFolder();
    if (!ownersAlone()) {
      throw new IOException("Others may write into " + folder + ".");
    }
    Path file = file(name);
    Path aside =
        folder.resolve(
            file.getFileName()
                + ASIDE
                + Long.toHexString(ProcessHandle.current().pid())
                + "-"
                + Long.toHexString(System.nanoTime()));
    try {
      PrivateFile.begin(aside);
      Files.write(aside, all.array(), StandardOpenOption.WRITE);
      Files.move(aside, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      PrivateFile.discard(aside);
    }
  }

  private void makeFolder() throws IOException {
    if (Files.isDirectory(folder)) {
      return;
    }
    try {
      Files.createDirectories(
          folder,
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")));
    } catch (UnsupportedOperationException e) {
      Files.createDirectories(folder);
    }
  }

  /** Whoever may write here could make an answer up. */
  private boolean ownersAlone() throws IOException {
    Set<PosixFilePermission> permissions;
    try {
      permissions = Files.getPosixFilePermissions(folder);
    } catch (UnsupportedOperationException e) {
      return true; // a system where a person's folders are their own
    }
    String user = System.getProperty("user.name", "?");
    return !permissions.contains(PosixFilePermission.GROUP_WRITE)
        && !permissions.contains(PosixFilePermission.OTHERS_WRITE)
        && (user.equals("?") || Files.getOwner(folder).getName().equals(user));
  }

  private record Found(Path file, long bytes, Instant used) {}

  /** Takes away what was used longest ago, down to three quarters of the room. */
  void makeRoom() throws IOException {
    List<Found> all = new ArrayList<>();
    Instant old = Instant.now().minus(LATELY);
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder)) {
      for (Path file : files) {
        if (OWN_FILE.matcher(file.getFileName().toString()).matches()) {
          BasicFileAttributes known = Files.readAttributes(file, BasicFileAttributes.class);
          Instant used = known.lastModifiedTime().toInstant();
          if (file.toString().endsWith(ENDING)) {
            all.add(new Found(file, known.size(), used));
          } else if (used.isBefore(old)) {
            Files.deleteIfExists(file); // left by a run that was killed
          }
        }
      }
    }
    long bytes = all.stream().mapToLong(Found::bytes).sum();
    if (bytes <= mostBytes) {
      return;
    }
    all.sort(Comparator.comparing(Found::used));
    for (Found each : all) {
      if (bytes <= mostBytes / 4 * 3) {
        return;
      }
      Files.deleteIfExists(each.file());
      bytes -= each.bytes();
    }
  }
}
