package charline.log;

import static charline.log.Boathouse.CLOCK;
import static charline.log.Boathouse.MORNING;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import charline.exposure.Figure;
import charline.exposure.HandPass;
import charline.log.database.Database;
import charline.log.merge.Merge;
import charline.log.merge.Merged;
import charline.log.merge.Resolution;
import charline.record.Plans;
import charline.refusal.Refusal;
import charline.wording.PlanText;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

public class PlannedPatchesTest {
  @TempDir Path folder;
  Logbook log;
  Boathouse boathouse;

  @BeforeEach
  void open() {
    log = EmptyLog.open(folder.resolve("boathouse.db"), CLOCK);
    boathouse = new Boathouse(log);
  }

  @AfterEach
  void close() {
    log.close();
  }

  public static PlannedPatch plan(Boathouse at) {
    return new PlannedPatch(
        at.log.newId(),
        "",
        "latex",
        "pine",
        at.rig,
        Optional.of(at.board),
        "door stile",
        Boathouse.pulsed(new HandPass(60, 25)),
        Optional.of(Figure.CIRCLE),
        4,
        "climb",
        "lowest rung",
        Optional.empty(),
        MORNING,
        Optional.of("Ada"),
        false,
        Optional.empty());
  }

  @Test
  void a_plan_keeps_its_figure_and_hands_it_to_the_patch() {
    PlannedPatch kept =
        log.planned().open(log.planned().reserve(List.of(plan(boathouse))).get(0).code());
    assertThat(kept.figure()).contains(Figure.CIRCLE);
    assertThat(
            Plans.asPattern(kept, boathouse.board, boathouse.finish)
                .patch()
                .circumstances()
                .head()
                .figure())
        .contains(Figure.CIRCLE);
    assertThat(PlanText.settings(kept)).endsWith(", figure circle");
  }

  private static void burn(Boathouse at, String code) {
    at.log.add(Boathouse.entry(at.patch(code, MORNING, at.reading(1, "residue"))));
  }

  @Test
  void a_plan_comes_back_as_it_was_with_a_code_that_nobody_else_gets() {
    burn(boathouse, "P-0001");
    List<PlannedPatch> reserved = log.planned().reserve(List.of(plan(boathouse), plan(boathouse)));

    assertThat(reserved).extracting(PlannedPatch::code).containsExactly("P-0002", "P-0003");
    assertThat(log.planned().all()).isEqualTo(reserved);
    assertThat(log.nextPatchCode()).isEqualTo("P-0004");
    assertThat(log.planned().open("2")).isEqualTo(reserved.get(0));
  }

  @Test
  void recording_under_its_code_fulfils_a_plan_once() {
    log.planned().reserve(List.of(plan(boathouse), plan(boathouse)));
    burn(boathouse, "P-0001");

    assertThat(log.planned().open()).extracting(PlannedPatch::code).containsExactly("P-0002");
    assertThatThrownBy(() -> log.planned().open("P-0001"))
        .isInstanceOf(Refusal.class)
        .hasMessage("Planned patch P-0001 was burned already; add a further reading to it.");
    assertThatThrownBy(() -> log.planned().open("P-0009")).isInstanceOf(Refusal.class);
  }

  @Test
  void joining_logs_keeps_what_is_planned_and_renumbers_what_is_taken() {
    log.planned().reserve(List.of(plan(boathouse)));
    Path there = folder.resolve("slipway.db");
    try (Logbook other = Logbook.open(there, CLOCK)) {
      Boathouse slipway = new Boathouse(other);
      other.planned().reserve(List.of(plan(slipway), plan(slipway)));
      burn(slipway, "P-0001");
    }
    Merged merged = Merge.into(log, "Ada").from(there, Resolution.UNDECIDED);

    assertThat(log.planned().all())
        .extracting(PlannedPatch::code, PlannedPatch::fulfilled)
        .containsExactly(tuple("P-0001", false), tuple("P-0002", true), tuple("P-0003", false));
    assertThat(merged.notes())
        .contains(
            "The code P-0001 is taken by another patch here, so the merged one is P-0002; write"
                + " that on its tape.");
    assertThat(Merge.into(log, "Ada").from(there, Resolution.UNDECIDED).patches()).isZero();
  }

  @Test
  void a_copy_that_burned_what_was_planned_here_fulfils_it_here() throws Exception {
    log.planned().reserve(List.of(plan(boathouse)));
    Path copy = folder.resolve("copy.db");
    log.backup(copy);
    try (Logbook other = Logbook.openExisting(copy, CLOCK)) {
      burn(Boathouse.alreadySetUp(other), "P-0001");
    }
    Merge.into(log, "Ada").from(copy, Resolution.UNDECIDED);

    assertThat(Files.exists(copy)).isTrue();
    assertThat(log.planned().open()).isEmpty();
    assertThat(log.hasPatch("P-0001")).isTrue();
  }

