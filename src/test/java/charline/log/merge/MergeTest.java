package charline.log.merge;

import static charline.log.Boathouse.CLOCK;
import static charline.log.Boathouse.MORNING;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import charline.exposure.HandPass;
import charline.exposure.PowerSetting;
import charline.exposure.Settings;
import charline.log.Boathouse;
import charline.log.Change;
import charline.log.Filter;
import charline.log.Finding;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.PlannedPatchesTest;
import charline.log.VoidUpkeep;
import charline.refusal.Refusal;
import charline.trial.AnyCircumstances;
import charline.trial.Circumstances;
import charline.trial.Patch;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import charline.trial.RigBuilder;
import charline.trial.Upkeep;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MergeTest {
  @TempDir Path folder;
  Path there;
  Logbook log;
  Boathouse boathouse;

  @BeforeEach
  void open() {
    there = folder.resolve("slipway.db");
    log = Logbook.open(folder.resolve("boathouse.db"), CLOCK);
    boathouse = new Boathouse(log);
  }

  @AfterEach
  void close() {
    log.close();
  }

  @Test
  void another_log_joins_with_its_history_and_what_is_taken_gives_way() {
    boathouse.burn("clean");
    PatchEntry theirs;
    try (Logbook other = Logbook.open(there, CLOCK)) {
      Boathouse slipway = new Boathouse(other);
      other
          .rigEntries()
          .addCheck("shop-200", new PowerCheck(other.newId(), MORNING, 100, 180), "Bo");
      slipway.burn("tint");
      other.addReading("P-0001", slipway.reading(3, "char"));
      slipway.burn("residue");
      other.voidPatch("P-0001", "Bo", "knot");
      theirs = other.patch("P-0001");
    }
    Merged merged = Merge.into(log, "Ada").from(there, Resolution.UNDECIDED);
    assertThat(merged)
        .extracting(
            Merged::rigs, Merged::boards, Merged::finishes, Merged::patches, Merged::readings)
        .containsExactly(1, 1, 1, 2, 3);
    assertThat(merged.powers()).isEqualTo(new Merged.Powers(Map.of("shop-200 (2)", 1), 0));
    assertThat(merged.newVoid()).isEqualTo(1);
    assertThat(merged.isEmpty()).isFalse();
    assertThat(merged.notes())
        .contains(
            "The name shop-200 is taken by another rig here, so the merged one is called shop-200"
                + " (2).",
            "The code P-0001 is taken by another patch here, so the merged one is P-0002; write"
                + " that on its tape.");
    PatchEntry ours = log.patch("P-0002");
    assertThat(ours.patch().id()).isEqualTo(theirs.patch().id());
    assertThat(ours.patch().readings()).isEqualTo(theirs.patch().readings());
    assertThat(ours.patch().finish().coats()).hasSize(2);
    assertThat(ours.voided()).contains("knot");
    assertThat(log.history("P-0002"))
        .extracting(Change::what, Change::before, Change::after)
        .containsExactly(
            tuple("patch.voided_why", Optional.empty(), Optional.of("knot")),
            tuple("patch.code", Optional.of("P-0001"), Optional.of("P-0002")));
    assertThat(log.rig("shop-200 (2)").checks()).hasSize(1);
    assertThat(log.check()).isEmpty();

    Merged again = Merge.into(log, "Ada").from(there, Resolution.UNDECIDED);
    assertThat(again.isEmpty()).isTrue();
  }

  @Test
  void a_rating_that_the_other_bench_put_right_says_how_many_patches_count_with_another_power() {
    boathouse.burn("clean");
    boathouse.burn("char");
    log.voidPatch("P-0002", "Ada", "knot");
    log.add(inWatts("P-0003"));
    log.backup(there);
    try (Logbook other = Logbook.open(there, CLOCK)) {
      Rig rig = other.rig("shop-200");
      other.amend(rated(rig, 190), "Bo", "read the plate");
    }
    boathouse.burn("tint");
    Merged merged = Merge.into(log, "Ada").from(there, Resolution.UNDECIDED);
    assertThat(merged.amended()).isEqualTo(1);
    assertThat(merged.powers()).isEqualTo(new Merged.Powers(Map.of(), 2));
    assertThat(log.patch("P-0001").patch().exposure().deliveredWatts()).isEqualTo(114);
  }

  @Test
  void how_a_pass_was_made_and_what_was_done_to_a_rig_come_along() {
    boathouse.burn("clean");
    log.backup(there);
    Circumstances made =
        AnyCircumstances.of(log.patch("P-0001").patch().settings().form(), new Random(3));
    Upkeep lens;
    try (Logbook other = Logbook.open(there, CLOCK)) {
      PatchEntry entry = other.patch("P-0001");
      other.amend(entry.with(entry.patch().with(made)), "Bo", "from the notebook");
      lens =
          new Upkeep(
              other.newId(), MORNING, "lens", OptionalDouble.of(412), Optional.of("scratched"));
      other.rigEntries().addUpkeep("shop-200", lens, "Bo");
    }
    Merged merged = Merge.into(log, "Ada").from(there, Resolution.UNDECIDED);
    assertThat(merged.amended()).isEqualTo(1);
    assertThat(merged.upkeep()).isEqualTo(Map.of("shop-200", 1));
    assertThat(log.patch("P-0001").patch().circumstances()).isEqualTo(made);
    assertThat(log.rig("shop-200").upkeep()).containsExactly(lens);
    assertThat(log.history("P-0001")).extracting(Change::what).contains("patch.figure");

    Rig rig = log.rig("shop-200");
    try (Logbook other = Logbook.open(there, CLOCK)) {
      other.rigEntries().voidUpkeep(rig, lens, "Bo", "not done");
    }
    log.rigEntries()
        .amend(
            rig,
            new Upkeep(lens.id(), lens.at(), "lens", OptionalDouble.of(421), lens.note()),
            "Ada",
            null);
    assertThat(Merge.into(log, "Ada").from(there, Resolution.UNDECIDED).conflicts())
        .singleElement()
        .asString()
        .startsWith("Upkeep of rig shop-200 was amended here and in slipway.db: running hours is");
    Merge.into(log, "Ada").from(there, Resolution.THERE);
    assertThat(log.rigEntries().voidUpkeep(rig))
        .extracting(VoidUpkeep::why)
        .containsExactly("not done");
  }

  /** Power given in watts is taken as delivered, whatever the rig is rated for. */
  private PatchEntry inWatts(String code) {
    Patch patch = boathouse.patch(code, MORNING, boathouse.reading(1, "clean"));
    return Boathouse.entry(
        new Patch(
            patch.id(),
            code,
            MORNING,
            patch.rig(),
            patch.board(),
            patch.finish(),
            patch.settings().withPower(PowerSetting.watts(120)),
            OptionalDouble.empty(),
            patch.readings()));
  }

  private static Rig rated(Rig rig, double watts) {
    return RigBuilder.like(rig).ratedWatts(watts).build();
  }

  @Test
  void a_patch_that_got_another_code_is_called_so_in_both_logs() {
    log.backup(there);
    boathouse.burn("clean");
    try (Logbook other = Logbook.open(there, CLOCK)) {
      Boathouse.alreadySetUp(other).burn("tint");
      Merge.into(log, "Ada").from(there, Resolution.UNDECIDED);
      assertThat(Merge.into(other, "Bo").from(log.file(), Resolution.UNDECIDED).notes())
          .containsExactly(
              "P-0001 got the code P-0002 when it was merged into boathouse.db, and has it here now"
                  + " too; write that on its tape.");
      assertThat(other.patches(Filter.ALL))
          .containsExactlyInAnyOrderElementsOf(log.patches(Filter.ALL));
      assertThat(other.history("P-0002")).isEqualTo(log.history("P-0002"));
      assertThat(Merge.into(other, "Bo").from(log.file(), Resolution.UNDECIDED).notes()).isEmpty();
      assertThat(Merge.into(log, "Ada").from(there, Resolution.UNDECIDED).notes()).isEmpty();
      assertThat(other.check()).isEmpty();
    }
  }

  /** There the patch is P-0002, but the tape of another says so here: burned, or planned. */
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void a_code_given_there_is_not_taken_over_where_it_is_in_use_here(boolean burned) {
    log.backup(there);
    boathouse.burn("clean");
    try (Logbook other = Logbook.open(there, CLOCK)) {
      Boathouse slipway = Boathouse.alreadySetUp(other);
      UUID tinted = slipway.burn("tint").patch().id();
      Merge.into(log, "Ada").from(there, Resolution.UNDECIDED);
      if (burned) {
        slipway.burn("char");
      } else {
        other.planned().reserve(List.of(PlannedPatchesTest.plan(slipway)));
      }
      assertThat(Merge.into(other, "Bo").from(log.file(), Resolution.UNDECIDED).notes())
          .containsExactly(
              "P-0001 has the code P-0002 in boathouse.db, which another patch has here, so its"
                  + " code is now P-0003; write that on its tape.");
      assertThat(other.patch("P-0003").patch().id()).isEqualTo(tinted);
      assertThat(other.hasPatch("P-0002")).isEqualTo(burned);
      assertThat(other.check()).isEmpty();
    }
  }

  @Test
  void a_log_does_not_join_itself_nor_one_that_is_not_there() {
    assertThatThrownBy(() -> Merge.into(log, "Ada").from(log.file(), Resolution.UNDECIDED))
        .isInstanceOf(Refusal.class)
        .hasMessageEndingWith("is this log itself; choose another one.");
    assertThatThrownBy(() -> Merge.into(log, "Ada").from(there, Resolution.UNDECIDED))
        .isInstanceOf(Refusal.class)
        .hasMessage("There is no log at %s; give the file of another bench's log.", there);
  }

  @Test
  void what_is_no_log_is_refused_with_the_hint_for_a_merge() throws Exception {
    Files.writeString(there, "not a log at all, but a note somebody left in the folder");
    assertThatThrownBy(() -> Merge.into(log, "Ada").from(there, Resolution.UNDECIDED))
        .isInstanceOf(Refusal.class)
        .hasMessage(
            "%s is not a charline log, or its beginning is damaged; it was not changed. Choose the"
                + " file of another bench's log, or restore the latest backup.",
            there);
  }

  @Test
  void a_backup_is_a_log_with_everything_in_it_and_overwrites_nothing() throws Exception {
    boathouse.burn("clean");
    Path copy = folder.resolve("copies/monday.db");
    log.backup(copy);
    try (Logbook restored = Logbook.openExisting(copy, CLOCK)) {
      assertThat(restored.patches(Filter.ALL)).isEqualTo(log.patches(Filter.ALL));
      assertThat(restored.rigs()).isEqualTo(log.rigs());
    }
    byte[] before = Files.readAllBytes(copy);
    assertThatThrownBy(() -> log.backup(copy))
        .isInstanceOf(Refusal.class)
        .hasMessageEndingWith("already exists; choose a new file for the backup.");
    assertThat(Files.readAllBytes(copy)).isEqualTo(before);
  }

  @Test
  void a_check_names_values_that_may_have_been_mistyped() {
    Settings quick = Boathouse.pulsed(new HandPass(60, 3000)).withPower(PowerSetting.watts(900));
    log.add(
        Boathouse.entry(
            new Patch(
                log.newId(),
                "P-0001",
                MORNING.plusDays(2),
                boathouse.rig,
                boathouse.board,
                boathouse.finish,
                quick,
                OptionalDouble.empty(),
                List.of(boathouse.reading(1, "clean")))));
    log.rigEntries().addCheck("shop-200", new PowerCheck(log.newId(), MORNING, 100, 18), null);
    assertThat(log.check())
        .extracting(Finding::text)
        .containsExactly(
            "Rig shop-200, power check on 2026-03-10: 18 W at 100 % is 9 % of what shop-200 should"
                + " give; amend it if it was mistyped.",
            "P-0001 has a hand speed of 3000 mm/s, far from the usual 5 to 60 mm/s; amend it if it"
                + " was mistyped.",
            "P-0001: Power of 900 W is more than rig shop-200 gives (200 W at 100 %); amend it if"
                + " it was mistyped.",
            "P-0001 was burned in the future (2026-03-12T09:30+01:00); amend the time.");
  }
}
