package charline.web;

import charline.answer.KeptFits;
import charline.log.Logbook;
import charline.refusal.Refusal;
import charline.web.live.LiveAnswers;
import charline.web.live.LiveModels;
import charline.web.pages.AllPages;
import charline.web.pages.PageOptions;
import charline.web.security.AccessFilter;
import charline.web.security.SlowSenders;
import io.javalin.Javalin;
import io.javalin.http.HandlerType;
import io.javalin.util.JavalinException;
import java.util.List;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.thread.QueuedThreadPool;

/** The bench page, being served. It closes without closing the log. */
public final class PageServer implements AutoCloseable {
  private static final long LARGEST_ENTRY = 64 * 1024;

  /** For how long the rest of an entry is waited for. */
  private static final long PATIENCE_SECONDS = 30;

  /** Enough for every paired device to send a photo and look at six. */
  private static final int MOST_THREADS = 300;

  private final Javalin javalin;
  private final LiveModels models;
  private final LiveAnswers answers;
  private final AllPages pages;
  private final AccessFilter door;

  private PageServer(
      Javalin javalin, LiveModels models, LiveAnswers answers, AllPages pages, AccessFilter door) {
    this.javalin = javalin;
    this.models = models;
    this.answers = answers;
    this.pages = pages;
    this.door = door;
  }

  /**
   * Serves a log.
   *
   * @throws Refusal if the port is taken
   */
  public static PageServer start(Logbook log, PageOptions options) {
    return start(log, options, KeptFits.inMemory());
  }

  /**
   * The same where the log may have been fitted before.
   *
   * @param kept fits from then, to which new ones are added
   * @throws Refusal if the port is taken
   */
  public static PageServer start(Logbook log, PageOptions options, KeptFits kept) {
    LiveModels models = new LiveModels(log, kept);
    LiveAnswers answers = new LiveAnswers(models, options.clock());
    AccessFilter door =
        new AccessFilter(
            options.shared(),
            options.clock(),
            options.announce(),
            log.file().resolveSibling(log.file().getFileName() + ".devices"));
    AllPages pages = new AllPages(log, models, answers, door, options);
    Javalin javalin =
        Javalin.create(
            config -> {
              config.startup.showJavalinBanner = false;
              config.startup.showOldJavalinVersionWarning = false;
              config.startup.startupWatcherEnabled = false;
              config.http.maxRequestSize = LARGEST_ENTRY;
              config.jetty.modifyHttpConfiguration(PageServer::quiet);
              config.jetty.threadPool = new QueuedThreadPool(MOST_THREADS);
              config.jetty.modifyServer(
                  server -> {
                    server.setErrorHandler(wordless());
                    SlowSenders.guard(server, 4 * LARGEST_ENTRY, PATIENCE_SECONDS);
                  });
              config.routes.before(door::check);
              pages.add(config.routes);
            });
    try {
      javalin.start(options.shared() ? "0.0.0.0" : "127.0.0.1", options.port());
    } catch (JavalinException e) {
      answers.close();
      models.close();
      throw Refusal.usage(
          "Port %d cannot be used (%s); choose another port."
              .formatted(options.port(), e.getMessage().lines().findFirst().orElse("taken")),
          e);
    }
    SlowSenders.limit(javalin.jettyServer().server());
    door.opened(javalin.port());
    return new PageServer(javalin, models, answers, pages, door);
  }

  private static void quiet(HttpConfiguration http) {
    http.setSendServerVersion(false);
    http.setSendXPoweredBy(false);
    http.setRequestHeaderSize(16 * 1024);
  }

  /** For requests that the server itself refuses: the status alone. */
  private static ErrorHandler wordless() {
    ErrorHandler handler = new ErrorHandler();
    handler.setShowStacks(false);
    handler.setShowCauses(false);
    handler.setShowMessageInTitle(false);
    handler.setShowOrigin(false);
    return handler;
  }

  public int port() {
    return javalin.port();
  }

  /** Where this machine finds the page. */
  public String address() {
    return "http://127.0.0.1:" + port() + "/";
  }

  /** Where paired devices find the page; empty unless shared. */
  public List<String> sharedAddresses() {
    return door.sharedHosts().stream().map(h -> "http://" + h + "/").toList();
  }

  /** The paths that are answered with GET, as they were added. */
  List<String> routes() {
    return javalin.unsafe.internalRouter.allHttpHandlers().stream()
        .map(parsed -> parsed.endpoint)
        .filter(endpoint -> endpoint.method.equals(HandlerType.GET))
        .map(endpoint -> endpoint.path)
        .toList();
  }

  @Override
  public void close() {
    javalin.stop();
    pages.close();
    answers.close();
    models.close();
  }
}
