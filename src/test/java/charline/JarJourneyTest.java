package charline;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
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
      Set<String> needed =
          needed(new ClassFileImporter().importPackages("tech.tablesaw", "it.unimi.dsi.fastutil"));
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

  /** Collections named in any class of Tablesaw, or in a collection that is needed itself. */
  private static Set<String> needed(JavaClasses classes) {
    Set<String> needed = new HashSet<>();
    Deque<JavaClass> open =
        classes.stream()
            .filter(c -> c.getPackageName().startsWith("tech.tablesaw"))
            .collect(Collectors.toCollection(ArrayDeque::new));
    while (!open.isEmpty()) {
      open.pop().getDirectDependenciesFromSelf().stream()
          .map(d -> d.getTargetClass().getBaseComponentType())
          .filter(c -> c.getName().startsWith(COLLECTIONS) && needed.add(c.getName()))
          .forEach(open::push);
    }
    return needed;
  }
}
