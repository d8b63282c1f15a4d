package charline.log.merge;

import static charline.log.Boathouse.CLOCK;
import static charline.log.Boathouse.MORNING;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import charline.log.Boathouse;
import charline.log.Change;
import charline.log.Filter;
import charline.log.Joins;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.trial.Board;
import charline.trial.Coat;
import charline.trial.Finish;
import charline.trial.Patch;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import charline.trial.RigBuilder;
import charline.trial.Tone;
import charline.trial.WoodForm;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Rigs, power checks, boards and finishes of two logs that are joined. */
class MergeSetUpTest {
  @TempDir Path folder;
  Logbook log;
  Logbook other;

  private Logbook open(String name, long hoursLater) {
    return Logbook.open(folder.resolve(name), Clock.offset(CLOCK, Duration.ofHours(hoursLater)));
  }

  @AfterEach
  void close() {
    log.close();
    other.close();
  }

  private Merged merge(Resolution take) {
    return Merge.into(log, "Cy").from(other.file(), take);
  }

  private static void burn(Logbook log, int hour, String code) {
    Boathouse here = Boathouse.alreadySetUp(log);
    Patch patch = here.patch(code, MORNING.plusHours(hour), here.reading(1, "clean"));
    log.add(Boathouse.entry(patch));
  }

  private static List<UUID> rigs(Logbook log) {
    return log.patches(Filter.ALL).stream().map(e -> e.patch().rig().id()).toList();
  }

  /** One log began as a copy of the other. */
  @Nested
  class OfOneLog {
    private Rig rig;
    private PowerCheck check;

    @BeforeEach
    void part() {
      log = open("boathouse.db", 0);
      rig = new Boathouse(log).rig;
      check = new PowerCheck(log.newId(), MORNING.minusDays(1), 100, 180);
      log.rigEntries().addCheck(rig.name(), check, "Ada");
      burn(log, -2, "P-0001");
      log.backup(folder.resolve("slipway.db"));
      other = open("slipway.db", 1);
    }

    private PowerCheck metered(double watts) {
      return new PowerCheck(check.id(), check.at(), check.percent(), watts);
    }

    @Test
    void a_power_check_that_was_amended_there_is_amended_here_with_its_history() {
      other.rigEntries().amend(rig, metered(190), "Bo", "misread");
      Merged merged = merge(Resolution.UNDECIDED);
      assertThat(merged.amended()).isEqualTo(1);
      assertThat(merged.powers().patches()).isEqualTo(1);
      assertThat(log.rig(rig.name()).checks()).containsExactly(metered(190));
      assertThat(log.history(rig)).isEqualTo(other.history(rig));
      assertThat(merge(Resolution.UNDECIDED).isEmpty()).isTrue();
    }

    @Test
    void a_power_check_void_there_and_amended_here_is_a_conflict_until_it_is_decided() {
      other.rigEntries().voidCheck(rig, check, "Bo", "meter not warm");
      log.rigEntries().amend(rig, metered(190), "Ada", null);
      assertThat(merge(Resolution.UNDECIDED).conflicts())
          .containsExactly(
              "A power check of rig shop-200 was amended here and in slipway.db: metered power is"
                  + " 190 W here and 180 W there, it counts here and is void there (meter not"
                  + " warm).");
      assertThat(log.rig(rig.name()).checks()).containsExactly(metered(190));
      assertThat(merge(Resolution.THERE).settled()).isEqualTo(1);
      assertThat(log.rig(rig.name()).checks()).isEmpty();
      assertThat(log.rigEntries().voidChecks(rig))
          .extracting(v -> v.why())
          .containsExactly("meter not warm");
      assertThat(merge(Resolution.UNDECIDED).conflicts()).isEmpty();
    }

    @Test
    void a_board_that_is_void_there_is_void_here() {
      other.voidBoard(other.board("door stile"), "Bo", "treated");
      merge(Resolution.UNDECIDED);
      assertThat(log.voided(log.board("door stile"))).contains("treated");
      assertThat(log.patches(Filter.ALL)).isEmpty();
      assertThat(log.check()).isEmpty();
    }

    private Finish coated(double micrometres, int coats) {
      Finish old = other.finish("white over grey");
      Coat top = new Coat("latex", Optional.of(Tone.PALE), OptionalDouble.of(micrometres));
      Coat below = new Coat("primer", Optional.empty(), OptionalDouble.empty());
      return new Finish(
          old.id(), old.name(), old.family(), List.of(top, below, below).subList(0, coats));
    }

    @Test
    void coats_that_were_amended_there_are_amended_here_with_their_history() {
      other.amend(coated(120, 3), "Bo", "measured");
      Merged merged = merge(Resolution.UNDECIDED);
      assertThat(merged.conflicts()).isEmpty();
      assertThat(merged.amended()).isEqualTo(1);
      assertThat(log.finish("white over grey")).isEqualTo(coated(120, 3));
      assertThat(log.history(coated(120, 3))).isEqualTo(other.history(coated(120, 3)));
      other.amend(coated(120, 1), "Bo", "one coat only");
      merge(Resolution.UNDECIDED);
      assertThat(log.finish("white over grey").coats()).hasSize(1);
      assertThat(merge(Resolution.UNDECIDED).isEmpty()).isTrue();
    }

