package charline;

import static org.assertj.core.api.Assertions.assertThat;

import it.unimi.dsi.fastutil.ints.IntArrayList;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Collections;
import java.util.Deque;
import java.util.HashSet;
import java.util.Set;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import tech.tablesaw.api.Table;

/** What the jar holds of the collections that Tablesaw stands on. */
class JarJourneyTest {
  private static final Pattern COLLECTION = Pattern.compile("it/unimi/dsi/fastutil/[\\w/$]+");

  @Test
  void every_collection_that_tablesaw_may_come_to_is_in_the_jar() throws IOException {
    try (JarFile jar = new JarFile(BuiltJar.path().toFile())) {
      Set<String> needed = needed();
      assertThat(needed).hasSizeGreaterThan(1000);
      Set<String> missing =
          needed.stream()
              .filter(name -> jar.getEntry(name + ".class") == null)
              .collect(Collectors.toSet());
      assertThat(missing).isEmpty();
    }
  }

  @Test
  void collections_that_nothing_comes_to_are_not_in_the_jar() throws IOException {
    try (JarFile jar = new JarFile(BuiltJar.path().toFile())) {
      assertThat(jar.stream().filter(e -> e.getName().startsWith("it/unimi/")).count())
          .isBetween(1000L, 5000L);
    }
  }

  /**
   * Collections named in any class of Tablesaw, or in a collection that is needed itself. Names of
   * classes stand as plain text in the constants of a class file (JVM specification, 4.4.7).
   */
  private static Set<String> needed() throws IOException {
    Set<String> needed = new HashSet<>();
    Deque<byte[]> open = new ArrayDeque<>();
    try (JarFile tablesaw = new JarFile(jarOf(Table.class).toFile())) {
      for (JarEntry entry : Collections.list(tablesaw.entries())) {
        if (entry.getName().endsWith(".class")) {
          open.add(tablesaw.getInputStream(entry).readAllBytes());
        }
      }
    }
    try (JarFile collections = new JarFile(jarOf(IntArrayList.class).toFile())) {
      while (!open.isEmpty()) {
        Matcher names = COLLECTION.matcher(new String(open.pop(), StandardCharsets.ISO_8859_1));
        while (names.find()) {
          JarEntry entry = collections.getJarEntry(names.group() + ".class");
          if (entry != null && needed.add(names.group())) {
            open.push(collections.getInputStream(entry).readAllBytes());
          }
        }
      }
    }
    return needed;
  }

  private static Path jarOf(Class<?> type) {
    try {
      return Path.of(type.getProtectionDomain().getCodeSource().getLocation().toURI());
    } catch (URISyntaxException e) {
      throw new AssertionError(e);
    }
  }
}
