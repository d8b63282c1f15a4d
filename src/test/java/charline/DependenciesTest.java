package charline;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Libraries that other libraries ask for and that the jar leaves out, since nothing here needs
 * them.
 */
class DependenciesTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "com.ibm.icu.text.CharsetDetector",
        "javax.annotation.Nullable",
        "org.checkerframework.checker.nullness.qual.Nullable",
        "com.google.errorprone.annotations.CanIgnoreReturnValue",
        "com.google.j2objc.annotations.Weak",
        "org.eclipse.jetty.ee10.annotations.AnnotationConfiguration",
        "org.eclipse.jetty.ee10.plus.webapp.PlusConfiguration",
        "org.eclipse.jetty.ee10.webapp.WebAppContext"
      })
  void what_is_left_out_is_not_there(String name) {
    assertThat(getClass().getClassLoader().getResource(name.replace('.', '/') + ".class")).isNull();
  }

  /** Tablesaw guesses encodings with ICU when it is given bytes; sheets reach it as text. */
  @Test
  void only_the_reading_of_bytes_would_need_the_library_of_encodings_and_nobody_asks_for_that() {
    Set<String> needing =
        new ClassFileImporter()
            .importPackages("tech.tablesaw").stream()
                .filter(c -> dependsOn(c, "com.ibm.icu."))
                .map(JavaClass::getName)
                .collect(Collectors.toSet());
    assertThat(needing).containsExactly("tech.tablesaw.io.Source");
    Set<String> given =
        new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .importPackages("charline")
                .stream()
                .flatMap(c -> c.getMethodCallsFromSelf().stream())
                .filter(
                    c -> c.getTargetOwner().getName().startsWith("tech.tablesaw.io.csv.CsvRead"))
                .filter(c -> c.getName().startsWith("builder"))
                .flatMap(c -> c.getTarget().getRawParameterTypes().stream())
                .map(JavaClass::getName)
                .collect(Collectors.toSet());
    assertThat(given).containsExactly("java.io.Reader");
  }

  /** Jetty loads it for web applications in folders, and Javalin has none. */
  @Test
  void only_a_class_that_nobody_loads_would_need_web_applications_in_folders() {
    Set<String> needing =
        new ClassFileImporter()
            .importPackages("io.javalin", "org.eclipse.jetty.ee10").stream()
                .filter(
                    c ->
                        dependsOn(c, "org.eclipse.jetty.ee10.annotations.")
                            || dependsOn(c, "org.eclipse.jetty.ee10.plus.")
                            || dependsOn(c, "org.eclipse.jetty.ee10.webapp."))
                .map(JavaClass::getName)
                .collect(Collectors.toSet());
    assertThat(needing)
        .containsExactly(
            "org.eclipse.jetty.ee10.websocket.server.config.JettyWebSocketConfiguration");
  }

  private static boolean dependsOn(JavaClass from, String prefix) {
    return from.getDirectDependenciesFromSelf().stream()
        .anyMatch(d -> d.getTargetClass().getName().startsWith(prefix));
  }
}
