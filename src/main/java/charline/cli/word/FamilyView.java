package charline.cli.word;

import charline.log.Logbook;
import charline.log.OwnWords;
import charline.trial.Caution;
import charline.trial.FamilyFacts;
import charline.wording.Facts;
import charline.wording.Json;
import charline.wording.Table;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Coating families as text and as JSON. */
final class FamilyView {
  private FamilyView() {}

  /** A coating family that somebody added. */
  static Json json(Logbook log, String name) {
    return json(
        log,
        log.reference().familyFacts(name),
        false,
        log.ownWords().find(OwnWords.Sort.FAMILY, name).flatMap(OwnWords.Added::by).orElse(null));
  }

  /**
   * A family as JSON.
   *
   * @param flat lists in one text each, as a sheet needs them
   * @param by who added it, null if nobody did
   */
  static Json json(Logbook log, FamilyFacts family, boolean flat, String by) {
    List<String> topics =
        log.reference().cautionsOf(family.name()).stream().map(Caution::topic).distinct().toList();
    return new Json()
        .put("family", family.name())
        .put("also", flat ? WordsText.cell(family.aliases()) : family.aliases())
        .put("usual_film", family.usualFilm())
        .put("clue", family.clue())
        .put("behaviour", family.behaviour())
        .put("cautions", flat ? WordsText.cell(topics) : topics)
        .put("source", family.source())
        .put("like", family.like())
        .put("by", by);
  }

  static String text(Logbook log, FamilyFacts family) {
    Facts facts =
        new Facts("Coating family " + family.name())
            .add(
                "also",
                Optional.of(String.join(", ", family.aliases())).filter(also -> !also.isEmpty()))
            .add("like", family.like().map(other -> "like " + other))
            .add("usual film", family.usualFilm())
            .add("how to know it", family.clue())
            .add("under the beam", family.behaviour())
            .add("source", family.source());
    log.reference()
        .cautionsOf(family.name())
        .forEach(caution -> facts.add(caution.topic().toLowerCase(Locale.ROOT), caution.text()));
    return facts.text();
  }

  static String table(Logbook log, List<FamilyFacts> families) {
    if (families.isEmpty()) {
      return "No coating family was added yet; `charline family add --help` shows how.\n";
    }
    StringBuilder text = new StringBuilder();
    Table table = new Table("family", "cautions", "usual film");
    families.forEach(
        f ->
            table.row(
                f.name() + f.like().map(other -> " (like " + other + ")").orElse(""),
                WordsText.topics(log.reference().cautionsOf(f.name())),
                f.usualFilm()));
    text.append(table.text()).append("\nOther names\n");
    families.stream()
        .filter(f -> !f.aliases().isEmpty())
        .forEach(
            f ->
                text.append("  ")
                    .append(
                        String.join(
                            "\n    ",
                            Table.fold(
                                f.name() + ": " + String.join(", ", f.aliases()), Table.WIDTH - 4)))
                    .append('\n'));
    return text.toString();
  }
}
