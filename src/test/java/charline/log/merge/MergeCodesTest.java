package charline.log.merge;

import static charline.log.Boathouse.CLOCK;
import static charline.log.Boathouse.MORNING;
import static org.assertj.core.api.Assertions.assertThat;

import charline.exposure.HandPass;
import charline.log.Boathouse;
import charline.log.Change;
import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.PlanCondition;
import charline.log.PlannedPatch;
import charline.trial.Board;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two benches that burn and plan under the same codes, and merge in both directions. */
class MergeCodesTest {
  @TempDir Path folder;
  Logbook log;
  Logbook other;

  @BeforeEach
  void part() {
    log = Logbook.open(folder.resolve("boathouse.db"), CLOCK);
    new Boathouse(log);
    Path there = folder.resolve("slipway.db");
    log.backup(there);
    other = Logbook.open(there, Clock.offset(CLOCK, Duration.ofHours(1)));
  }

  @AfterEach
  void close() {
    log.close();
    other.close();
  }

  private static PlannedPatch plan(Logbook at, String reason, Optional<PlanCondition> condition) {
    Boathouse bench = Boathouse.alreadySetUp(at);
    PlannedPatch plan =
        new PlannedPatch(
            at.newId(),
            "",
            "latex",
            "pine",
            bench.rig,
            Optional.of(bench.board),
            "door stile",
            Boathouse.pulsed(new HandPass(60, 25)),
            Optional.empty(),
            4,
            "climb",
            reason,
            condition,
            MORNING,
            Optional.of("Ada"),
            false,
            Optional.empty());
    return at.planned().reserve(List.of(plan)).get(0);
  }

  /** A rung, and one that hangs on it, as a bench list has them. */
  private static void twoRungs(Logbook at, String whose) {
    PlannedPatch first = plan(at, whose, Optional.empty());
    plan(at, whose, Optional.of(PlanCondition.noChar(first)));
  }

  private static void burn(Logbook at, String code, String outcome) {
    Boathouse bench = Boathouse.alreadySetUp(at);
    at.add(Boathouse.entry(bench.patch(code, MORNING, bench.reading(1, outcome))));
  }

  private static Merged merge(Logbook into, Logbook from) {
    return Merge.into(into, "Cy").from(from.file(), Resolution.UNDECIDED);
  }

  private static List<String> plans(Logbook at) {
    return at.planned().all().stream()
        .sorted(Comparator.comparing(PlannedPatch::id))
        .map(p -> p.code() + " " + p.reasonInFull())
        .toList();
  }

  private static List<String> patches(Logbook at) {
    return at.patches(Filter.ALL).stream()
        .map(PatchEntry::patch)
        .sorted(Comparator.comparing(p -> p.id()))
        .map(p -> p.code() + " " + p.lastReading().outcome().text())
        .toList();
  }

  @Test
  void plans_of_both_benches_have_one_code_in_both_logs_and_hang_on_the_right_ones() {
    twoRungs(log, "ours");
    twoRungs(other, "theirs");
    merge(log, other);
    Merged back = merge(other, log);

    assertThat(plans(log))
        .containsExactly(
            "P-0001 ours",
            "P-0002 ours; only if P-0001 did not char",
            "P-0003 theirs",
            "P-0004 theirs; only if P-0003 did not char");
    assertThat(plans(other)).isEqualTo(plans(log));
    assertThat(back.notes())
        .containsExactly(
            "The planned patch P-0001 got the code P-0003 when it was merged into boathouse.db, and"
                + " has it here now too; write that on its tape and its list.",
            "The planned patch P-0002 got the code P-0004 when it was merged into boathouse.db, and"
                + " has it here now too; write that on its tape and its list.");
    assertThat(merge(log, other).notes()).isEmpty();
    assertThat(log.history(log.planned().open("P-0003")))
        .extracting(Change::words)
        .containsExactly("code from P-0001 to P-0003");
    assertThat(other.history(other.planned().open("P-0003")))
        .isEqualTo(log.history(log.planned().open("P-0003")));
    assertThat(log.check()).isEmpty();
    assertThat(other.check()).isEmpty();
  }

  private static void rename(Logbook at, String board, String to) {
    Board b = at.board(board);
    at.amend(
        new Board(b.id(), to, b.wood(), b.form(), b.condition(), b.moisturePercent(), b.job()),
        "Ada",
        "labelled anew");
  }

