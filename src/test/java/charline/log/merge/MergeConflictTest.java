package charline.log.merge;

import static charline.log.Boathouse.CLOCK;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import charline.exposure.HandPass;
import charline.log.Boathouse;
import charline.log.Change;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.trial.Patch;
import charline.trial.Pieces;
import charline.trial.Reading;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two logs that hold the same patch, since one began as a copy of the other. */
class MergeConflictTest {
  @TempDir Path folder;
  Path there;
  Logbook log;
  Logbook other;

  @BeforeEach
  void part() {
    there = folder.resolve("slipway.db");
    log = Logbook.open(folder.resolve("boathouse.db"), CLOCK);
    new Boathouse(log).burn("clean");
    log.backup(there);
    other = Logbook.open(there, Clock.offset(CLOCK, Duration.ofHours(1)));
  }

  @AfterEach
  void close() {
    log.close();
    other.close();
  }

  private static void judge(Logbook log, String outcome, String by) {
    judge(log, 1, outcome, by);
  }

  private static void judge(Logbook log, int passes, String outcome, String by) {
    log.amend(
        with(log, r -> Optional.of(r.passes() == passes ? Pieces.seen(outcome, r) : r)),
        by,
        "by daylight");
  }

  /** The patch with its readings otherwise, or without them. */
  private static PatchEntry with(Logbook log, Function<Reading, Optional<Reading>> amended) {
    PatchEntry entry = log.patch("P-0001");
    Patch patch = entry.patch();
    return new PatchEntry(
        Pieces.withReadings(
            patch, patch.readings().stream().flatMap(r -> amended.apply(r).stream()).toList()),
        entry.typed(),
        entry.by(),
        entry.note(),
        entry.voided());
  }

  private static String outcome(Logbook log) {
    return log.patch("P-0001").patch().lastReading().outcome().text();
  }

  private static Merged merge(Logbook into, Logbook from, Resolution take) {
    return Merge.into(into, "Cy").from(from.file(), take);
  }

  @Test
  void what_only_the_other_amended_comes_in_with_its_history_as_it_was_written() {
    judge(other, "tint", "Bo");
    Merged merged = merge(log, other, Resolution.UNDECIDED);
    assertThat(merged.amended()).isEqualTo(1);
    assertThat(merged.conflicts()).isEmpty();
    assertThat(outcome(log)).isEqualTo("tint");
    assertThat(log.history("P-0001")).isEqualTo(other.history("P-0001"));
    judge(log, "clean", "Ada");
    assertThat(log.history("P-0001")).as("the log goes on keeping changes").hasSize(2);
    assertThat(merge(other, log, Resolution.UNDECIDED).amended()).isEqualTo(1);
    assertThat(outcome(other)).isEqualTo("clean");
    assertThat(other.history("P-0001")).isEqualTo(log.history("P-0001"));
  }

  @Test
  void what_only_this_log_amended_stays_without_a_word() {
    judge(log, "tint", "Ada");
    assertThat(merge(log, other, Resolution.UNDECIDED).isEmpty()).isTrue();
    assertThat(outcome(log)).isEqualTo("tint");
  }

  @Test
  void what_both_amended_differently_is_named_at_every_merge_until_somebody_decides() {
    judge(log, "tint", "Ada");
    judge(other, "char", "Bo");
    for (int i = 0; i < 2; i++) {
      assertThat(merge(log, other, Resolution.UNDECIDED).conflicts())
          .containsExactly(
              "The reading of P-0001 after 1 pass was amended here and in slipway.db: outcome is"
                  + " tint here and char there.");
      assertThat(outcome(log)).isEqualTo("tint");
      assertThat(log.history("P-0001")).hasSize(1);
    }
  }

  @Test
  void what_was_decided_for_the_other_log_is_not_asked_again_and_goes_back_with_its_history() {
    judge(log, "tint", "Ada");
    judge(other, "char", "Bo");
    assertThat(merge(log, other, Resolution.THERE).settled()).isEqualTo(1);
    assertThat(outcome(log)).isEqualTo("char");
    assertThat(log.history("P-0001"))
        .extracting(Change::by, Change::before, Change::after, Change::why)
        .containsExactly(
            tuple(
                Optional.of("Ada"),
                Optional.of("clean"),
                Optional.of("tint"),
                Optional.of("by daylight")),
            tuple(
                Optional.of("Bo"),
                Optional.of("clean"),
                Optional.of("char"),
                Optional.of("by daylight")),
            tuple(
                Optional.of("Cy"),
                Optional.of("tint"),
                Optional.of("char"),
                Optional.of("as in slipway.db")));
    settledOnBothSides("char");
  }

