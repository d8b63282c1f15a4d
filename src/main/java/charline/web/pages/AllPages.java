package charline.web.pages;

import charline.log.Logbook;
import charline.record.Photos;
import charline.web.BenchOptions;
import charline.web.entry.Entries;
import charline.web.entry.SetUps;
import charline.web.live.LiveModels;
import charline.web.security.Door;
import io.javalin.config.RoutesConfig;

/** Every page of the bench. */
public final class AllPages {
  private final Logbook log;
  private final LiveModels models;
  private final Door door;
  private final BenchOptions options;

  public AllPages(Logbook log, LiveModels models, Door door, BenchOptions options) {
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
    new Troubles(pages, options.faults()).add(routes);
    Assets.add(routes);
    new DoorPages(door, pages, clock).add(routes);
    new RecordPages(log, models, clock, person, pages).add(routes);
    new EntryPages(new Entries(log, clock), new Photos(log, clock), person).add(routes);
    new AskPages(log, models, clock, pages).add(routes);
    new PatchPages(log, pages, person).add(routes);
    new WindowPages(log, models, clock, options.version(), pages).add(routes);
    new SetUpPages(log, models, new SetUps(log, clock), person, pages).add(routes);
  }
}