  @Test
  void a_board_renamed_on_one_bench_is_called_so_on_the_other() {
    rename(log, "door stile", "north stile");
    rename(log, "north stile", "south stile");

    assertThat(merge(other, log).notes())
        .containsExactly(
            "The board door stile was renamed in boathouse.db, and is called south stile here too"
                + " now.");
    assertThat(other.board("south stile")).isEqualTo(log.board("south stile"));
    assertThat(other.history(other.board("south stile")))
        .isEqualTo(log.history(log.board("south stile")))
        .hasSize(2);
    assertThat(merge(other, log).notes()).isEmpty();
    assertThat(merge(log, other).notes()).isEmpty();
  }

  @Test
  void a_board_that_both_renamed_or_whose_new_name_is_taken_keeps_its_name_and_is_named() {
    rename(log, "door stile", "north stile");
    rename(other, "door stile", "south stile");
    assertThat(merge(other, log).notes())
        .containsExactly(
            "The board south stile was renamed here and in boathouse.db, where it is called north"
                + " stile; it keeps its name here.");
    assertThat(other.board("south stile")).isNotNull();

    rename(other, "south stile", "north stile");
    assertThat(merge(other, log).notes()).isEmpty();
    Board own = other.board("north stile");
    other.add(
        new Board(
            other.newId(),
            "sill",
            own.wood(),
            own.form(),
            own.condition(),
            own.moisturePercent(),
            own.job()),
        "Bo");
    rename(log, "north stile", "sill");
    assertThat(merge(other, log).notes()).hasSize(1);
    assertThat(other.boards()).extracting(Board::name).containsExactly("north stile", "sill");
    assertThat(other.check()).isEmpty();
  }

  @Test
  void a_plan_burned_under_its_old_code_is_called_as_it_is_planned_here() {
    twoRungs(log, "ours");
    twoRungs(other, "theirs");
    merge(log, other);
    burn(other, "P-0001", "char"); // before the new code came to that bench
    merge(log, other);
    merge(other, log);

    assertThat(patches(log)).containsExactly("P-0003 char");
    assertThat(patches(other)).isEqualTo(patches(log));
    assertThat(plans(log)).contains("P-0003 theirs", "P-0004 theirs; only if P-0003 did not char");
    assertThat(plans(other)).isEqualTo(plans(log));
    assertThat(log.planned().open())
        .extracting(PlannedPatch::code)
        .containsExactly("P-0001", "P-0002", "P-0004");
    assertThat(other.planned().open()).isEqualTo(log.planned().open());
  }

  @Test
  void two_benches_that_merge_a_copy_of_each_other_at_once_come_to_the_same_codes() {
    burn(log, "P-0001", "clean");
    burn(log, "P-0002", "residue");
    burn(other, "P-0001", "tint");
    twoRungs(log, "ours");
    twoRungs(other, "theirs");
    Path mine = folder.resolve("mine.db");
    Path theirs = folder.resolve("theirs.db");
    log.backup(mine);
    other.backup(theirs);
    Merge.into(log, "Ada").from(theirs, Resolution.UNDECIDED);
    Merge.into(other, "Bo").from(mine, Resolution.UNDECIDED);

    merge(log, other);
    merge(other, log);
    merge(log, other);

    assertThat(patches(other)).isEqualTo(patches(log)).hasSize(3);
    assertThat(plans(other)).isEqualTo(plans(log)).hasSize(4);
    for (String whose : List.of("ours", "theirs")) {
      List<String> rungs = plans(log).stream().filter(p -> p.contains(whose)).toList();
      String first = rungs.get(0).substring(0, "P-0001".length());
      assertThat(rungs.get(1)).endsWith("only if " + first + " did not char");
    }
    assertThat(
            Stream.concat(
                log.patches(Filter.ALL).stream().map(e -> e.patch().code()),
                log.planned().all().stream().map(PlannedPatch::code)))
        .doesNotHaveDuplicates();
    assertThat(merge(other, log).notes()).isEmpty();
    assertThat(merge(log, other).notes()).isEmpty();
    assertThat(log.check()).isEmpty();
    assertThat(other.check()).isEmpty();
  }
}
