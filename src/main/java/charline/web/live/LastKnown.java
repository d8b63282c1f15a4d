package charline.web.live;

import charline.refusal.Refusal;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * Answers that cost seconds, each computed once per state of the log: the newest where it is there,
 * else the last known one while the newest is computed. Of the answers, those asked for last are
 * kept.
 *
 * @param <K> what is asked
 * @param <V> the answer
 */
public final class LastKnown<K, V> {
  private final Executor worker;
  private final Supplier<String> state;
  private final Function<K, V> work;
  private final Map<K, Slot<V>> slots;

  /**
   * @param most how many answers are kept
   * @param state differs whenever an answer may
   * @param work computes an answer from what the log holds when it begins; may refuse
   */
  LastKnown(Executor worker, int most, Supplier<String> state, Function<K, V> work) {
    this.worker = worker;
    this.state = state;
    this.work = work;
    slots =
        new LinkedHashMap<>(16, 0.75f, true) {
          private static final long serialVersionUID = 1L;

          @Override
          protected boolean removeEldestEntry(Map.Entry<K, Slot<V>> eldest) {
            return size() > most;
          }
        };
  }

  /**
   * What is known of a question.
   *
   * @param value the newest answer that is ready; empty where none ever was
   * @param renewing true while a newer one is computed
   */
  public record Known<V>(Optional<V> value, boolean renewing) {}

  /**
   * An answer, done or under way.
   *
   * @param state of the log that it was asked in
   * @param begun whether it is under way
   * @param task computes it, unless it is under way already
   * @param before the answer before it, as far as it is known, else the one under way
   */
  private record Slot<V>(
      String state,
      AtomicBoolean begun,
      Runnable task,
      CompletableFuture<V> now,
      Supplier<Optional<V>> before) {
    Optional<V> newest() {
      return now.isDone() && !now.isCompletedExceptionally()
          ? Optional.of(now.join())
          : before.get();
    }
  }

  /**
   * The answer to a question.
   *
   * @param patience how long to wait for the newest before an older one will do
   * @throws Refusal if the newest is that the question cannot be answered
   */
  public Known<V> of(K key, Duration patience) {
    long deadline = System.nanoTime() + patience.toNanos();
    while (true) {
      Slot<V> slot = slot(key);
      try {
        long left = Math.max(0, deadline - System.nanoTime());
        return new Known<>(Optional.of(slot.now().get(left, TimeUnit.NANOSECONDS)), false);
      } catch (CancellationException e) {
        // The log has changed meanwhile: what is computed from it now has the time that is left.
      } catch (TimeoutException e) {
        return new Known<>(slot.before().get(), true);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return new Known<>(slot.before().get(), true);
      } catch (ExecutionException e) {
        if (e.getCause() instanceof Refusal refusal) {
          throw refusal;
        }
        throw new IllegalStateException("An answer could not be computed.", e.getCause());
      }
    }
  }

  private synchronized Slot<V> slot(K key) {
    String now = state.get();
    Slot<V> known = slots.get(key);
    if (known != null && known.state().equals(now)) {
      if (!known.begun().get()) {
        worker.execute(known.task()); // whoever asks again is not behind those who asked since
      }
      return known;
    }
    AtomicBoolean begun = new AtomicBoolean();
    CompletableFuture<V> answer = new CompletableFuture<>();
    Runnable task =
        () -> {
          if (begun.compareAndSet(false, true)) {
            answer.completeAsync(() -> work.apply(key), Runnable::run);
          }
        };
    Slot<V> fresh = new Slot<>(now, begun, task, answer, before(known));
    slots.put(key, fresh);
    worker.execute(task);
    if (known != null && !known.begun().get()) {
      known.now().cancel(false);
    }
    return fresh;
  }

  /** What is done is kept itself, so that no chain of earlier answers grows. */
  private static <V> Supplier<Optional<V>> before(Slot<V> known) {
    if (known == null) {
      return Optional::empty;
    }
    if (known.now().isDone() || !known.begun().get()) {
      Optional<V> newest = known.newest();
      return () -> newest;
    }
    return known::newest;
  }
}
