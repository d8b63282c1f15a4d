package charline.web.pages;

import charline.log.Logbook;
import charline.record.Photos;
import charline.web.entry.Entries;
import charline.web.entry.SampleForms;
import charline.web.entry.SetupForms;
import charline.web.entry.Uploads;
import charline.web.live.LiveAnswers;
import charline.web.live.LiveModels;
import charline.web.live.PriorTexts;
import charline.web.security.AccessFilter;
import io.javalin.config.RoutesConfig;

/** Every page of the bench. */
public final class AllPages implements AutoCloseable {
  private final Logbook log;
  private final LiveModels models;
  private final LiveAnswers answers;
  private final AccessFilter door;
  private final PageOptions options;
  private final Uploads uploads;

  public AllPages(
      Logbook log, LiveModels models, LiveAnswers answers, AccessFilter door, PageOptions options) {
    this.log = log;
    this.models = models;
    this.answers = answers;
    this.door = door;
    this.options = options;
    uploads = new Uploads(options.clock());
  }

  /** Lets go of the files that devices sent. */
  @Override
  public void close() {
    uploads.close();
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
    Asking asking = new Asking(models, new PriorTexts());
    new PatchAmendPages(log, models, person, pages).add(routes);
    new BoardPages(log, models, pages).add(routes);
    new RigPages(log, answers, options, pages).add(routes);
    new LogPages(log, models, uploads, pages).add(routes);
    new ImportPages(log, uploads, options, pages).add(routes);
    new ExportPages(log, uploads, options).add(routes);
    new MergePages(log, uploads, options, pages).add(routes);
    AnswerPages before = new AnswerPages(models, answers, options, asking, pages);
    new WindowPages(before, models, answers, options, asking, pages).add(routes);
    new SheetPages(log, before, options, asking, pages).add(routes);
    new NextPages(log, models, answers, before, asking, options, pages).add(routes);
    new ModelPages(answers, before, asking, options, pages).add(routes);
    new ComparePages(log, models, answers, before, options, pages).add(routes);
    new QuotePages(before, asking, pages).add(routes);
    new HomePages(log, models, answers, options, pages).add(routes);
    new FinishPages(log, new SampleForms(log), person, pages).add(routes);
    new SetUpPages(log, models, new SetupForms(log, clock), person, pages).add(routes);
    new PutRightPages(log, person, pages).add(routes);
  }
}
