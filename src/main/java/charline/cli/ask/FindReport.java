package charline.cli.ask;

import charline.ask.Question;
import charline.log.PatchEntry;
import charline.quantity.Figures;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.trial.Stratum;
import charline.wording.DaysText;
import charline.wording.QuestionText;
import charline.wording.SettingsText;
import charline.wording.Table;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * What was found, for a person.
 *
 * <p>Counted with streams: Tablesaw takes about a second to its first summary in a fresh process,
 * longer than {@code find} needs for the whole answer.
 */
final class FindReport {
  private FindReport() {}

  /**
   * Counts, then a table for each coating, wood and rig.
   *
   * @param here the zone of the person who asks
   */
  static String text(Question question, List<PatchEntry> found, ZoneId here) {
    StringBuilder text = new StringBuilder();
    text.append(Table.paragraph(QuestionText.sentences(question))).append('\n');
    text.append(Table.paragraph(summary(question, found, here))).append('\n');
    if (question.purpose() == Question.Purpose.COUNT) {
      text.append(Table.paragraph(outcomes(found))).append('\n');
    }
    groups(found)
        .forEach(
            (title, patches) ->
                text.append('\n').append(title).append('\n').append(table(patches)));
    return text.toString();
  }

  /** "5 clean, 2 char+residue at the last reading." */
  private static String outcomes(List<PatchEntry> found) {
    Map<String, Long> counts =
        found.stream()
            .collect(
                Collectors.groupingBy(
                    e -> e.patch().lastReading().outcome().text(),
                    LinkedHashMap::new,
                    Collectors.counting()));
    return counts.entrySet().stream()
            .sorted(Map.Entry.<String, Long>comparingByValue().reversed())
            .map(e -> e.getValue() + " " + e.getKey())
            .collect(Collectors.joining(", "))
        + " at the last reading.";
  }

  private static String summary(Question question, List<PatchEntry> found, ZoneId here) {
    List<Patch> patches = found.stream().map(PatchEntry::patch).toList();
    long readings = patches.stream().mapToLong(p -> p.readings().size()).sum();
    long boards = patches.stream().map(p -> p.board().name()).distinct().count();
    return "%s found: %s on %s, %s."
        .formatted(
            Figures.count(patches.size(), "patch", "patches"),
            Figures.count(readings, "reading", "readings"),
            Figures.count(boards, "board", "boards"),
            DaysText.burned(patches, question, here));
  }

  private static Map<String, List<Patch>> groups(List<PatchEntry> found) {
    Map<String, List<Patch>> groups = new LinkedHashMap<>();
    for (PatchEntry entry : found) {
      groups.computeIfAbsent(title(entry.patch()), t -> new ArrayList<>()).add(entry.patch());
    }
    return groups;
  }

  private static String title(Patch patch) {
    Stratum stratum = Stratum.of(patch);
    return "%s over %s, rig %s (%s, %d nm)"
        .formatted(
            stratum.family(),
            stratum.wood(),
            patch.rig().name(),
            stratum.emission().word(),
            stratum.wavelengthNanometres());
  }

  private static String table(List<Patch> patches) {
    OtherKnobs others = OtherKnobs.of(patches);
    Table table =
        new Table(
            "patch",
            "date",
            ">power",
            ">speed",
            ">passes",
            "outcome",
            ">J/cm2",
            others.any() ? "board, with" : "board");
    patches.forEach(patch -> addRows(table, patch, others));
    return table.text();
  }

  /** A row for each run of readings with the same outcome, the settings in the first alone. */
  private static void addRows(Table table, Patch patch, OtherKnobs others) {
    List<Reading> readings = patch.readings();
    int from = 0;
    while (from < readings.size()) {
      int to = from;
      while (to + 1 < readings.size()
          && readings.get(to + 1).outcome().equals(readings.get(from).outcome())) {
        to++;
      }
      int first = readings.get(from).passes();
      int last = readings.get(to).passes();
      boolean head = from == 0;
      table.row(
          head ? patch.code() : "",
          head ? patch.burnedAt().toLocalDate().toString() : "",
          head ? SettingsText.power(patch.settings().power()) : "",
          head ? SettingsText.speed(patch.settings().form()) : "",
          first == last ? String.valueOf(first) : first + "-" + last,
          readings.get(from).outcome().text(),
          head ? Figures.three(patch.exposure().doseJoulesPerCm2()) : "",
          head ? others.after(patch.board().name(), patch) : "");
      from = to + 1;
    }
  }

  /**
   * What was searched, and what the log does have.
   *
   * @param all every patch that counts
   * @param voidOnes whether there are patches that do not
   */
  static String nothing(Question question, List<PatchEntry> all, boolean voidOnes) {
    if (all.isEmpty()) {
      return voidOnes
          ? "The log has only void patches; `charline patch show CODE` shows one of them.\n"
          : "The log has no patches yet; `charline patch add --help` shows how to record one.\n";
    }
    String families =
        all.stream()
            .map(e -> e.patch().finish().family() + " over " + e.patch().board().wood())
            .collect(Collectors.groupingBy(s -> s, LinkedHashMap::new, Collectors.counting()))
            .entrySet()
            .stream()
            .map(e -> e.getKey() + " (" + e.getValue() + ")")
            .collect(Collectors.joining(", "));
    return Table.paragraph(
            "%s No patch matches. The log has %s, %s: %s."
                .formatted(
                    QuestionText.sentences(question),
                    Figures.count(all.size(), "patch", "patches"),
                    DaysText.burned(all.stream().map(PatchEntry::patch).toList()),
                    families))
        + "\n";
  }
}
