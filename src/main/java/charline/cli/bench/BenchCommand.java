package charline.cli.bench;

import charline.answer.KeptFits;
import charline.cli.command.LogCommand;
import charline.cli.command.Release;
import charline.cli.command.TypedValues;
import charline.log.Logbook;
import charline.web.PageServer;
import charline.web.pages.PageOptions;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code bench}. */
@Command(
    addMethodSubcommands = false,
    name = "bench",
    header = "Serve the bench page for a phone or tablet.",
    description =
        "Record patches, ask questions, see windows and print sheets in a browser. Only this"
            + " machine can open the page; with --share, so can devices on your network that you"
            + " pair with the code shown here. Traffic is not encrypted, so share on your own"
            + " network only. Speeds on the page are in mm/s, doses in J/cm2. Stop it with Ctrl-C.",
    footer = {"", "Example:", "  charline bench --share"})
public final class BenchCommand extends LogCommand {
  private static final int LAST_PORT = 65535;

  @Option(
      names = "--port",
      paramLabel = "PORT",
      defaultValue = "7464",
      description = "Port to serve on. Default: 7464; 0 picks a free one.")
  private String port;

  @Option(names = "--share", description = "Let paired devices on your network open the page.")
  private boolean share;

  @Option(
      names = "--by",
      paramLabel = "WHO",
      description =
          "Name on records from devices that give none. Default: $$CHARLINE_BY, else your login"
              + " name.")
  private String by;

  @Override
  public Integer call() throws InterruptedException {
    int chosen = port();
    try (Logbook log = desk.logToWrite()) {
      PageOptions options =
          new PageOptions(
              chosen,
              share,
              desk.person(by),
              Release.version(),
              desk.clock(),
              code -> announce("Pairing code, for one device and ten minutes: " + code),
              PageOptions.PATIENCE,
              desk.faultFiles());
      try (PageServer server = PageServer.start(log, options, desk.kept())) {
        announce("The bench page of " + desk.logFile() + " is at " + server.address());
        server.sharedAddresses().forEach(a -> announce("  for paired devices: " + a));
        desk.serve();
        announce("Press Ctrl-C to stop.");
        waitForTheEnd(server, log, desk.kept());
      }
    }
    return DONE;
  }

  /** Runs until the process is asked to stop, then closes the log. */
  private static void waitForTheEnd(PageServer server, Logbook log, KeptFits kept)
      throws InterruptedException {
    Runtime.getRuntime()
        .addShutdownHook(
            new Thread(
                () -> {
                  server.close();
                  log.close();
                  kept.close();
                }));
    new CountDownLatch(1).await();
  }

  private void announce(String line) {
    desk.out().println(line);
    desk.out().flush();
  }

  private int port() {
    String text = port.strip();
    if (!text.matches("\\d{1,5}") || Integer.parseInt(text) > LAST_PORT) {
      throw TypedValues.refused(
          "--port", "the port must be a number up to 65535, not \"%s\".".formatted(port));
    }
    return Integer.parseInt(text);
  }
}
