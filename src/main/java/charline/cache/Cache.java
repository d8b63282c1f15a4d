package charline.cache;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

/**
 * Values that were computed before, in files that may be deleted at any time. Whatever is wrong
 * with the folder or a file, the value is computed as if there were none.
 */
public final class Cache implements AutoCloseable {
  /** Keeps nothing. */
  public static final Cache NONE = new Cache(Optional.empty(), Map.of(), new CompletableFuture<>());

  private static final long MOST_BYTES = 128L << 20;
  private static final long LONGEST_WAIT_SECONDS = 5;

  /** Each value holds megabytes, and writing them may take longer than finding them. */
  private static final int MOST_WAITING = 64;

  /** Looking through the folder takes longer than writing one file. */
  private static final int WRITTEN_BETWEEN = 64;

  private final Optional<CacheFolder> folder;
  private final Map<Class<?>, Form<?, ?>> forms;
  private final Map<String, Object> toWrite = new ConcurrentHashMap<>();
  private final Semaphore roomToWait = new Semaphore(MOST_WAITING);
  private final CompletableFuture<byte[]> build;
  private ExecutorService writer;

  /** Of the thread that writes. */
  private int written;

  private volatile boolean broken;

  private Cache(
      Optional<CacheFolder> folder,
      Map<Class<?>, Form<?, ?>> forms,
      CompletableFuture<byte[]> build) {
    this.folder = folder;
    this.forms = forms;
    this.build = build;
  }

  /**
   * Values in a folder, which is made when the first is kept.
   *
   * @param forms of classes that are no records
   */
  public static Cache in(Path folder, List<Form<?, ?>> forms) {
    return in(folder, forms, MOST_BYTES);
  }

  static Cache in(Path folder, List<Form<?, ?>> forms, long mostBytes) {
    Map<Class<?>, Form<?, ?>> byType = new HashMap<>();
    forms.forEach(form -> byType.put(form.type(), form));
    return new Cache(
        Optional.of(new CacheFolder(folder, mostBytes)),
        byType,
        CompletableFuture.supplyAsync(Cache::thisBuild));
  }

  /** The same as another build of the program would have it. */
  Cache of(String otherBuild) {
    return new Cache(folder, forms, CompletableFuture.completedFuture(digest(otherBuild)));
  }

  /** Found out beside the reading of a log, which comes before the first question. */
  private static byte[] thisBuild() {
    try {
      return digest(BuildMark.ofThisBuild());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static byte[] digest(String build) {
    return Basis.sha256().digest(build.getBytes(StandardCharsets.UTF_8));
  }

  /**
   * A value, from before where it is kept.
   *
   * @param what is computed, in one word; the same word always means the same work
   * @param from all that it is computed from
   * @param work computes it, and hangs on nothing else
   */
  public <T> T get(String what, Basis from, Class<T> type, Supplier<T> work) {
    if (folder.isEmpty() || broken) {
      return work.get();
    }
    Optional<String> name = name(what, from);
    Optional<T> kept = name.flatMap(n -> kept(n, from)).filter(type::isInstance).map(type::cast);
    if (kept.isPresent()) {
      return kept.get();
    }
    T value = work.get();
    name.ifPresent(n -> keep(n, from, value));
    return value;
  }

  private Optional<String> name(String what, Basis from) {
    try {
      MessageDigest sum = Basis.sha256();
      sum.update(build.join());
      sum.update(what.getBytes(StandardCharsets.UTF_8));
      sum.update((byte) 0);
      return Optional.of(HexFormat.of().formatHex(sum.digest(from.digest())));
    } catch (RuntimeException e) {
      broken = true; // a build that cannot be told from others
      return Optional.empty();
    }
  }

  private Optional<Object> kept(String name, Basis from) {
    Object waiting = toWrite.get(name);
    if (waiting != null) {
      return Optional.of(waiting);
    }
    try {
      return folder
          .orElseThrow()
          .read(name)
          .map(bytes -> new ValueReader(bytes, new Seen(from.seen()), forms).read());
    } catch (RuntimeException | LinkageError e) {
      return Optional.empty();
    }
  }

  private void keep(String name, Basis from, Object value) {
    roomToWait.acquireUninterruptibly();
    if (!handOver(name, from, value)) {
      roomToWait.release();
    }
  }

  /** Hands a value over to the thread that writes, unless all was written and that has ended. */
  private synchronized boolean handOver(String name, Basis from, Object value) {
    if (writer == null) {
      writer =
          Executors.newSingleThreadExecutor(
              task -> {
                Thread thread = new Thread(task, "keeping");
                thread.setDaemon(true);
                return thread;
              });
    }
    if (writer.isShutdown()) {
      return false;
    }
    toWrite.put(name, value);
    writer.execute(() -> write(name, from, value));
    return true;
  }

  private void write(String name, Basis from, Object value) {
    try {
      if (!broken) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        new ValueWriter(bytes, new Seen(from.seen()), forms, false).write(value);
        folder.orElseThrow().write(name, bytes.toByteArray());
        if (++written % WRITTEN_BETWEEN == 0) {
          folder.orElseThrow().makeRoom();
        }
      }
    } catch (IOException | RuntimeException e) {
      broken = true; // a full disk, or a folder of somebody else: nothing is kept from now on
    } finally {
      toWrite.remove(name);
      roomToWait.release();
    }
  }

  /** Writes what is to be kept, for some seconds at most; to be called when the answer is out. */
  @Override
  public synchronized void close() {
    if (writer == null || writer.isShutdown()) {
      return;
    }
    writer.execute(this::makeRoom);
    writer.shutdown();
    try {
      writer.awaitTermination(LONGEST_WAIT_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void makeRoom() {
    try {
      if (written > 0) {
        folder.orElseThrow().makeRoom();
      }
    } catch (IOException | RuntimeException e) {
      broken = true;
    }
  }
}
