package charline;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.platform.engine.TestExecutionResult;
import org.junit.platform.engine.support.descriptor.ClassSource;
import org.junit.platform.engine.support.descriptor.MethodSource;
import org.junit.platform.launcher.TestExecutionListener;
import org.junit.platform.launcher.TestIdentifier;
import org.junit.platform.launcher.TestPlan;

/**
 * Prints which tests were skipped and why, one line for each class and reason, when all have run.
 * The build's own reports count them and leave the reason to a file.
 */
public final class SkippedTests implements TestExecutionListener {
  private final PrintStream out;

  /** Names of tests by class and reason. */
  private final Map<String, Map<String, List<String>>> skipped = new LinkedHashMap<>();

  /** As the test platform makes it, for the console. */
  public SkippedTests() {
    this(System.out);
  }

  SkippedTests(PrintStream out) {
    this.out = out;
  }

  @Override
  public void executionSkipped(TestIdentifier test, String reason) {
    add(test, reason);
  }

  @Override
  public void executionFinished(TestIdentifier test, TestExecutionResult result) {
    if (result.getStatus() == TestExecutionResult.Status.ABORTED) {
      add(test, result.getThrowable().map(Throwable::getMessage).orElse("no reason given"));
    }
  }

  @Override
  public void testPlanExecutionFinished(TestPlan plan) {
    lines().forEach(out::println);
    skipped.clear();
  }

  private synchronized void add(TestIdentifier test, String reason) {
    skipped
        .computeIfAbsent(className(test), c -> new LinkedHashMap<>())
        .computeIfAbsent(reason.strip().replaceAll("\\s+", " "), r -> new ArrayList<>())
        .add(test.isTest() ? test.getDisplayName() : "all tests");
  }

  private synchronized List<String> lines() {
    List<String> lines = new ArrayList<>();
    skipped.forEach(
        (type, reasons) ->
            reasons.forEach(
                (reason, tests) ->
                    lines.add(
                        "Skipped in %s: %s. Reason: %s"
                            .formatted(type, String.join(", ", tests), reason))));
    return lines;
  }

  private static String className(TestIdentifier test) {
    return test.getSource()
        .map(
            source ->
                source instanceof MethodSource method
                    ? method.getClassName()
                    : source instanceof ClassSource type ? type.getClassName() : source.toString())
        .orElse(test.getDisplayName());
  }
}
