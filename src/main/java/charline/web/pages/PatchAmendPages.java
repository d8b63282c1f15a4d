package charline.web.pages;

import charline.log.Change;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.DoseKnobs;
import charline.trial.Finish;
import charline.trial.Knob;
import charline.trial.Mark;
import charline.trial.Rig;
import charline.web.entry.PatchForms;
import charline.web.live.LiveModels;
import charline.web.live.LogSnapshot;
import charline.web.pages.PutRightPages.Field;
import charline.web.security.HttpRefusal;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** The page where a patch and its readings are put right, with their history. */
public final class PatchAmendPages {
  private final Logbook log;
  private final LiveModels models;
  private final PatchForms forms;
  private final String person;
  private final Pages pages;

  PatchAmendPages(Logbook log, LiveModels models, String person, Pages pages) {
    this.log = log;
    this.models = models;
    this.person = person;
    this.pages = pages;
    forms = new PatchForms(log);
  }

  void add(RoutesConfig routes) {
    routes.get("/patch/{code}/amend", ctx -> show(ctx, "", false));
    routes.post("/patch/{code}/amend", this::amend);
    routes.post("/patch/{code}/bring-back", this::bringBack);
  }

  /**
   * The page's content.
   *
   * @param groups fields by what they are about
   * @param readings fields of each reading
   * @param trouble why it was not taken, blank if it was not refused
   * @param doubtful true if the person may say that they are sure
   */
  public record AmendView(
      PatchEntry entry,
      List<Group> groups,
      List<ReadingFields> readings,
      List<Change> history,
      String trouble,
      boolean doubtful) {}

  /** Fields of one kind. */
  public record Group(String title, List<Field> fields, boolean open) {}

  /**
   * Fields of one reading.
   *
   * @param number its place, from 0
   * @param marks what was seen, as marks with a plus between
   */
  public record ReadingFields(int number, String title, String marks, List<Field> fields) {
    /** Whether it shows a mark. */
    public boolean shows(Mark mark) {
      return Arrays.asList(marks.split("\\+")).contains(mark.word());
    }
  }

  private PatchEntry entry(Context ctx) {
    try {
      return log.patch(ctx.pathParam("code"));
    } catch (Refusal e) {
      throw HttpRefusal.notThere(e.getMessage());
    }
  }

  private static String sent(Context ctx, String name) {
    List<String> all = ctx.formParams(name);
    return all.isEmpty() ? null : String.join("+", all);
  }

  private void amend(Context ctx) {
    PatchEntry entry = entry(ctx);
    new SentForm(ctx, person)
        .take(
            by -> forms.amend(entry, name -> sent(ctx, name), by),
            (trouble, doubtful) -> show(ctx, trouble, doubtful),
            () -> Links.patch(entry.patch().code()));
  }

  private void bringBack(Context ctx) {
    PatchEntry entry = entry(ctx);
    new SentForm(ctx, person)
        .take(
            by -> forms.bringBack(entry, ctx::formParam, by),
            (trouble, doubtful) -> show(ctx, trouble, doubtful),
            () -> Links.patch(entry.patch().code()));
  }

  private void show(Context ctx, String trouble, boolean doubtful) {
    PatchEntry entry = entry(ctx);
    Map<String, String> values = PatchForms.shown(entry);
    if (!ctx.formParams("rig").isEmpty()) {
      values.replaceAll(
          (name, shown) -> {
            String sent = sent(ctx, name);
            return sent == null ? "" : sent;
          });
    }
    List<ReadingFields> readings = new ArrayList<>();
    for (int i = 0; i < entry.patch().readings().size(); i++) {
      readings.add(reading(i, entry, values));
    }
    pages.send(
        ctx,
        "patch-amend",
        pages.frame(
            ctx, "Put " + entry.patch().code() + " right", "/ask", "work.css", "refusal.js"),
        Map.of(
            "view",
            new AmendView(
                entry,
                groups(values),
                readings,
                log.history(entry.patch().code()).stream().filter(c -> !c.isEcho()).toList(),
                trouble,
                doubtful)));
  }

  private List<Group> groups(Map<String, String> values) {
    LogSnapshot shelf = models.shelf();
    List<Field> place =
        List.of(
            choice("board", "Board", values, shelf.boards().stream().map(Board::name)),
            choice("finish", "Finish", values, shelf.finishes().stream().map(Finish::name)),
            choice("rig", "Rig", values, shelf.rigs().stream().map(Rig::name)));
    List<Field> settings = new ArrayList<>();
    settings.add(number("power", "Power", values));
    settings.add(choice("power_unit", "Power given in", values, Stream.of("%", "W")));
    settings.add(
        choice("form", "Speed by", values, Arrays.stream(DoseKnobs.values()).map(DoseKnobs::key)));
    Knob.SETTINGS.forEach(knob -> settings.add(field(knob, values)));
    return List.of(
        new Group("Place", place, true),
        new Group("Settings", settings, true),
        new Group(
            "Figure, place, rest",
            Knob.CIRCUMSTANCES.stream().map(knob -> field(knob, values)).toList(),
            Knob.CIRCUMSTANCES.stream().anyMatch(k -> !values.get(k.key()).isEmpty())),
        new Group(
            "When, who, note",
            List.of(
                text("burned_at", "Burned at", values),
                text("burned_by", "Burned by", values),
                text("note", "Note on the patch", values)),
            true));
  }

  private static ReadingFields reading(int i, PatchEntry entry, Map<String, String> values) {
    int passes = entry.patch().readings().get(i).passes();
    return new ReadingFields(
        i,
        "Reading after %d %s".formatted(passes, passes == 1 ? "pass" : "passes"),
        values.get("outcome" + i),
        List.of(
            number("passes" + i, "Passes", values),
            new Field(
                "soot" + i,
                "Soot wiped off",
                values.get("soot" + i),
                false,
                false,
                List.of("", "yes", "no")),
            number("depth" + i, "Depth removed, µm", values),
            text("at" + i, "Judged at", values),
            text("by" + i, "Judged by", values),
            text("note" + i, "Note", values)));
  }

  private static Field field(Knob knob, Map<String, String> values) {
    String unit = knob.unit().isEmpty() ? "" : ", " + knob.printedUnit();
    if (!knob.answers().isEmpty()) {
      return new Field(
          knob.key(),
          knob.words(),
          values.get(knob.key()),
          false,
          false,
          Stream.concat(Stream.of(""), knob.answers().stream()).toList());
    }
    return new Field(
        knob.key(),
        knob.words() + unit,
        values.get(knob.key()),
        knob.isNumber() && knob != Knob.DEFOCUS && knob != Knob.TEMPERATURE,
        false,
        List.of());
  }

  private static Field text(String name, String label, Map<String, String> values) {
    return new Field(name, label, values.get(name), false, false, List.of());
  }

  private static Field number(String name, String label, Map<String, String> values) {
    return new Field(name, label, values.get(name), true, false, List.of());
  }

  private static Field choice(
      String name, String label, Map<String, String> values, Stream<String> options) {
    String now = values.get(name);
    return new Field(
        name,
        label,
        now,
        false,
        true,
        Stream.concat(Stream.of(now), options).filter(o -> !o.isEmpty()).distinct().toList());
  }
}
