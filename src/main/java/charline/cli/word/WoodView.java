package charline.cli.word;

import charline.log.Logbook;
import charline.log.OwnWords;
import charline.trial.WoodFacts;
import charline.wording.Facts;
import charline.wording.Json;
import charline.wording.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Woods as text and as JSON. */
final class WoodView {
  private WoodView() {}

  /** "hardwood, ring-porous". */
  static String summary(WoodFacts wood) {
    return wood.kind() + porous(wood).map(words -> ", " + words).orElse("");
  }

  private static Optional<String> porous(WoodFacts wood) {
    return wood.pores().isEmpty() || wood.pores().equals("none")
        ? Optional.empty()
        : Optional.of(wood.pores() + "-porous");
  }

  private static String gravity(WoodFacts wood) {
    return wood.specificGravity().isPresent()
        ? "%.2f".formatted(wood.specificGravity().getAsDouble())
        : "-";
  }

  /**
   * A wood as JSON.
   *
   * @param flat other names in one text, as a sheet needs them
   * @param by who added it, null if nobody did
   */
  static Json json(WoodFacts wood, boolean flat, String by) {
    return new Json()
        .put("wood", wood.name())
        .put("also", flat ? WordsText.cell(wood.aliases()) : wood.aliases())
        .put("class", wood.kind())
        .put("generic", wood.generic())
        .put("pores", wood.pores())
        .put("resin", wood.resin())
        .put("specific_gravity", wood.specificGravity())
        .put("source", wood.source())
        .put("like", wood.like())
        .put("by", by);
  }

  /** A wood that somebody added. */
  static Json json(Logbook log, String name) {
    return json(
        log.reference().woodFacts(name),
        false,
        log.ownWords().find(OwnWords.Sort.WOOD, name).flatMap(OwnWords.Added::by).orElse(null));
  }

  static String text(WoodFacts wood) {
    return new Facts("Wood " + wood.name())
        .add("also", given(String.join(", ", wood.aliases())))
        .add("like", wood.like().map(other -> "like " + other))
        .add("kind of", wood.generic())
        .add("class", wood.kind())
        .add("pores", given(wood.pores()))
        .add("resin", given(wood.resin()))
        .add("specific gravity", given(gravity(wood)).filter(g -> !g.equals("-")))
        .add("source", wood.source())
        .text();
  }

  private static Optional<String> given(String text) {
    return Optional.of(text).filter(t -> !t.isEmpty());
  }

  /** A table with numbered sources below it. */
  static String table(List<WoodFacts> woods) {
    if (woods.isEmpty()) {
      return "No wood was added yet; `charline wood add --help` shows how.\n";
    }
    List<String> sources = new ArrayList<>();
    Table table = new Table("wood", "class", "pores", "resin", ">SG", ">source", "other names");
    for (WoodFacts wood : woods) {
      if (!sources.contains(wood.source())) {
        sources.add(wood.source());
      }
      table.row(
          wood.name(),
          wood.kind(),
          dash(wood.pores()),
          dash(wood.resin()),
          gravity(wood),
          String.valueOf(sources.indexOf(wood.source()) + 1),
          dash(
              wood.like().map(other -> "like " + other + "; ").orElse("")
                  + String.join(", ", wood.aliases())));
    }
    StringBuilder text = new StringBuilder(table.text()).append("\nSources\n");
    for (int i = 0; i < sources.size(); i++) {
      String head = "%3d  ".formatted(i + 1);
      text.append(head)
          .append(
              String.join(
                  "\n" + " ".repeat(head.length()),
                  Table.fold(sources.get(i), Table.WIDTH - head.length())))
          .append('\n');
    }
    return text.toString();
  }

  private static String dash(String text) {
    return text.isEmpty() ? "-" : text;
  }
}