  @Test
  void what_was_decided_for_this_log_is_not_asked_again_and_goes_back_with_its_history() {
    judge(log, "tint", "Ada");
    judge(other, "char", "Bo");
    assertThat(merge(log, other, Resolution.HERE).settled()).isEqualTo(1);
    assertThat(log.history("P-0001"))
        .extracting(Change::by, Change::before, Change::after)
        .contains(
            tuple(Optional.of("Bo"), Optional.of("clean"), Optional.of("char")),
            tuple(Optional.of("Cy"), Optional.of("char"), Optional.of("tint")));
    settledOnBothSides("tint");
  }

  @Test
  void what_was_decided_is_no_conflict_when_the_other_bench_amends_on() {
    judge(log, "tint", "Ada");
    judge(other, "char", "Bo");
    merge(log, other, Resolution.THERE);
    assertThat(merge(other, log, Resolution.UNDECIDED).amended()).isZero();
    assertThat(other.history("P-0001")).containsAll(log.history("P-0001"));

    judge(other, "residue", "Bo");
    Merged merged = merge(log, other, Resolution.UNDECIDED);
    assertThat(merged.conflicts()).isEmpty();
    assertThat(merged.amended()).isEqualTo(1);
    settledOnBothSides("residue");
  }

  private void settledOnBothSides(String outcome) {
    for (int i = 0; i < 2; i++) {
      assertThat(merge(log, other, Resolution.UNDECIDED).conflicts()).isEmpty();
      assertThat(outcome(log)).isEqualTo(outcome);
      assertThat(merge(other, log, Resolution.UNDECIDED).conflicts()).isEmpty();
      assertThat(outcome(other)).isEqualTo(outcome);
    }
    assertThat(log.check()).isEmpty();
    assertThat(other.check()).isEmpty();
  }

  @Test
  void two_readings_after_the_same_passes_are_a_conflict_that_either_side_may_win() {
    log.addReading("P-0001", Boathouse.alreadySetUp(log).reading(2, "char"));
    other.addReading("P-0001", Boathouse.alreadySetUp(other).reading(2, "clean"));
    String sentence = "P-0001 after 2 passes was read here (char) and in slipway.db (clean).";
    assertThat(merge(log, other, Resolution.UNDECIDED).conflicts()).containsExactly(sentence);
    assertThat(merge(other, log, Resolution.UNDECIDED).conflicts())
        .containsExactly("P-0001 after 2 passes was read here (clean) and in boathouse.db (char).");
    assertThat(merge(log, other, Resolution.THERE).readings()).isEqualTo(1);
    assertThat(outcome(log)).isEqualTo("clean");
    assertThat(log.history("P-0001"))
        .containsExactly(
            new Change(
                Boathouse.MORNING,
                Optional.of("Cy"),
                "reading",
                Optional.of("char after 2 passes"),
                Optional.empty(),
                Optional.of("as in slipway.db")));
    settledOnBothSides("clean");
  }

  @Test
  void a_reading_kept_against_the_other_log_stays_kept() {
    log.addReading("P-0001", Boathouse.alreadySetUp(log).reading(2, "char"));
    other.addReading("P-0001", Boathouse.alreadySetUp(other).reading(2, "clean"));
    Merged merged = merge(log, other, Resolution.HERE);
    assertThat(merged.settled()).isEqualTo(1);
    assertThat(merged.readings()).isZero();
    assertThat(log.history("P-0001"))
        .extracting(Change::words, Change::why)
        .containsExactly(
            tuple("reading struck: clean after 2 passes", Optional.of("kept against slipway.db")));
    settledOnBothSides("char");
  }

