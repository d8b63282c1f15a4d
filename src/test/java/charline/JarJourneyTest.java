package charline;

import static org.assertj.core.api.Assertions.assertThat;

import it.unimi.dsi.fastutil.ints.IntArrayList;
import java.io.IOException;
import java.net.JarURLConnection;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Collections;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import tech.tablesaw.api.Table;

/** What the jar holds of libraries of which it needs a part. */
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

  /**
   * Names of classes as they are written in class files, and in the names that a class looks up.
   */
  private static final Pattern TRIMMED =
      Pattern.compile("(?:com[/.]google[/.]common|org[/.]apache[/.]commons[/.]math3)[/.][\\w/.$]+");

  @Test
  void no_class_in_the_jar_names_one_that_was_left_out() throws IOException {
    Set<String> there = new HashSet<>();
    for (String of :
        List.of(
            "com/google/common/collect/ImmutableList.class",
            "org/apache/commons/math3/util/FastMath.class")) {
      // The built jar may be on the class path too, before the library that it holds a part of.
      for (URL place : Collections.list(JarJourneyTest.class.getClassLoader().getResources(of))) {
        try (JarFile library = ((JarURLConnection) place.openConnection()).getJarFile()) {
          library.stream().map(JarEntry::getName).forEach(there::add);
        }
      }
    }
    Set<String> missing = new TreeSet<>();
    int left = 0;
    try (JarFile jar = new JarFile(BuiltJar.path().toFile())) {
      for (JarEntry entry : Collections.list(jar.entries())) {
        if (!entry.getName().endsWith(".class")) {
          continue;
        }
        byte[] bytes = jar.getInputStream(entry).readAllBytes();
        Matcher names = TRIMMED.matcher(new String(bytes, StandardCharsets.ISO_8859_1));
        while (names.find()) {
          String name = names.group().replace('.', '/') + ".class";
          if (there.contains(name) && jar.getEntry(name) == null) {
            missing.add(entry.getName() + " names " + name);
          }
        }
      }
      for (String name : there) {
        left += name.endsWith(".class") && jar.getEntry(name) == null ? 1 : 0;
      }
    }
    assertThat(missing).isEmpty();
    assertThat(left).as("classes that were left out").isGreaterThan(500);
  }

  @Test
  void the_jar_brings_sqlite_for_the_systems_that_are_served() throws IOException {
    try (JarFile jar = new JarFile(BuiltJar.path().toFile())) {
      assertThat(
              jar.stream()
                  .map(JarEntry::getName)
                  .filter(
                      name -> name.startsWith("org/sqlite/native/") && name.contains("sqlitejdbc"))
                  .map(name -> name.replaceAll("org/sqlite/native/|/[^/]*$", "")))
          .containsExactlyInAnyOrder(
              "Linux/aarch64",
              "Linux/armv7",
              "Linux/x86_64",
              "Linux-Musl/aarch64",
              "Linux-Musl/x86_64",
              "Mac/aarch64",
              "Mac/x86_64",
              "Windows/aarch64",
              "Windows/x86_64");
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
