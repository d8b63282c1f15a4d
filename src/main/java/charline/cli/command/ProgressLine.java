package charline.cli.command;

import charline.progress.WorkWatch;
import java.io.PrintStream;
import java.util.Locale;
import java.util.concurrent.TimeUnit;

/**
 * One line on a terminal that says what long work does and how far it is, from two seconds on. It
 * is gone before anything else is printed.
 */
public final class ProgressLine implements WorkWatch, AutoCloseable {
  private static final long FIRST_NANOS = TimeUnit.SECONDS.toNanos(2);
  private static final int PAUSE_MILLISECONDS = 250;
  private static final int WIDTH = 78;

  /** What work last said. */
  private record Stage(String doing, long done, long all) {
    String words(long seconds) {
      if (all > 0) {
        return String.format(
            Locale.ROOT, "%s: %,d of %,d (%d %%)", doing, done, all, 100 * done / all);
      }
      return done > 0
          ? String.format(Locale.ROOT, "%s: %,d", doing, done)
          : String.format(Locale.ROOT, "%s: %,d s", doing, seconds);
    }
  }

  private final PrintStream terminal;
  private volatile Stage stage;
  private long started;
  private long quietSince;
  private boolean paused;
  private int shown;
  private Thread watch;

  /**
   * @param doing what is done until the work itself says more
   */
  ProgressLine(PrintStream terminal, String doing) {
    this.terminal = terminal;
    stage = new Stage(doing, 0, 0);
  }

  /** Begins to watch, in a thread of its own that ends with the program. */
  synchronized void start() {
    started = System.nanoTime();
    quietSince = started;
    watch = new Thread(this::watch, "progress");
    watch.setDaemon(true);
    watch.start();
    Runtime.getRuntime().addShutdownHook(new Thread(this::clear));
  }

  private void watch() {
    try {
      while (true) {
        Thread.sleep(PAUSE_MILLISECONDS);
        tick(System.nanoTime());
      }
    } catch (InterruptedException e) {
      return;
    }
  }

  @Override
  public void at(String doing, long done, long all) {
    stage = new Stage(doing, done, all);
  }

  /** Shows how far it is, if it has been quiet for long enough. */
  synchronized void tick(long nanos) {
    if (paused || nanos - quietSince < FIRST_NANOS) {
      return;
    }
    String words = stage.words(TimeUnit.NANOSECONDS.toSeconds(nanos - started));
    String line = words + "; Ctrl-C stops it and changes nothing";
    line = line.length() > WIDTH ? words : line;
    line = line.length() > WIDTH ? line.substring(0, WIDTH - 3) + "..." : line;
    terminal.print("\r" + line + " ".repeat(Math.max(0, shown - line.length())));
    terminal.flush();
    shown = line.length();
  }

  /** Takes the line away: something else is printed now. */
  synchronized void clear(long nanos) {
    if (shown > 0) {
      terminal.print("\r" + " ".repeat(shown) + "\r");
      terminal.flush();
      shown = 0;
    }
    quietSince = nanos;
  }

  void clear() {
    clear(System.nanoTime());
  }

  /** Shows nothing for a while: somebody is asked, or a page is served. */
  synchronized void pause(boolean on) {
    clear();
    paused = on;
  }

  @Override
  public synchronized void close() {
    pause(true);
    if (watch != null) {
      watch.interrupt();
    }
  }
}
