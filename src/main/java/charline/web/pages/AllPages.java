package charline.web.pages;

import charline.log.Logbook;
import charline.record.Photos;
import charline.web.entry.Entries;
import charline.web.entry.SampleForms;
import charline.web.entry.SetupForms;
import charline.web.live.LiveModels;
import charline.web.security.AccessFilter;
import io.javalin.config.RoutesConfig;

/** Every page of the bench. */
public final class AllPages {
  private final Logbook log;
  private final LiveModels models;
  private final AccessFilter door;
  private final PageOptions options;

  public AllPages(Logbook log, LiveModels models, AccessFilter door, PageOptions options) {
    this.log = log;
    this.models = models;
    this.door = door;
    this.options = options;
  }

  /** Adds them to a server. */
  public void add(RoutesConfig routes) {
    var clock = options.clock();
    String person = options.person();
    Pages pages = new Pages(options.shared());
    new ErrorPages(pages, options.faults()).add(routes);
    Assets.add(routes);
    new PairingPages(door, pages, clock).add(routes);
    new RecordPages(log, models, clock, person, pages).add(routes);
    new EntryPages(new Entries(log, clock), new Photos(log, clock), person).add(routes);
    new AskPages(log, models, clock, person, pages).add(routes);
    new PatchPages(log, pages, person).add(routes);
    WindowPages windows = new WindowPages(log, models, clock, options.version(), pages);
    windows.add(routes);
    new HomePages(log, models, windows, clock, pages).add(routes);
    new QuotePages(windows, new Asking(models), pages).add(routes);
    new FinishPages(log, new SampleForms(log), person, pages).add(routes);
    new SetUpPages(log, models, new SetupForms(log, clock), person, pages).add(routes);
    new PutRightPages(log, person, pages).add(routes);
  }
}