    @Test
    void coats_amended_in_both_are_a_conflict_until_it_is_decided() {
      other.amend(coated(120, 2), "Bo", "measured");
      log.amend(coated(60, 2), "Ada", "measured");
      assertThat(merge(Resolution.UNDECIDED).conflicts())
          .containsExactly("Finish white over grey has other coats in slipway.db.");
      assertThat(merge(Resolution.HERE).settled()).isEqualTo(1);
      assertThat(log.finish("white over grey")).isEqualTo(coated(60, 2));
      assertThat(merge(Resolution.UNDECIDED).conflicts()).isEmpty();
      log.backup(folder.resolve("back.db"));
      assertThat(
              Merge.into(other, "Bo")
                  .from(folder.resolve("back.db"), Resolution.UNDECIDED)
                  .conflicts())
          .isEmpty();
      assertThat(other.finish("white over grey")).isEqualTo(coated(60, 2));
    }

    /** A second record of the rig, known to both logs. */
    private Rig second() {
      Rig twin = RigBuilder.like(rig).id(log.newId()).named("second").checks(List.of()).build();
      log.add(twin, "Ada");
      Merge.into(other, "Bo").from(log.file(), Resolution.UNDECIDED);
      return twin;
    }

    @Test
    void what_is_burned_there_on_a_rig_joined_here_counts_for_the_other_record() {
      Rig twin = second();
      log.join(Joins.Kind.RIG, rig.id(), twin.id(), "Ada", "one laser");
      burn(other, -1, "P-0009");
      merge(Resolution.UNDECIDED);
      assertThat(rigs(log)).containsExactly(twin.id(), twin.id());
      assertThat(log.rig("second").checks()).hasSize(1);

      Merge.into(other, "Bo").from(log.file(), Resolution.UNDECIDED);
      assertThat(rigs(other)).containsExactly(twin.id(), twin.id());
      assertThat(other.rig("shop-200").id()).isEqualTo(twin.id());
      assertThat(other.check()).isEmpty();
    }

    @Test
    void rigs_that_were_joined_into_each_other_are_a_conflict() {
      Rig twin = second();
      log.join(Joins.Kind.RIG, rig.id(), twin.id(), "Ada", null);
      other.join(Joins.Kind.RIG, twin.id(), rig.id(), "Bo", null);
      assertThat(merge(Resolution.UNDECIDED).conflicts())
          .anySatisfy(
              text ->
                  assertThat(text)
                      .contains("Rig second was amended here and in slipway.db: joined into"));
      assertThat(log.rigs()).extracting(Rig::name).containsExactly("second");
      assertThat(rigs(log)).containsExactly(twin.id());
    }

    @Test
    void a_patch_that_a_merge_brought_is_nobodys_last_here() {
      burn(other, -1, "P-0009");
      merge(Resolution.UNDECIDED);
      assertThat(log.lastPatch("Ada").map(PatchEntry::patch).map(Patch::code)).contains("P-0001");
      assertThat(other.lastPatch("Ada").map(PatchEntry::patch).map(Patch::code)).contains("P-0009");
      assertThat(other.lastPatch("Bo")).isEmpty();
    }
  }

  /** Both were set up by themselves. */
  @Nested
  class OfTwoLogs {
    @BeforeEach
    void setUp() {
      log = open("boathouse.db", 0);
      new Boathouse(log);
      burn(log, -2, "P-0001");
      other = open("slipway.db", 1);
      new Boathouse(other);
      burn(other, -1, "P-0002");
    }

    @Test
    void what_agrees_under_one_name_is_offered_to_be_joined() {
      Merged merged = merge(Resolution.UNDECIDED);
      assertThat(merged.twice())
          .extracting(t -> t.kind().word(), SetUpTwice::name, SetUpTwice::known)
          .containsExactly(
              tuple("rig", "shop-200 (2)", "shop-200"),
              tuple("board", "door stile (2)", "door stile"),
              tuple("finish", "white over grey (2)", "white over grey"));
      assertThat(merged.joined()).isEmpty();
      assertThat(log.rigs()).hasSize(2);
      assertThat(merge(Resolution.UNDECIDED).isEmpty()).isTrue();
    }

    @Test
    void it_is_joined_where_the_person_asks_for_it_also_in_a_later_merge() {
      merge(Resolution.UNDECIDED);
      Merged merged = Merge.into(log, "Cy").joining(true).from(other.file(), Resolution.UNDECIDED);
      assertThat(merged.joined()).hasSize(3);
      assertThat(log.rigs()).extracting(Rig::name).containsExactly("shop-200");
      assertThat(log.boards()).extracting(Board::name).containsExactly("door stile");
      assertThat(log.finishes()).extracting(Finish::name).containsExactly("white over grey");
      assertThat(log.rig("shop-200 (2)").name()).isEqualTo("shop-200");
      Patch brought = log.patch("P-0002").patch();
      Patch own = log.patch("P-0001").patch();
      assertThat(brought.rig()).isEqualTo(own.rig());
      assertThat(brought.board()).isEqualTo(own.board());
      assertThat(brought.finish()).isEqualTo(own.finish());
      assertThat(log.history("P-0002"))
          .extracting(Change::what, Change::why)
          .contains(tuple("patch.rig_id", Optional.of("joined when slipway.db was merged")));
      assertThat(log.check()).isEmpty();
      assertThat(merge(Resolution.UNDECIDED).twice()).isEmpty();
    }

    @Test
    void what_differs_is_not_offered() {
      Board there = other.board("door stile");
      other.amend(
          new Board(
              there.id(),
              there.name(),
              "oak",
              WoodForm.SOLID,
              there.condition(),
              there.moisturePercent(),
              there.job()),
          "Bo",
          null);
      assertThat(merge(Resolution.UNDECIDED).twice())
          .extracting(t -> t.kind().word())
          .containsExactly("rig", "finish");
    }
  }
}
