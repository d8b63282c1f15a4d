package charline.cache;

import java.io.EOFException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.Adler32;
import java.util.zip.CRC32;
import java.util.zip.Checksum;

/**
 * What tells one build of the program on one Java from every other: in a jar, a mark of its
 * directory, which holds the checksum of every class of program and libraries; in a folder of
 * classes, a mark of them all and of the path of the libraries. The functions of a library of
 * mathematics may differ by a digit from one Java to the next, so the Java belongs to it.
 */
final class BuildMark {
  /** Signature and least length of the end of a jar's directory, and where it tells what of it. */
  private static final int END_OF_DIRECTORY = 0x06054b50;

  private static final int END_BYTES = 22;
  private static final int LONGEST_COMMENT = 0xFFFF;
  private static final int SIZE_AT = 12;
  private static final int START_AT = 16;

  private BuildMark() {}

  /** The mark of this build. */
  static String ofThisBuild() throws IOException {
    String self = BuildMark.class.getName().replace('.', '/') + ".class";
    URL here = BuildMark.class.getResource("BuildMark.class");
    String place = here.toString();
    String code;
    try {
      if (place.startsWith("jar:") && place.endsWith("!/" + self)) {
        String jar = place.substring("jar:".length(), place.length() - self.length() - 2);
        code = ofJar(Path.of(new URI(jar)));
      } else if (place.startsWith("file:")) {
        Path file = Path.of(new URI(place));
        code = ofClasses(file.getParent().getParent());
      } else {
        throw new IOException("The program runs from " + place + ".");
      }
    } catch (URISyntaxException | IllegalArgumentException e) {
      throw new IOException(e);
    }
    return String.join(
        " ",
        code,
        System.getProperty("java.vm.vendor", ""),
        System.getProperty("java.vm.version", ""),
        System.getProperty("os.arch", ""));
  }

  /** Two checksums that Java has no need to compile. */
  private record Sums(CRC32 crc, Adler32 adler) {
    Sums() {
      this(new CRC32(), new Adler32());
    }

    void add(byte[] bytes) {
      for (Checksum sum : List.of(crc, adler)) {
        sum.update(bytes, 0, bytes.length);
      }
    }

    String text() {
      return Long.toHexString(crc.getValue()) + "-" + Long.toHexString(adler.getValue());
    }
  }

  static String ofJar(Path jar) throws IOException {
    try (FileChannel channel = FileChannel.open(jar, StandardOpenOption.READ)) {
      long size = channel.size();
      int tail = (int) Math.min(size, END_BYTES + LONGEST_COMMENT);
      ByteBuffer end = read(channel, size - tail, tail);
      for (int at = tail - END_BYTES; at >= 0; at--) {
        if (end.getInt(at) == END_OF_DIRECTORY) {
          long start = Integer.toUnsignedLong(end.getInt(at + START_AT));
          long length = Integer.toUnsignedLong(end.getInt(at + SIZE_AT));
          if (start + length > size) {
            break;
          }
          Sums sums = new Sums();
          sums.add(read(channel, start, Math.toIntExact(length)).array());
          return "jar " + length + " " + sums.text();
        }
      }
    }
    throw new IOException(jar + " has no directory that this reads.");
  }

  private static ByteBuffer read(FileChannel channel, long from, int length) throws IOException {
    ByteBuffer bytes = ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN);
    while (bytes.hasRemaining()) {
      if (channel.read(bytes, from + bytes.position()) < 0) {
        throw new EOFException();
      }
    }
    return bytes;
  }

  /** A mark of all that lies in a folder of classes. */
  static String ofClasses(Path folder) throws IOException {
    Sums sums = new Sums();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
        sums.add(
            folder.relativize(file).toString().getBytes(java.nio.charset.StandardCharsets.UTF_8));
        sums.add(Files.readAllBytes(file));
      }
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    return "classes " + sums.text() + " " + System.getProperty("java.class.path", "");
  }
}
