package charline;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.io.IOException;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.jar.JarFile;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What the jar holds of the collections that Tablesaw stands on. */
class JarJourneyTest {
  private static final String COLLECTIONS = "it.unimi.dsi.fastutil.";

  @Test
  void every_collection_that_tablesaw_may_come_to_is_in_the_jar() throws IOException {
    try (JarFile jar = new JarFile(System.getProperty("charline.jar"))) {
      Set<String> needed = needed();
      assertThat(needed).hasSizeGreaterThan(1000);
      Set<String> missing =
          needed.stream()
              .filter(name -> jar.getEntry(name.replace('.', '/') + ".class") == null)
              .collect(Collectors.toSet());
      assertThat(missing).isEmpty();
    }
  }

  @Test
  void collections_that_nothing_comes_to_are_not_in_the_jar() throws IOException {
    try (JarFile jar = new JarFile(System.getProperty("charline.jar"))) {
      assertThat(jar.stream().filter(e -> e.getName().startsWith("it/unimi/")).count())
          .isBetween(1000L, 5000L);
    }
  }

  /**
   * Collections named in any class of Tablesaw, or in a collection that is needed itself. Read as
   * far as they are needed: there are ten thousand.
   */
  private static Set<String> needed() {
    Set<String> needed = new HashSet<>();
    JavaClasses open = new ClassFileImporter().importPackages("tech.tablesaw");
    while (!open.isEmpty()) {
      List<Class<?>> found =
          open.stream()
              .flatMap(c -> c.getDirectDependenciesFromSelf().stream())
              .map(d -> d.getTargetClass().getBaseComponentType().getName())
              .filter(name -> name.startsWith(COLLECTIONS) && needed.add(name))
              .<Class<?>>map(JarJourneyTest::load)
              .toList();
      open = new ClassFileImporter().importClasses(found);
    }
    return needed;
  }

  private static Class<?> load(String name) {
    try {
      return Class.forName(name, false, JarJourneyTest.class.getClassLoader());
    } catch (ClassNotFoundException e) {
      throw new AssertionError(e);
    }
  }
}
