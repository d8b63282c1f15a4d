package charline.web;

import charline.fault.FaultFiles;
import charline.log.Logbook;
import charline.web.pages.PageOptions;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;

/**
 * A bench page served by the test's own process, which is warm: the visits start at once. That the
 * jar serves the same is for {@link BenchProcess} to show.
 */
final class BenchHere implements ServedBench {
  private final Path file;
  private final Logbook log;
  private final PageServer server;
  private final boolean shared;
  private String code = "";

  private BenchHere(Path file, int port, boolean shared) {
    this.file = file;
    this.shared = shared;
    Clock clock = Clock.systemDefaultZone();
    log = Logbook.open(file, clock);
    server =
        PageServer.start(
            log,
            new PageOptions(
                port,
                shared,
                "Runa",
                "test",
                clock,
                announced -> code = announced,
                Duration.ofMinutes(2),
                new FaultFiles(file.resolveSibling("faults"), "test")));
  }

  /** Serves a log on a free port. */
  static BenchHere serve(Path file) {
    return new BenchHere(file, 0, false);
  }

  /** The same for other devices too. */
  static BenchHere shared(Path file) {
    return new BenchHere(file, 0, true);
  }

  @Override
  public int port() {
    return server.port();
  }

  @Override
  public String code() {
    return code;
  }

  @Override
  public BenchHere again() {
    int port = port();
    close();
    return new BenchHere(file, port, shared);
  }

  @Override
  public void close() {
    server.close();
    log.close();
  }
}
