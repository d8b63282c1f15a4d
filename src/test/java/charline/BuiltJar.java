package charline;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * The jar that was built, and how journeys start it. A journey starts it some hundred times for a
 * second each: the first start keeps its loaded classes in an archive for the others, and no start
 * spends time on optimising code or on a collector with threads. What it does is the same.
 */
public final class BuiltJar {
  private static final Path JAR = Path.of(System.getProperty("charline.jar", "none"));
  private static final Path JAVA = Path.of(System.getProperty("java.home"), "bin", "java");
  private static final List<String> SHORT_LIVED =
      List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xlog:disable");

  private BuiltJar() {}

  /** Where it is. */
  public static Path path() {
    return JAR;
  }

  /** The command that runs it on these words. */
  public static List<String> command(List<String> words) throws IOException {
    return started(List.of("-XX:SharedArchiveFile=" + Archive.FILE), words);
  }

  private static List<String> started(List<String> options, List<String> words) {
    List<String> command = new ArrayList<>(List.of(JAVA.toString()));
    command.addAll(SHORT_LIVED);
    command.addAll(options);
    command.addAll(List.of("-jar", JAR.toString()));
    command.addAll(words);
    return command;
  }

  /** Loaded classes of an import, which comes to the log, the sheets and the options. */
  private static final class Archive {
    private static final Path FILE = made();

    private static Path made() {
      try {
        Path folder = Files.createTempDirectory(JAR.getParent(), "classes");
        Path file = folder.resolve("classes.jsa");
        Path samples = Path.of("sample-trials");
        Process process =
            new ProcessBuilder(
                    started(
                        List.of("-XX:ArchiveClassesAtExit=" + file),
                        Stream.of(
                                "--log",
                                folder.resolve("log.db"),
                                "import",
                                samples.resolve("latex-on-pine.csv"),
                                "--rigs",
                                samples.resolve("rigs.csv"))
                            .map(Object::toString)
                            .toList()))
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        process.getOutputStream().close();
        assertThat(process.waitFor()).as("exit code of an import with the jar").isZero();
        Path kept = JAR.resolveSibling("classes-%d.jsa".formatted(ProcessHandle.current().pid()));
        Files.move(file, kept, StandardCopyOption.REPLACE_EXISTING);
        kept.toFile().deleteOnExit();
        return kept;
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new AssertionError(e);
      }
    }
  }
}
