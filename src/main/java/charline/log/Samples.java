package charline.log;

import charline.log.database.Database;
import charline.log.database.ResultRow;
import charline.log.database.RowValues;
import charline.log.reference.Nearest;
import charline.refusal.Refusal;
import charline.trial.Finish;
import charline.trial.Sample;
import charline.trial.SampleResult;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;

/** Results of samples: what coats were tested for. None is ever deleted. */
public final class Samples {
  private final Database database;
  private final FinishTable finishes;
  private final History history;
  private final Supplier<OffsetDateTime> now;

  Samples(Database database, FinishTable finishes, History history, Supplier<OffsetDateTime> now) {
    this.database = database;
    this.finishes = finishes;
    this.history = history;
    this.now = now;
  }

  /** All results by day, void ones included. */
  public List<Sample> all() {
    return database.inSnapshot(
        () -> {
          Map<UUID, Finish> byId = new HashMap<>();
          finishes.alsoJoined().forEach(finish -> byId.put(finish.id(), finish));
          // A result goes with its finish into the one that it was joined into.
          database.query(
              "SELECT id, target FROM joined_finish",
              row -> byId.put(row.id("id"), byId.get(row.id("target"))));
          return database.query(
              "SELECT * FROM sample ORDER BY taken_on, length(code), code", row -> read(row, byId));
        });
  }

  /** Results that count. */
  public List<Sample> standing() {
    return all().stream().filter(sample -> sample.voided().isEmpty()).toList();
  }

  private static Sample read(ResultRow row, Map<UUID, Finish> byId) throws SQLException {
    Optional<UUID> finish = row.optionalText("finish_id").map(UUID::fromString);
    return new Sample(
        row.id("id"),
        row.text("code"),
        finish.map(byId::get),
        row.optionalText("job"),
        row.text("substance"),
        LocalDate.parse(row.text("taken_on")),
        row.optionalText("tested_by"),
        row.optionalText("reference"),
        SampleResult.ofWord(row.text("result")),
        row.optionalText("value"),
        row.optionalText("note"),
        row.optionalText("voided_why"));
  }

  /** The result of that code, void or not; 7 means S-0007. */
  public Sample byCode(String typed) {
    String code = typed.strip();
    String spelled =
        code.matches("(?i)(s-?)?\\d{1,9}")
            ? code(Long.parseLong(code.replaceAll("\\D", "")))
            : code;
    List<Sample> all = all();
    return all.stream()
        .filter(s -> s.code().equalsIgnoreCase(code) || s.code().equalsIgnoreCase(spelled))
        .findFirst()
        .orElseThrow(
            () -> Nearest.refusal("sample", code, all.stream().map(Sample::code).toList()));
  }

  /** The code of the next result; take it inside the transaction that adds it. */
  public String nextCode() {
    long highest =
        database
            .first(
                """
                SELECT max(CAST(substr(code, 3) AS INTEGER)) AS number FROM sample
                WHERE code GLOB 'S-[0-9]*' AND NOT code GLOB 'S-*[^0-9]*' AND length(code) <= 11
                """,
                row -> (long) row.number("number"))
            .orElse(0L);
    return code(highest + 1);
  }

  private static String code(long number) {
    return "S-%04d".formatted(number);
  }

  /**
   * Records a result under the next code.
   *
   * @return the result with its code
   */
  public Sample add(Sample sample, String by) {
    return database.inTransaction(
        () -> {
          Sample coded = sample.coded(nextCode());
          database.insert(
              "sample",
              values(coded)
                  .put("id", coded.id())
                  .put("code", coded.code())
                  .moment("recorded_at", now.get())
                  .put("recorded_by", Logbook.person(by)));
          return coded;
        });
  }

  /** Replaces what is recorded of a result; the old values stay in the history. */
  public void amend(Sample sample, String by, String why) {
    String reason = Logbook.reason(why);
    history.amending(
        now.get(),
        Logbook.person(by),
        reason,
        () -> {
          if (database.amend("sample", sample.id(), values(sample)) == 0) {
            throw Refusal.usage(
                "Only a recorded sample can be amended; %s is not in this log under that identity."
                    .formatted(sample.code()));
          }
        });
  }

  /** Takes a result out of every answer; it stays in the log with the reason. */
  public Sample voidSample(String code, String by, String why) {
    String reason = Logbook.reason(why);
    return database.inTransaction(
        () -> {
          Sample sample = byCode(code);
          sample
              .voided()
              .ifPresent(
                  earlier -> {
                    throw Refusal.usage(
                        "%s is void already (%s); nothing was changed."
                            .formatted(sample.code(), earlier));
                  });
          amend(sample.voidedFor(reason), by, reason);
          return sample;
        });
  }

  /** What became of a result, oldest first. */
  public List<Change> history(Sample sample) {
    return history.of(sample.id());
  }

  private static RowValues values(Sample sample) {
    return new RowValues()
        .put("finish_id", sample.finish().map(Finish::id))
        .put("job", sample.job())
        .put("substance", sample.substance())
        .put("taken_on", sample.takenOn().toString())
        .put("tested_by", sample.testedBy())
        .put("reference", sample.reference())
        .put("result", sample.result().word())
        .put("value", sample.value())
        .put("note", sample.note())
        .put("voided_why", sample.voided());
  }
}