  /** The plan was P-0001 there and became P-0002 here, whoever burns it. */
  @Test
  void a_plan_that_changed_its_code_on_the_way_is_ticked_off_when_it_comes_back_burned() {
    burn(boathouse, "P-0001");
    Path there = folder.resolve("slipway.db");
    try (Logbook other = Logbook.open(there, CLOCK)) {
      other.planned().reserve(List.of(plan(new Boathouse(other))));
      assertThat(Merge.into(log, "Ada").from(there, Resolution.UNDECIDED).notes())
          .contains(
              "The code P-0001 of a merged planned patch is taken here, so its code is now P-0002;"
                  + " write that on its tape and its list.");
      burn(boathouse, "P-0002");
      Merge.into(other, "Bo").from(log.file(), Resolution.UNDECIDED);
      assertThat(other.planned().all())
          .extracting(PlannedPatch::code, PlannedPatch::fulfilled)
          .containsExactly(tuple("P-0002", true));
      assertThat(other.hasPatch("P-0002")).isTrue();
      assertThat(other.check()).isEmpty();
    }
  }

  @Test
  void a_plan_that_both_benches_burned_is_fulfilled_once_and_the_other_patch_gets_a_code() {
    log.planned().reserve(List.of(plan(boathouse)));
    Path copy = folder.resolve("slipway.db");
    log.backup(copy);
    burn(boathouse, "P-0001");
    try (Logbook other = Logbook.openExisting(copy, CLOCK)) {
      burn(Boathouse.alreadySetUp(other), "P-0001");
    }
    Merged merged =
        Merge.into(log, "Ada")
            .sure(true)
            .from(copy, Resolution.UNDECIDED); // of one minute and one outcome here

    assertThat(merged.patches()).isEqualTo(1);
    assertThat(merged.notes())
        .containsExactly(
            "The code P-0001 is taken by another patch here, so the merged one is P-0002; write"
                + " that on its tape.");
    assertThat(log.planned().all())
        .extracting(PlannedPatch::code, PlannedPatch::fulfilled)
        .containsExactly(tuple("P-0001", true));
    assertThat(log.check()).isEmpty();
  }

  @Test
  void a_plan_that_is_given_up_keeps_its_code_and_the_history_says_who_and_why() {
    log.planned().reserve(List.of(plan(boathouse), plan(boathouse), plan(boathouse)));

    assertThat(log.voidPlans(List.of("1", "P-0003", "p-0001"), "Ben", "the stile split"))
        .extracting(PlannedPatch::code)
        .containsExactly("P-0001", "P-0003");

    assertThat(log.planned().open()).extracting(PlannedPatch::code).containsExactly("P-0002");
    assertThat(log.planned().all())
        .extracting(PlannedPatch::voided)
        .containsExactly(
            Optional.of("the stile split"), Optional.empty(), Optional.of("the stile split"));
    assertThat(log.nextPatchCode()).isEqualTo("P-0004");
    assertThatThrownBy(() -> log.planned().open("P-0001"))
        .isInstanceOf(Refusal.class)
        .hasMessage(
            "Planned patch P-0001 is void: the stile split. Its code stays taken; plan"
                + " a new patch instead.");
    assertThat(log.history(log.planned().all().get(0)))
        .extracting(Change::what, Change::by, Change::after)
        .containsExactly(
            tuple("planned_patch.voided_why", Optional.of("Ben"), Optional.of("the stile split")));
  }

  @Test
  void where_one_of_several_cannot_be_given_up_none_is() {
    log.planned().reserve(List.of(plan(boathouse), plan(boathouse)));
    burn(boathouse, "P-0002");

    assertThatThrownBy(() -> log.voidPlans(List.of("P-0001", "P-0002"), "Ben", "rain"))
        .isInstanceOf(Refusal.class)
        .hasMessageStartingWith("Planned patch P-0002 was burned already");
    assertThat(log.planned().open()).extracting(PlannedPatch::code).containsExactly("P-0001");
    assertThatThrownBy(() -> log.voidPlans(List.of("P-0001"), "Ben", " "))
        .isInstanceOf(Refusal.class);
  }

  @Test
  void a_patch_burned_all_the_same_is_recorded_under_the_code_on_its_tape() {
    log.planned().reserve(List.of(plan(boathouse)));
    log.voidPlans(List.of("P-0001"), "Ben", "rain");
    burn(boathouse, "P-0001");

    PlannedPatch plan = log.planned().all().get(0);
    assertThat(plan.fulfilled()).isTrue();
    assertThat(plan.voided()).contains("rain");
    assertThat(log.planned().open()).isEmpty();
  }

