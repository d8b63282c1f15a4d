package charline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.platform.engine.discovery.DiscoverySelectors.selectClass;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.ServiceLoader;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Disabled;
import org.junit.jupiter.api.Test;
import org.junit.platform.launcher.TestExecutionListener;
import org.junit.platform.launcher.core.LauncherConfig;
import org.junit.platform.launcher.core.LauncherDiscoveryRequestBuilder;
import org.junit.platform.launcher.core.LauncherFactory;

/** What the console says about tests that did not run. */
class SkippedTestsTest {
  /** Not run by the build, which leaves out classes in classes. */
  static class Boathouse {
    @Test
    void doors() {}

    @Test
    void slipway() {
      Assumptions.assumeTrue(false, "no water\nin the lake");
    }

    @Test
    @Disabled("no roof")
    void loft() {}
  }

  static class Jetty {
    @BeforeAll
    static void look() {
      Assumptions.assumeTrue(false, "no planks");
    }

    @Test
    void ladder() {}
  }

  private static List<String> said(Class<?>... classes) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    SkippedTests listener = new SkippedTests(new PrintStream(out, true, StandardCharsets.UTF_8));
    LauncherDiscoveryRequestBuilder request = LauncherDiscoveryRequestBuilder.request();
    for (Class<?> type : classes) {
      request.selectors(selectClass(type));
    }
    LauncherConfig alone =
        LauncherConfig.builder().enableTestExecutionListenerAutoRegistration(false).build();
    LauncherFactory.create(alone).execute(request.build(), listener);
    return out.toString(StandardCharsets.UTF_8).lines().toList();
  }

  @Test
  void each_test_that_was_skipped_has_its_reason_on_one_line() {
    assertThat(said(Boathouse.class))
        .containsExactlyInAnyOrder(
            "Skipped in charline.SkippedTestsTest$Boathouse: slipway()."
                + " Reason: Assumption failed: no water in the lake",
            "Skipped in charline.SkippedTestsTest$Boathouse: loft(). Reason: no roof");
  }

  @Test
  void a_class_that_was_skipped_whole_has_its_reason_on_one_line() {
    assertThat(said(Jetty.class))
        .containsExactly(
            "Skipped in charline.SkippedTestsTest$Jetty: all tests."
                + " Reason: Assumption failed: no planks");
  }

  @Test
  void the_build_finds_the_listener() {
    assertThat(ServiceLoader.load(TestExecutionListener.class))
        .hasAtLeastOneElementOfType(SkippedTests.class);
  }
}
