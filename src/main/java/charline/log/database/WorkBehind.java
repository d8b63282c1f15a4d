package charline.log.database;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Semaphore;

/**
 * Work that another thread does, in its order, while the one that asks for it prepares the next.
 * What goes wrong is told at a later call, and nothing after it is done.
 */
final class WorkBehind implements AutoCloseable {
  /** Few enough to hold little; enough that neither of the two often waits for the other. */
  private static final int MOST_WAITING = 8;

  private final Semaphore room = new Semaphore(MOST_WAITING);
  private final ExecutorService thread;
  private volatile Thread worker;
  private CompletableFuture<Void> last = CompletableFuture.completedFuture(null);

  WorkBehind() {
    thread =
        Executors.newSingleThreadExecutor(
            task -> {
              worker = new Thread(task, "writing");
              worker.setDaemon(true); // of a program that is stopped the change is undone
              return worker;
            });
  }

  /** Whether this is called from the work. */
  boolean isWithin() {
    return Thread.currentThread() == worker;
  }

  /** Has work done after that before it; throws what some of that threw. */
  void add(Runnable work) {
    if (last.isCompletedExceptionally()) {
      settle();
    }
    room.acquireUninterruptibly();
    last = last.thenRunAsync(work, thread).whenComplete((nothing, thrown) -> room.release());
  }

  /** Waits until all has been done; throws what some of it threw. */
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

  /** Waits until nothing is done any more, however it went. */
  void finish() {
    last.handle((nothing, thrown) -> null).join();
  }

  @Override
  public void close() {
    finish();
    thread.shutdown();
  }
}
