package charline.web.pages;

import charline.answer.Precautions;
import charline.log.Change;
import charline.log.Logbook;
import charline.record.SampleEntries;
import charline.refusal.Refusal;
import charline.trial.Coat;
import charline.trial.Finish;
import charline.trial.Sample;
import charline.trial.Tone;
import charline.web.entry.SampleForms;
import charline.web.security.HttpRefusal;
import charline.wording.NoBeamText;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** The page of one finish: poison and fire in its coats, and what they were tested for. */
public final class FinishPages {
  private final Logbook log;
  private final SampleForms forms;
  private final String person;
  private final Pages pages;

  FinishPages(Logbook log, SampleForms forms, String person, Pages pages) {
    this.log = log;
    this.forms = forms;
    this.person = person;
    this.pages = pages;
  }

  void add(RoutesConfig routes) {
    routes.get("/finish", ctx -> show(ctx, "", false));
    routes.post("/finish/sample", taking(forms::sample));
    routes.get("/finish/sample", ctx -> sample(ctx, "", false));
    routes.post("/finish/amend", this::amend);
    routes.post("/finish/void", taking(forms::takeOut));
  }

  /**
   * The page's content.
   *
   * @param known what must be known of it before the beam is on
   * @param samples results about it, and those of whole jobs
   * @param trouble why the last thing asked was refused, blank if nothing was
   * @param doubtful true if the person may say that they are sure
   * @param given what was typed in the refused form
   * @param today the day that a new result has at first
   */
  public record FinishView(
      Finish finish,
      Precautions known,
      List<Sample> samples,
      List<String> substances,
      String trouble,
      boolean doubtful,
      Map<String, String> given,
      LocalDate today) {
    /** What a field of the form shows at first. */
    public String given(String field) {
      return given.getOrDefault(field, "");
    }

    /** The finish as part of an address. */
    public String link() {
      return Links.escaped(finish.name());
    }

    /** Poison and fire in short. */
    public String poison() {
      return PoisonLine.of(known);
    }

    /** What to do where the beam stays off. */
    public String nextStep() {
      return NoBeamText.nextStep(known.bars(), "the form below");
    }

    /** "pale pvc film over filler". */
    public String coats() {
      return finish.coats().isEmpty()
          ? "Coats not recorded"
          : finish.coats().stream().map(FinishView::coat).collect(Collectors.joining(" over "));
    }

    private static String coat(Coat coat) {
      return coat.tone().map(Tone::word).map(tone -> tone + " ").orElse("") + coat.name();
    }
  }

  private Finish finish(Context ctx) {
    try {
      return log.finish(Optional.ofNullable(ctx.queryParam("name")).orElse(""));
    } catch (Refusal e) {
      throw HttpRefusal.notThere(e.getMessage());
    }
  }

  private Handler taking(SampleForms.Work work) {
    return ctx -> {
      Finish finish = finish(ctx);
      new SentForm(ctx, person)
          .take(
              by -> work.take(finish, ctx::formParam, by),
              (trouble, doubtful) -> show(ctx, trouble, doubtful),
              () -> "/finish?name=" + Links.escaped(finish.name()));
    };
  }

  /**
   * One result that is put right.
   *
   * @param given what its form shows
   */
  public record SampleView(
      Finish finish,
      Sample sample,
      List<String> substances,
      List<Change> history,
      String trouble,
      boolean doubtful,
      Map<String, String> given) {
    /** What a field of the form shows. */
    public String given(String field) {
      return given.getOrDefault(field, "");
    }
  }

  private void amend(Context ctx) {
    Finish finish = finish(ctx);
    new SentForm(ctx, person)
        .take(
            by -> forms.amend(finish, ctx::formParam, by),
            (trouble, doubtful) -> sample(ctx, trouble, doubtful),
            () -> "/finish?name=" + Links.escaped(finish.name()));
  }

  private void sample(Context ctx, String trouble, boolean doubtful) {
    Finish finish = finish(ctx);
    String code = Optional.ofNullable(ctx.formParam("sample")).orElse(Asking.text(ctx, "sample"));
    Sample sample;
    try {
      sample = log.samples().byCode(code);
    } catch (Refusal e) {
      throw HttpRefusal.notThere(e.getMessage());
    }
    pages.send(
        ctx,
        "sample",
        pages.frame(ctx, "Sample " + sample.code(), "/set-up", "work.css", "refusal.js"),
        Map.of(
            "view",
            new SampleView(
                finish,
                sample,
                SampleEntries.usual(log),
                log.samples().history(sample),
                trouble,
                doubtful,
                trouble.isEmpty() ? shown(sample) : SentForm.given(ctx))));
  }

  private static Map<String, String> shown(Sample sample) {
    Map<String, String> shown = new HashMap<>();
    shown.put("substance", sample.substance());
    shown.put("result", sample.result().word());
    shown.put("on", sample.takenOn().toString());
    shown.put("tested_by", sample.testedBy().orElse(""));
    shown.put("reference", sample.reference().orElse(""));
    shown.put("value", sample.value().orElse(""));
    shown.put("note", sample.note().orElse(""));
    shown.put("job", sample.job().orElse(""));
    shown.put("whole_job", sample.finish().isEmpty() ? "true" : "");
    return shown;
  }

  private void show(Context ctx, String trouble, boolean doubtful) {
    Finish finish = finish(ctx);
    Map<String, String> given = trouble.isEmpty() ? Map.of() : SentForm.given(ctx);
    List<Sample> samples =
        log.samples().standing().stream()
            .filter(s -> s.finish().map(own -> own.id().equals(finish.id())).orElse(true))
            .toList();
    pages.send(
        ctx,
        "finish",
        pages.frame(ctx, finish.name(), "/set-up", "refusal.js"),
        Map.of(
            "view",
            new FinishView(
                finish,
                Precautions.of(log, finish),
                samples,
                SampleEntries.usual(log),
                trouble,
                doubtful,
                given,
                log.now().toLocalDate())));
  }
}