  @Test
  void a_reading_struck_before_keeps_its_reason_when_its_successor_gives_way() {
    log.addReading("P-0001", Boathouse.alreadySetUp(log).reading(2, "tint"));
    log.amend(
        with(log, r -> Optional.of(r).filter(kept -> kept.passes() == 1)), "Ada", "another patch");
    log.addReading("P-0001", Boathouse.alreadySetUp(log).reading(2, "char"));
    other.addReading("P-0001", Boathouse.alreadySetUp(other).reading(2, "residue"));
    merge(log, other, Resolution.THERE);
    assertThat(log.history("P-0001"))
        .extracting(Change::words, Change::why)
        .containsExactly(
            tuple("reading struck: tint after 2 passes", Optional.of("another patch")),
            tuple("reading struck: char after 2 passes", Optional.of("as in slipway.db")));
  }

  @Test
  void a_struck_reading_keeps_all_that_was_seen_in_words() {
    Reading seen = Boathouse.alreadySetUp(log).reading(1, "char");
    PatchEntry entry = log.patch("P-0001");
    Reading second =
        new Reading(
            log.newId(),
            2,
            seen.outcome(),
            Optional.of(true),
            OptionalDouble.of(40),
            seen.at(),
            seen.by(),
            Optional.of("by the knot"));
    log.addReading("P-0001", second);
    log.amend(entry, "Ada", "never made");
    assertThat(log.history("P-0001"))
        .extracting(Change::words)
        .containsExactly(
            "reading struck: char after 2 passes, soot, depth 40 µm, note \"by the knot\"");
    assertThat(log.history("P-0001"))
        .extracting(Change::why)
        .containsExactly(Optional.of("never made"));
  }

  @Test
  void a_reading_struck_here_and_amended_there_is_said_to_be_struck() {
    log.addReading("P-0001", Boathouse.alreadySetUp(log).reading(2, "tint"));
    merge(other, log, Resolution.UNDECIDED);
    log.amend(
        with(log, r -> r.passes() == 1 ? Optional.of(r) : Optional.empty()), "Ada", "never made");
    judge(other, 2, "residue", "Bo");
    assertThat(merge(log, other, Resolution.UNDECIDED).conflicts())
        .containsExactly(
            "The reading of P-0001 after 2 passes was amended here and in slipway.db: outcome is"
                + " tint here and residue there, it is struck here (never made) and counts there.");
    assertThat(merge(log, other, Resolution.THERE).settled()).isEqualTo(1);
    assertThat(outcome(log)).isEqualTo("residue");
    assertThat(log.history("P-0001"))
        .extracting(Change::what, Change::before, Change::after, Change::why)
        .contains(
            tuple(
                "reading",
                Optional.empty(),
                Optional.of("residue after 2 passes"),
                Optional.of("as in slipway.db")));
    assertThat(log.history("P-0001"))
        .extracting(Change::words)
        .contains("reading counts again: residue after 2 passes");
  }

  @Test
  void a_conflict_has_the_words_and_units_of_the_history() {
    amendSettings(log, 14, true);
    amendSettings(other, 13, false);
    assertThat(merge(log, other, Resolution.UNDECIDED).conflicts())
        .containsExactly(
            "P-0001 was amended here and in slipway.db: hand speed is 14 mm/s here and 13 mm/s"
                + " there.",
            "The reading of P-0001 after 1 pass was amended here and in slipway.db: soot is yes"
                + " here and no there, depth is 40 µm here and not given there.");
    assertThat(log.history("P-0001"))
        .extracting(Change::words)
        .contains("hand speed from 30 mm/s to 14 mm/s", "soot from nothing to yes");
  }

  private static void amendSettings(Logbook log, double speed, boolean soot) {
    Patch patch =
        with(
                log,
                r ->
                    Optional.of(
                        new Reading(
                            r.id(),
                            r.passes(),
                            r.outcome(),
                            Optional.of(soot),
                            soot ? OptionalDouble.of(40) : OptionalDouble.empty(),
                            r.at(),
                            r.by(),
                            r.note())))
            .patch();
    log.amend(
        Boathouse.entry(
            new Patch(
                patch.id(),
                patch.code(),
                patch.burnedAt(),
                patch.rig(),
                patch.board(),
                patch.finish(),
                Boathouse.pulsed(new HandPass(60, speed)),
                patch.areaSquareCentimetres(),
                patch.readings())),
        "Ada",
        "stopwatch");
  }

