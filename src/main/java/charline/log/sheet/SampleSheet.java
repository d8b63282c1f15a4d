package charline.log.sheet;

import charline.log.Logbook;
import charline.refusal.Refusal;
import charline.trial.Finish;
import charline.trial.PlainText;
import charline.trial.Sample;
import charline.trial.SampleResult;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * Results of samples as a CSV file: {@code sample,finish,job,substance,taken_on,tested_by,
 * reference,result,value,note}. Void results are left out, as void patches are.
 */
public final class SampleSheet {
  private static final List<String> HEADINGS =
      List.of(
          "sample",
          "finish",
          "job",
          "substance",
          "taken_on",
          "tested_by",
          "reference",
          "result",
          "value",
          "note");
  private static final List<String> NEEDED = List.of("substance", "taken_on", "result");

  private final TextTable rows;
  private final DateOrder dates;

  private SampleSheet(SheetText text, DateOrder dates) {
    this.dates = dates;
    rows = TextTable.read(text, HEADINGS, NEEDED);
  }

  /**
   * Reads a file.
   *
   * @param dates how dates in figures begin
   * @throws Refusal in one sentence if it is missing, empty, not text or has other columns
   */
  public static SampleSheet read(Path file, DateOrder dates) {
    return new SampleSheet(SheetText.read(file), dates);
  }

  /**
   * Adds the results that the log does not have yet, in one transaction; gives how many. One that
   * agrees in everything but its code is there already. Finishes must be in the log.
   *
   * @throws Refusal naming line, column and value of every fault
   */
  public int addTo(Logbook log, String by) {
    return log.inTransaction(
        () -> {
          Faults faults = new Faults(rows.name());
          List<Sample> read = new ArrayList<>();
          for (SheetRow row : rows.rows()) {
            int before = faults.count();
            Optional<Sample> sample = sample(log, row, faults);
            if (faults.count() == before) {
              sample.ifPresent(read::add);
            }
          }
          faults.refuseIfAny();
          List<Sample> known =
              new ArrayList<>(log.samples().all().stream().map(SampleSheet::bare).toList());
          int added = 0;
          for (Sample sample : read) {
            if (!known.contains(bare(sample))) {
              known.add(bare(log.samples().add(sample, by)));
              added++;
            }
          }
          return added;
        });
  }

  /** What two records of one result agree in. */
  private static Sample bare(Sample s) {
    return new Sample(
        new java.util.UUID(0, 0),
        "",
        s.finish(),
        s.job(),
        s.substance(),
        s.takenOn(),
        s.testedBy(),
        s.reference(),
        s.result(),
        s.value(),
        s.note(),
        Optional.empty());
  }

  private Optional<Sample> sample(Logbook log, SheetRow row, Faults faults) {
    Optional<Finish> finish =
        cell(row, "finish").flatMap(name -> read(row, "finish", n -> log.finish(n), faults));
    Optional<SampleResult> result = read(row, "result", SampleResult::ofWord, faults);
    Optional<LocalDate> day = read(row, "taken_on", text -> SheetTimes.day(text, dates), faults);
    Optional<String> substance =
        read(
            row,
            "substance",
            word -> {
              if (word.isEmpty()) {
                throw Refusal.usage("Give what was tested for.");
              }
              return log.reference().substance(word).orElse(word);
            },
            faults);
    if (result.isEmpty() || day.isEmpty() || substance.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          new Sample(
              log.newId(),
              "",
              finish,
              cell(row, "job"),
              substance.get(),
              day.get(),
              cell(row, "tested_by"),
              cell(row, "reference"),
              result.get(),
              cell(row, "value"),
              cell(row, "note"),
              Optional.empty()));
    } catch (Refusal e) {
      faults.add(row.line(), e.getMessage());
      return Optional.empty();
    }
  }

  private static <T> Optional<T> read(
      SheetRow row, String heading, Function<String, T> reader, Faults faults) {
    String cell = cell(row, heading).orElse("");
    try {
      return Optional.of(reader.apply(cell));
    } catch (Refusal e) {
      faults.add(row.line(), heading, cell, e.getMessage());
      e.missing().ifPresent(faults::lack);
      return Optional.empty();
    }
  }

  private static Optional<String> cell(SheetRow row, String heading) {
    return PlainText.answer(Optional.of(FormulaGuard.undo(row.cells().getOrDefault(heading, ""))));
  }

  /**
   * Writes results, at once: an existing file is replaced only by a whole one.
   *
   * @param samples at least one, as a sheet without a line is none
   * @throws Refusal if the file cannot be written
   */
  public static void write(List<Sample> samples, Path file) {
    Map<String, List<String>> columns = new LinkedHashMap<>();
    HEADINGS.forEach(heading -> columns.put(heading, new ArrayList<>()));
    for (Sample s : samples) {
      columns.get("sample").add(s.code());
      columns.get("finish").add(text(s.finish().map(Finish::name)));
      columns.get("job").add(text(s.job()));
      columns.get("substance").add(text(Optional.of(s.substance())));
      columns.get("taken_on").add(s.takenOn().toString());
      columns.get("tested_by").add(text(s.testedBy()));
      columns.get("reference").add(text(s.reference()));
      columns.get("result").add(s.result().word());
      columns.get("value").add(text(s.value()));
      columns.get("note").add(text(s.note()));
    }
    CsvFile.write(CsvFile.text(columns), file);
  }

  private static String text(Optional<String> words) {
    return words.map(FormulaGuard::guard).orElse("");
  }
}