  @Test
  void a_void_plan_of_another_log_comes_in_void() {
    Path there = folder.resolve("slipway.db");
    try (Logbook other = Logbook.open(there, CLOCK)) {
      Boathouse slipway = new Boathouse(other);
      other.planned().reserve(List.of(plan(slipway)));
      other.voidPlans(List.of("P-0001"), "Ben", "rain");
    }
    Merge.into(log, "Ada").from(there, Resolution.UNDECIDED);

    assertThat(log.planned().all())
        .extracting(PlannedPatch::voided)
        .containsExactly(Optional.of("rain"));
    assertThat(log.history(log.planned().all().get(0))).hasSize(1);
  }

  @Test
  void a_plan_of_both_logs_that_one_gave_up_is_void_in_both_and_told_once() {
    log.planned().reserve(List.of(plan(boathouse)));
    Path copy = folder.resolve("slipway.db");
    log.backup(copy);
    try (Logbook other = Logbook.openExisting(copy, CLOCK)) {
      other.voidPlans(List.of("P-0001"), "Ben", "rain");
    }
    Merge.into(log, "Ada").from(copy, Resolution.UNDECIDED);
    Merge.into(log, "Ada").from(copy, Resolution.UNDECIDED);

    PlannedPatch plan = log.planned().all().get(0);
    assertThat(plan.voided()).contains("rain");
    assertThat(log.history(plan)).extracting(Change::by).containsExactly(Optional.of("Ben"));
    assertThat(log.check()).isEmpty();
  }

  @Test
  void a_plan_that_both_gave_up_keeps_the_reason_given_here() {
    log.planned().reserve(List.of(plan(boathouse)));
    Path copy = folder.resolve("slipway.db");
    log.backup(copy);
    try (Logbook other = Logbook.openExisting(copy, CLOCK)) {
      other.voidPlans(List.of("P-0001"), "Ben", "rain");
    }
    log.voidPlans(List.of("P-0001"), "Ada", "the stile split");

    assertThat(Merge.into(log, "Ada").from(copy, Resolution.UNDECIDED).plans().givenUp()).isZero();
    assertThat(log.planned().all())
        .extracting(PlannedPatch::voided)
        .containsExactly(Optional.of("the stile split"));
  }

  @Test
  void the_database_itself_keeps_a_plan_as_it_was_planned() {
    log.planned().reserve(List.of(plan(boathouse)));
    try (Database database = LogFile.openExisting(folder.resolve("boathouse.db"))) {
      for (String change :
          List.of("code = 'P-0009'", "passes = 1", "place = 'the door'", "power_pct = 99")) {
        assertThatThrownBy(() -> database.update("UPDATE planned_patch SET " + change))
            .as(change)
            .hasMessageContaining("A planned patch stays as it was planned");
      }
      assertThatThrownBy(() -> database.update("DELETE FROM planned_patch"))
          .hasMessageContaining("A planned patch is never deleted; void it");
      burn(boathouse, "P-0001");
      assertThatThrownBy(() -> database.update("UPDATE planned_patch SET patch_id = NULL"))
          .hasMessageContaining("A planned patch is fulfilled once");
    }
  }

  private static PlannedPatch after(PlannedPatch plan, PlannedPatch earlier) {
    return new PlannedPatch(
        plan.id(),
        plan.code(),
        plan.family(),
        plan.wood(),
        plan.rig(),
        plan.board(),
        plan.place(),
        plan.settings(),
        plan.figure(),
        plan.passes(),
        plan.purpose(),
        "next rung up",
        Optional.of(PlanCondition.noChar(earlier)),
        plan.plannedAt(),
        plan.by(),
        plan.fulfilled(),
        plan.voided());
  }

  @Test
  void a_plan_that_hangs_on_another_says_so_with_the_code_that_the_other_has() {
    PlannedPatch first = log.planned().reserve(List.of(plan(boathouse))).get(0);
    log.planned().reserve(List.of(after(plan(boathouse), first)));
    PlannedPatch second = log.planned().open("P-0002");
    assertThat(second.condition()).contains(PlanCondition.noChar(first));
    assertThat(second.reason()).isEqualTo("next rung up");
    assertThat(second.reasonInFull()).isEqualTo("next rung up; only if P-0001 did not char");
  }

  @Test
  void what_a_plan_hangs_on_never_changes() {
    PlannedPatch first = log.planned().reserve(List.of(plan(boathouse))).get(0);
    log.planned().reserve(List.of(after(plan(boathouse), first)));
    assertThatThrownBy(
            () ->
                log.database()
                    .update("UPDATE planned_patch SET depends_on = NULL, condition = NULL"))
        .isInstanceOf(Refusal.class)
        .hasMessageStartingWith("A planned patch stays as it was planned");
  }

  @Test
  void a_plan_cannot_hang_on_one_that_is_not_in_the_log() {
    PlannedPatch stranger = plan(boathouse).coded("P-0009");
    assertThatThrownBy(() -> log.planned().reserve(List.of(after(plan(boathouse), stranger))))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("refers to something that is not in this log");
    assertThat(log.planned().all()).isEmpty();
  }
}
