package charline.fault;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HexFormat;
import java.util.zip.CRC32;

/**
 * Writes the details of a fault of the program into a text file. Each fault has one file, named for
 * the exception and the place that threw it: a fault that comes back overwrites its own file, so
 * that a page that fails every second does not fill the disk.
 *
 * @param folder where the files go; made when the first one is written
 * @param version version of the program
 */
public record FaultFiles(Path folder, String version) {
  /**
   * What a person reads about a fault.
   *
   * @param consequence what it means for what they asked, as half a sentence
   */
  public static String sentence(Throwable fault, String consequence, Place place) {
    return "charline has a fault (%s); %s. %s"
        .formatted(fault.getClass().getSimpleName(), consequence, place.words());
  }

  /** Where the details of a fault went. */
  public sealed interface Place {
    /** As a sentence. */
    String words();
  }

  /** Into this file. */
  public record Written(Path file) implements Place {
    @Override
    public String words() {
      return "The details are in " + file + "; send that file to the makers of charline.";
    }
  }

  /** Nowhere, since no file could be written. */
  public record Unwritten(String firstLine) implements Place {
    @Override
    public String words() {
      return "The file with the details could not be written; the fault is " + firstLine + ".";
    }
  }

  /**
   * Writes what is known about a fault: version, Java, system, moment, task and stack trace. What a
   * person typed is not written, but the message of an exception can repeat a part of it.
   *
   * @param fault what was thrown
   * @param task what the program was doing, without what a person typed: a command or a page
   * @param moment when
   */
  public Place write(Throwable fault, String task, Instant moment) {
    try {
      String trace = trace(fault);
      Path file = Files.createDirectories(folder).resolve(name(fault));
      Files.writeString(
          file,
          """
          charline %s
          Java %s (%s)
          %s %s %s
          %s
          %s

          %s\
          """
              .formatted(
                  version,
                  System.getProperty("java.version"),
                  System.getProperty("java.vendor"),
                  System.getProperty("os.name"),
                  System.getProperty("os.version"),
                  System.getProperty("os.arch"),
                  moment.truncatedTo(ChronoUnit.SECONDS),
                  task,
                  trace));
      return new Written(file);
    } catch (IOException | RuntimeException e) {
      return unwritten(fault);
    }
  }

  /** For a fault of a program that does not even know where its data folder is. */
  public static Place unwritten(Throwable fault) {
    StackTraceElement[] frames = fault.getStackTrace();
    String words = fault.toString().lines().findFirst().orElse("");
    return new Unwritten(frames.length == 0 ? words : words + " at " + frames[0]);
  }

  private static String trace(Throwable fault) {
    StringWriter text = new StringWriter();
    fault.printStackTrace(new PrintWriter(text, true));
    return text.toString();
  }

  private static String name(Throwable fault) {
    CRC32 sum = new CRC32();
    sum.update(fault.getClass().getName().getBytes(StandardCharsets.UTF_8));
    if (fault.getStackTrace().length > 0) {
      sum.update(fault.getStackTrace()[0].toString().getBytes(StandardCharsets.UTF_8));
    }
    return "fault-" + HexFormat.of().toHexDigits((int) sum.getValue()) + ".txt";
  }
}
