package charline.log.database;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Semaphore;

/**
 * Statements that another thread runs, in their order, while the one that asks for them works out
 * the next. What goes wrong is told at a later call, and nothing after it is run.
 */
final class WritesBehind implements AutoCloseable {
  /** Few enough to hold little; enough for the rows of some dozens of patches. */
  private static final int MOST_WAITING = 32;

  private final Runner runner;
  private final Semaphore room = new Semaphore(MOST_WAITING);
  private final ExecutorService thread =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread writing = new Thread(task, "writing");
            writing.setDaemon(true); // of a program that is stopped the change is undone
            return writing;
          });
  private CompletableFuture<Void> last = CompletableFuture.completedFuture(null);

  /** Runs a statement. */
  interface Runner {
    void run(String sql, Object... values);
  }

  WritesBehind(Runner runner) {
    this.runner = runner;
  }

  /** Has a statement run after those before it; throws what one of them threw. */
  void add(String sql, Object... values) {
    if (last.isCompletedExceptionally()) {
      settle();
    }
    room.acquireUninterruptibly();
    last =
        last.thenRunAsync(() -> runner.run(sql, values), thread)
            .whenComplete((nothing, thrown) -> room.release());
  }

  /** Waits until all have been run; throws what one of them threw. */
  void settle() {
    try {
      last.join();
    } catch (CompletionException e) {
      if (e.getCause() instanceof RuntimeException thrown) {
        throw thrown;
      }
      throw e;
    }
  }

  /** Waits until nothing is run any more, however it went. */
  void finish() {
    last.handle((nothing, thrown) -> null).join();
  }

  @Override
  public void close() {
    finish();
    thread.shutdown();
  }
}