  @Test
  void a_reading_that_cannot_follow_those_here_is_a_conflict_and_the_patch_stays_readable() {
    log.addReading("P-0001", Boathouse.alreadySetUp(log).reading(2, "char"));
    other.addReading("P-0001", Boathouse.alreadySetUp(other).reading(3, "clean"));
    assertThat(merge(log, other, Resolution.UNDECIDED).conflicts())
        .containsExactly(
            "The reading of P-0001 after 3 passes in slipway.db (clean) does not fit the readings"
                + " here.");
    assertThat(log.patch("P-0001").patch().readings()).hasSize(2);
  }

  @Test
  void readings_that_fit_join_on_one_patch() {
    log.addReading("P-0001", Boathouse.alreadySetUp(log).reading(2, "tint"));
    other.addReading("P-0001", Boathouse.alreadySetUp(other).reading(3, "char"));
    assertThat(merge(log, other, Resolution.UNDECIDED).readings()).isEqualTo(1);
    assertThat(log.patch("P-0001").patch().readings())
        .extracting(Reading::passes)
        .containsExactly(1, 2, 3);
  }

  @Test
  void a_voided_patch_and_an_amended_one_are_a_conflict_in_plain_words() {
    other.voidPatch("P-0001", "Bo", "knot");
    log.voidPatch("P-0001", "Ada", "wrong board");
    assertThat(merge(log, other, Resolution.UNDECIDED).conflicts())
        .containsExactly(
            "P-0001 was amended here and in slipway.db: the reason for being void is wrong board"
                + " here and knot there.");
  }

  @Test
  void a_patch_void_here_and_amended_there_is_said_to_be_void() {
    log.voidPatch("P-0001", "Ada", "wrong board");
    PatchEntry entry = other.patch("P-0001");
    other.amend(
        new PatchEntry(
            entry.patch(), entry.typed(), entry.by(), Optional.of("dry"), entry.voided()),
        "Bo",
        "seen next day");
    assertThat(merge(log, other, Resolution.UNDECIDED).conflicts())
        .containsExactly(
            "P-0001 was amended here and in slipway.db: note is not given here and dry there, it is"
                + " void here (wrong board) and counts there.");
    assertThat(merge(other, log, Resolution.UNDECIDED).conflicts())
        .containsExactly(
            "P-0001 was amended here and in boathouse.db: note is dry here and not given there, it"
                + " counts here and is void there (wrong board).");
  }

  @Test
  void a_patch_voided_only_there_is_void_here() {
    other.voidPatch("P-0001", "Bo", "knot");
    Merged merged = merge(log, other, Resolution.UNDECIDED);
    assertThat(merged.amended()).isEqualTo(1);
    assertThat(merged.voided()).isEqualTo(1);
    assertThat(log.patch("P-0001").voided()).contains("knot");
    other.amend(other.patch("P-0001"), "Bo", "no change");
    assertThat(merge(log, other, Resolution.UNDECIDED).voided()).isZero();
  }

  /** The code that a merge gave is no amendment that could stand against one of the other log. */
  @Test
  void a_patch_that_got_another_code_here_follows_what_is_amended_there() {
    Boathouse.alreadySetUp(log).burn("tint");
    Boathouse.alreadySetUp(other).burn("char");
    merge(log, other, Resolution.UNDECIDED);
    other.voidPatch("P-0002", "Bo", "knot");
    Merged merged = merge(log, other, Resolution.UNDECIDED);
    assertThat(merged.conflicts()).isEmpty();
    assertThat(merged.voided()).isEqualTo(1);
    assertThat(log.patch("P-0003").voided()).contains("knot");
  }

  @Test
  void the_other_file_is_left_as_it_is_byte_for_byte() throws Exception {
    judge(other, "tint", "Bo");
    other.close();
    byte[] before = Files.readAllBytes(there);
    Merge.into(log, "Cy").from(there, Resolution.THERE);
    assertThat(Files.readAllBytes(there)).isEqualTo(before);
    other = Logbook.open(there, CLOCK);
  }
}
