package charline.log;

import static charline.log.Boathouse.CLOCK;
import static charline.log.Boathouse.MORNING;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import charline.exposure.DoseForm;
import charline.exposure.Emission;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.SpotDefinition;
import charline.exposure.TimedArea;
import charline.log.search.Attribute;
import charline.log.search.Condition;
import charline.log.search.Condition.Burned;
import charline.log.search.Condition.Marks;
import charline.log.search.Condition.Named;
import charline.log.search.Condition.Seen;
import charline.log.search.Search;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Finish;
import charline.trial.Mark;
import charline.trial.Outcome;
import charline.trial.Patch;
import charline.trial.Pieces;
import charline.trial.PowerCheck;
import charline.trial.Reading;
import charline.trial.Rig;
import charline.trial.RigBuilder;
import charline.trial.WoodForm;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class LogbookTest {
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

  @Test
  void a_rig_comes_back_as_it_was_recorded() {
    assertThat(log.rig("shop-200")).isEqualTo(boathouse.rig);
    Rig bare =
        RigBuilder.heron(log.newId())
            .bare()
            .named("bare cw")
            .emission(Emission.CONTINUOUS)
            .ratedWatts(1500)
            .wavelengthNanometres(1080)
            .spotMeans(SpotDefinition.FULL_WIDTH_HALF_MAXIMUM)
            .checks(List.of(new PowerCheck(log.newId(), MORNING, 50, 700)))
            .build();
    log.add(bare, null);
    assertThat(log.rigs()).containsExactly(bare, boathouse.rig);
  }

  @Test
  void boards_and_finishes_come_back_as_they_were_recorded() {
    Board bare =
        new Board(
            log.newId(),
            "Cap rail",
            "white oak",
            WoodForm.VENEER,
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.empty());
    Finish plain = new Finish(log.newId(), "unknown film", "clear coat", List.of());
    log.add(bare, null);
    log.add(plain, null);
    assertThat(log.boards()).containsExactly(bare, boathouse.board);
    assertThat(log.finishes()).containsExactly(plain, boathouse.finish);
    assertThat(log.board("CAP RAIL")).isEqualTo(bare);
    assertThat(log.finish(" white over grey ")).isEqualTo(boathouse.finish);
  }

  @ParameterizedTest
  @ValueSource(strings = {"slip\u000bway", "slipway\u0000", "slip\rway"})
  void a_name_with_a_character_that_cannot_be_seen_is_refused(String name) {
    Board board = boathouse.board;
    Board named =
        new Board(
            log.newId(),
            name,
            board.wood(),
            board.form(),
            board.condition(),
            board.moisturePercent(),
            board.job());
    String sentence =
        "of a board must not contain control characters, and this one has U+%04X as its character"
            + " %d; type it again instead of pasting it.";
    int at =
        IntStream.range(0, name.length())
            .filter(i -> name.charAt(i) < ' ')
            .findFirst()
            .orElseThrow();
    assertThatThrownBy(() -> log.add(named, "Ada"))
        .isInstanceOf(Refusal.class)
        .hasMessage("The name " + sentence, (int) name.charAt(at), at + 1);
    assertThat(log.boards()).containsExactly(board);
    Board renamed =
        new Board(
            board.id(),
            name,
            board.wood(),
            board.form(),
            board.condition(),
            board.moisturePercent(),
            board.job());
    assertThatThrownBy(() -> log.amend(renamed, "Ada", "it has two"))
        .hasMessageStartingWith("The name of a board must not contain control characters");
    Finish finish = new Finish(log.newId(), name, "latex", List.of());
    assertThatThrownBy(() -> log.add(finish, "Ada"))
        .hasMessageStartingWith("The name of a finish must not contain control characters");
    Patch coded = boathouse.patch(name, MORNING, boathouse.reading(1, "clean"));
    assertThatThrownBy(() -> log.add(Boathouse.entry(coded)))
        .hasMessageStartingWith("The code of a patch must not contain control characters");
    assertThat(log.patches(Filter.ALL)).isEmpty();
  }

  @Test
  void persons_and_reasons_are_kept_as_plain_text() {
    boathouse.burn("clean");
    log.voidPatch("P-0001", "Ada\u0000", "\u000bon a\rknot\u0007");
    assertThat(log.patch("P-0001").voided()).contains("on a\nknot");
    assertThat(log.history("P-0001"))
        .extracting(Change::by, Change::why)
        .containsExactly(tuple(Optional.of("Ada"), Optional.of("on a\nknot")));
    boathouse.burn("clean");
    assertThatThrownBy(() -> log.voidPatch("P-0002", "Ada", "\u0000"))
        .hasMessage("A change to a record needs a reason, and none was given; say why.");
  }

  private Reading noted(int passes, String outcome, String note) {
    Reading r = boathouse.reading(passes, outcome);
    return new Reading(
        r.id(),
        passes,
        r.outcome(),
        r.soot(),
        r.depthMicrometres(),
        r.at(),
        r.by(),
        Optional.of(note));
  }

  @Test
  void a_note_of_which_nothing_can_be_seen_is_none() {
    PatchEntry burned = boathouse.burn("char");
    String sentence =
        "Char on P-0001 after 1 pass cannot be gone after 2 without a note; say in a note what"
            + " happened, or amend the earlier reading.";
    Reading gone = noted(2, "clean", "\u0007\u0000");
    assertThatThrownBy(() -> log.addReading("P-0001", gone))
        .isInstanceOf(Refusal.class)
        .hasMessage(sentence);
    Patch patch =
        boathouse.patch(
            "P-0002", MORNING, noted(1, "tint", "\u000b"), noted(2, "clean", "by\rhand"));
    log.add(Boathouse.entry(patch));
    assertThat(log.patch("P-0002").patch().readings())
        .extracting(Reading::note)
        .containsExactly(Optional.empty(), Optional.of("by\nhand"));
    Patch hidden = boathouse.patch("P-0001", MORNING, burned.patch().lastReading(), gone);
    Patch amended =
        new Patch(
            burned.patch().id(),
            "P-0001",
            MORNING,
            hidden.rig(),
            hidden.board(),
            hidden.finish(),
            hidden.settings(),
            hidden.areaSquareCentimetres(),
            hidden.readings());
    assertThatThrownBy(() -> log.amend(Boathouse.entry(amended), "Ada", "one more"))
        .hasMessage(sentence);
    assertThat(log.patch("P-0001").patch().readings()).hasSize(1);
  }

  @Test
  void a_log_that_took_such_a_note_for_one_in_an_earlier_version_stays_readable() throws Exception {
    boathouse.burn("char");
    log.addReading("P-0001", noted(2, "clean", "sanded"));
    try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + log.file());
        Statement statement = other.createStatement()) {
      statement.execute("UPDATE reading SET note = char(7) WHERE passes = 2");
    }
    assertThat(log.patch("P-0001").patch().lastReading().note()).contains(" ");
    log.voidPatch("P-0001", "Ada", "sanded");
    assertThat(log.patch("P-0001").voided()).contains("sanded");
  }

  @Test
  void the_words_with_a_photo_are_kept_as_plain_text() {
    boathouse.burn("clean");
    Photo photo =
        new Photo(
            log.newId(),
            "sl\u0007ip.jpg",
            "image/jpeg",
            new byte[3],
            MORNING,
            Optional.of("the\rslip"));
    log.addPhoto("P-0001", photo, "Ada");
    assertThat(log.photos("P-0001"))
        .extracting(KeptPhoto::fileName, KeptPhoto::caption)
        .containsExactly(tuple("sl ip.jpg", Optional.of("the\nslip")));
  }

  static Stream<DoseForm> forms() {
    return Stream.of(new LineScan(5000, 0.1), new HandPass(60, 30), new TimedArea(25, 12.5));
  }

  @ParameterizedTest
  @MethodSource("forms")
  void a_patch_comes_back_with_every_field_whatever_the_dose_form(DoseForm form) {
    Reading full =
        new Reading(
            log.newId(),
            2,
            Outcome.of(Mark.CHAR, Mark.RESIDUE),
            Optional.of(true),
            OptionalDouble.of(34.5),
            MORNING.plusHours(1),
            Optional.of("Bo"),
            Optional.of("brown at the knot"));
    Patch patch =
        new Patch(
            log.newId(),
            "P-0001",
            MORNING,
            boathouse.rig,
            boathouse.board,
            boathouse.finish,
            Boathouse.pulsed(form),
            OptionalDouble.of(25),
            List.of(boathouse.reading(1, "tint"), full));
    PatchEntry entry =
        new PatchEntry(
            patch,
            Map.of("power", "60%", "hand", "1.2in/s", "note \"odd\"", "ü"),
            Optional.of("Ada"),
            Optional.of("left of the hinge"),
            Optional.empty());
    log.add(entry);
    assertThat(log.patch("P-0001")).isEqualTo(entry);
    assertThat(log.patches(Filter.ALL)).containsExactly(entry);
    assertThat(log.lastPatch("Ada")).contains(entry);
  }

  @Test
  void a_continuous_patch_comes_back_with_every_optional_field_empty() {
    Rig cw =
        RigBuilder.heron(log.newId())
            .bare()
            .named("cw")
            .emission(Emission.CONTINUOUS)
            .ratedWatts(1500)
            .wavelengthNanometres(1080)
            .spotMeans(SpotDefinition.ONE_OVER_E)
            .build();
    log.add(cw, null);
    Settings settings =
        new Settings(
            PowerSetting.watts(1200),
            new LineScan(8000, 0.25),
            new Spot(0.8, SpotDefinition.ONE_OVER_E),
            Optional.empty());
    Reading bare =
        new Reading(
            log.newId(),
            1,
            Outcome.of(Mark.CLEAN),
            Optional.empty(),
            OptionalDouble.empty(),
            MORNING,
            Optional.empty(),
            Optional.empty());
    PatchEntry entry =
        new PatchEntry(
            new Patch(
                log.newId(),
                "stile/7",
                MORNING,
                cw,
                boathouse.board,
                boathouse.finish,
                settings,
                OptionalDouble.empty(),
                List.of(bare)),
            Map.of(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());
    log.add(entry);
    assertThat(log.patch("stile/7")).isEqualTo(entry);
  }

  @Test
  void pulse_duration_may_be_unknown() {
    Settings settings =
        new Settings(
            PowerSetting.percent(40),
            new HandPass(60, 30),
            new Spot(0.5, SpotDefinition.D4_SIGMA),
            Optional.of(new Pulses(20, OptionalDouble.empty())));
    Patch patch = boathouse.patch("P-0001", MORNING, boathouse.reading(1, "clean"));
    Patch unknown =
        new Patch(
            patch.id(),
            patch.code(),
            patch.burnedAt(),
            patch.rig(),
            patch.board(),
            patch.finish(),
            settings,
            patch.areaSquareCentimetres(),
            patch.readings());
    log.add(Boathouse.entry(unknown));
    assertThat(log.patch("P-0001").patch()).isEqualTo(unknown);
  }

  @Test
  void delivered_power_follows_the_latest_power_check_on_or_before_the_patch() {
    boathouse.burn(MORNING.minusDays(20), "clean");
    boathouse.burn(MORNING.minusDays(10), "clean");
    boathouse.burn(MORNING, "clean");
    log.rigEntries()
        .addCheck("shop-200", new PowerCheck(log.newId(), MORNING.minusDays(10), 100, 180), "Ada");
    log.rigEntries()
        .addCheck("SHOP-200", new PowerCheck(log.newId(), MORNING.minusDays(1), 50, 80), null);
    log.rigEntries()
        .addCheck("shop-200", new PowerCheck(log.newId(), MORNING.plusDays(1), 50, 10), null);
    // 60 % of 200 W is 120 W nominal; the checks found 0.9 and then 0.8 of nominal.
    assertThat(log.patches(Filter.ALL))
        .extracting(e -> e.patch().exposure().deliveredWatts())
        .usingElementComparator((a, b) -> Math.abs(a - b) < 1e-9 ? 0 : 1)
        .containsExactly(120.0, 108.0, 96.0);
  }

  @Test
  void times_keep_their_zone_offset_and_are_ordered_by_the_instant() {
    boathouse.burn(MORNING.withOffsetSameInstant(ZoneOffset.ofHours(-5)), "clean");
    boathouse.burn(MORNING.minusMinutes(1), "tint");
    assertThat(log.patches(Filter.ALL))
        .extracting(e -> e.patch().burnedAt())
        .containsExactly(
            MORNING.minusMinutes(1), OffsetDateTime.parse("2026-03-10T03:30:00-05:00"));
  }

  @Test
  void codes_count_on_from_the_highest_whatever_else_is_in_the_log() {
    assertThat(log.nextPatchCode()).isEqualTo("P-0001");
    for (String code : List.of("P-0041", "B7-3", "P-9x", "P-00000000000000000001")) {
      log.add(Boathouse.entry(boathouse.patch(code, MORNING, boathouse.reading(1, "clean"))));
    }
    assertThat(log.nextPatchCode()).isEqualTo("P-0042");
    assertThat(log.hasPatch("b7-3")).isTrue();
    assertThat(log.hasPatch("P-0042")).isFalse();
  }

  @Test
  void codes_count_on_below_a_number_too_high_to_count_from() {
    for (String code : List.of("P-0041", "P-100000000", "P-999999999")) {
      log.add(Boathouse.entry(boathouse.patch(code, MORNING, boathouse.reading(1, "clean"))));
    }
    assertThat(log.nextPatchCode()).isEqualTo("P-0042");
    boathouse.burn("clean");
    assertThat(log.nextPatchCode()).isEqualTo("P-0043");
  }

  @Test
  void a_filter_may_reach_beyond_the_years_that_a_log_has_room_for() {
    boathouse.burn("clean");
    OffsetDateTime late = OffsetDateTime.parse("+10000-01-01T00:00:00Z");
    OffsetDateTime early = OffsetDateTime.parse("-0044-03-15T00:00:00Z");
    assertThat(Search.patches(log, between(early, late))).hasSize(1);
    assertThat(Search.patches(log, between(late, late.plusYears(1)))).isEmpty();
    assertThat(Search.patches(log, between(early.minusYears(1), early))).isEmpty();
  }

  private static Condition between(OffsetDateTime since, OffsetDateTime until) {
    return new Burned(Optional.of(since), Optional.of(until));
  }

  @Test
  void a_code_is_given_once_even_after_a_void() {
    boathouse.burn("clean");
    log.voidPatch("P-0001", "Ada", "wrong board");
    assertThat(log.nextPatchCode()).isEqualTo("P-0002");
    assertThatThrownBy(
            () ->
                log.add(
                    Boathouse.entry(
                        boathouse.patch("p-0001", MORNING, boathouse.reading(1, "clean")))))
        .isInstanceOf(Refusal.class)
        .hasMessage("Patch p-0001 is in this log already; the next free code is P-0002.");
  }

  @Test
  void a_patch_is_found_by_the_short_form_of_its_code() {
    boathouse.burn("clean");
    assertThat(List.of(log.patch("1"), log.patch("p1"), log.patch("p-0001")))
        .containsOnly(log.patch("P-0001"));
  }

  @Test
  void an_unknown_name_is_refused_with_the_nearest_offered() {
    boathouse.burn("clean");
    assertThatThrownBy(() -> log.rig("shop-20"))
        .isInstanceOfSatisfying(
            Refusal.class, r -> assertThat(r.kind()).isEqualTo(Refusal.Kind.USAGE))
        .hasMessage("No rig \"shop-20\" in this log; nearest: shop-200.");
    assertThatThrownBy(() -> log.board("rudder"))
        .hasMessage("No board \"rudder\" in this log; it has door stile.");
    assertThatThrownBy(() -> log.reference().wood("pien"))
        .hasMessageStartingWith("No wood \"pien\" in this log; nearest: pine");
    assertThatThrownBy(() -> log.reference().family("latx"))
        .hasMessage("No coating family \"latx\" in this log; nearest: latex.");
    assertThatThrownBy(() -> log.patch("P-0002"))
        .hasMessage("No patch \"P-0002\" in this log; nearest: P-0001.");
  }

  @Test
  void a_name_is_taken_whatever_its_case() {
    Board twin =
        new Board(
            log.newId(),
            "Door Stile",
            "oak",
            WoodForm.SOLID,
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.empty());
    assertThatThrownBy(() -> log.add(twin, null))
        .isInstanceOf(Refusal.class)
        .hasMessage("This log has a board \"door stile\" already; choose another name.");
  }

  @Test
  void a_further_reading_must_come_after_more_passes() {
    boathouse.burn("char");
    assertThatThrownBy(() -> log.addReading("P-0001", boathouse.reading(1, "char")))
        .isInstanceOf(Refusal.class)
        .hasMessageStartingWith("Passes on P-0001 must rise");
    assertThatThrownBy(() -> log.addReading("P-0001", boathouse.reading(2, "clean")))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("cannot be gone after 2 without a note");
    log.addReading("P-0001", boathouse.reading(3, "char"));
    assertThat(log.patch("P-0001").patch().readings())
        .extracting(Reading::passes)
        .containsExactly(1, 3);
    assertThat(log.history("P-0001")).isEmpty();
  }

  @Test
  void a_filter_narrows_by_every_part() {
    PatchEntry old = boathouse.burn(MORNING.minusDays(30), "clean");
    PatchEntry charred = boathouse.burn(MORNING, "char+residue");
    assertThat(Search.patches(log, only(Set.of("latex"), Set.of("pine"), Set.of())))
        .containsExactly(old, charred);
    assertThat(Search.patches(log, only(Set.of("alkyd"), Set.of(), Set.of()))).isEmpty();
    assertThat(Search.patches(log, only(Set.of(), Set.of("oak"), Set.of()))).isEmpty();
    assertThat(Search.patches(log, only(Set.of(), Set.of(), Set.of(Mark.CHAR))))
        .containsExactly(charred);
    assertThat(Search.patches(log, only(Set.of(), Set.of(), Set.of(Mark.CHAR, Mark.TINT))))
        .isEmpty();
    assertThat(Search.patches(log, during(MORNING.minusDays(1), MORNING.plusDays(1))))
        .containsExactly(charred);
    assertThat(Search.patches(log, during(MORNING.minusDays(30), MORNING))).containsExactly(old);
    assertThat(
            Search.patches(
                log, names("SHOP-200", "door stile", "White over grey", "ada", "Slip doors")))
        .containsExactly(old, charred);
    assertThat(
            Search.patches(log, names("x", "door stile", "white over grey", "Ada", "slip doors")))
        .isEmpty();
    assertThat(Search.patches(log, names("shop-200", "x", "white over grey", "Ada", "slip doors")))
        .isEmpty();
    assertThat(Search.patches(log, names("shop-200", "door stile", "x", "Ada", "slip doors")))
        .isEmpty();
    assertThat(
            Search.patches(
                log, names("shop-200", "door stile", "white over grey", "x", "slip doors")))
        .isEmpty();
    assertThat(Search.patches(log, names("shop-200", "door stile", "white over grey", "Ada", "x")))
        .isEmpty();
  }

  @Test
  void a_patch_is_found_by_who_burned_it_and_by_who_judged_it_in_a_reading_that_counts() {
    Patch burned =
        boathouse.patch(
            "P-0001",
            MORNING,
            judged(boathouse.reading(1, "residue"), "Bo"),
            judged(boathouse.reading(2, "clean"), "Cleo"));
    log.add(Boathouse.entry(burned));
    assertThat(List.of("Ada", "Bo", "Cleo"))
        .allMatch(name -> Search.patches(log, of(name)).size() == 1);
    log.amend(
        Boathouse.entry(Pieces.withReadings(burned, burned.readings().subList(0, 1))),
        "Ada",
        "another patch");
    assertThat(Search.patches(log, of("Bo"))).hasSize(1);
    assertThat(Search.patches(log, of("Cleo"))).isEmpty();
  }

  private static Reading judged(Reading r, String by) {
    return new Reading(
        r.id(),
        r.passes(),
        r.outcome(),
        r.soot(),
        r.depthMicrometres(),
        r.at(),
        Optional.of(by),
        r.note());
  }

  private static Condition of(String person) {
    return Condition.named(Attribute.PERSON, person);
  }

  private static Condition only(Set<String> families, Set<String> woods, Set<Mark> marks) {
    List<Condition> all = new ArrayList<>();
    if (!families.isEmpty()) {
      all.add(new Named(Attribute.FAMILY, families, ""));
    }
    if (!woods.isEmpty()) {
      all.add(new Named(Attribute.WOOD, woods, ""));
    }
    all.add(Seen.last(new Marks(marks, Set.of())));
    return Condition.all(all);
  }

  private static Condition during(OffsetDateTime since, OffsetDateTime until) {
    return new Burned(Optional.of(since), Optional.of(until));
  }

  private static Condition names(String rig, String board, String finish, String by, String job) {
    return Condition.all(
        List.of(
            Condition.named(Attribute.RIG, rig),
            Condition.named(Attribute.BOARD, board),
            Condition.named(Attribute.FINISH, finish),
            Condition.named(Attribute.PERSON, by),
            Condition.named(Attribute.JOB, job)));
  }

  @Test
  void a_transaction_keeps_all_or_nothing() {
    assertThatThrownBy(
            () ->
                log.inTransaction(
                    () -> {
                      boathouse.burn("clean");
                      boathouse.burn("tint");
                      throw new IllegalStateException("the sheet's line 3 is bad");
                    }))
        .hasMessage("the sheet's line 3 is bad");
    assertThat(log.patches(Filter.ALL)).isEmpty();
    boathouse.burn("clean");
    assertThat(log.lastPatch("Ada").orElseThrow().patch().code()).isEqualTo("P-0001");
  }

  @Test
  void a_failed_part_of_a_transaction_leaves_no_trace_in_the_rest() {
    log.inTransaction(
        () -> {
          boathouse.burn("clean");
          Patch twice =
              boathouse.patch("P-0002", MORNING, log.patch("P-0001").patch().lastReading());
          assertThatThrownBy(() -> log.add(Boathouse.entry(twice))).isInstanceOf(Refusal.class);
          return null;
        });
    assertThat(log.patches(Filter.ALL)).extracting(e -> e.patch().code()).containsExactly("P-0001");
    assertThat(log.hasPatch("P-0002")).isFalse();
  }

  @Test
  void identities_are_of_version_7_and_rise() {
    List<String> ids = Stream.generate(log::newId).limit(10_000).map(Object::toString).toList();
    assertThat(ids).isSorted().doesNotHaveDuplicates();
    assertThat(log.newId().version()).isEqualTo(7);
    assertThat(log.newId().variant()).isEqualTo(2);
    assertThat(log.newId().getMostSignificantBits() >>> 16)
        .isCloseTo(MORNING.toInstant().toEpochMilli(), Offset.offset(10L));
  }

  @Test
  void a_photo_comes_back_byte_for_byte() {
    boathouse.burn("char");
    byte[] content = {(byte) 0xFF, (byte) 0xD8, 0, 1, 2};
    Photo photo =
        new Photo(
            log.newId(), "knot.jpg", "image/jpeg", content, MORNING, Optional.of("at the knot"));
    log.addPhoto("P-0001", photo, "Ada");
    assertThat(log.photos("P-0001"))
        .containsExactly(
            new KeptPhoto(
                photo.id(),
                "knot.jpg",
                "image/jpeg",
                content.length,
                photo.sha256(),
                MORNING,
                Optional.of("at the knot")));
    assertThat(log.photoContent(photo.id())).hasBinaryContent(content);
    assertThat(log.photoContent(log.newId())).isEmpty();
    Photo page = new Photo(log.newId(), "a.txt", "text/plain", content, MORNING, Optional.empty());
    assertThatThrownBy(() -> log.addPhoto("P-0001", page, null))
        .hasMessage("Nothing was recorded: it breaks the log's rule \"photo is an image\".");
  }

  @Test
  void a_photo_is_kept_with_its_checksum_and_a_check_finds_one_that_was_altered() throws Exception {
    boathouse.burn("char");
    // SHA-256 of "abc", NIST FIPS 180-2, appendix B.1.
    byte[] content = {'a', 'b', 'c'};
    Photo photo =
        new Photo(log.newId(), "knot.jpg", "image/jpeg", content, MORNING, Optional.empty());
    assertThat(photo.sha256())
        .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    log.addPhoto("P-0001", photo, "Ada");
    assertThat(log.check()).extracting(Finding::kind).doesNotContain(Finding.Kind.FAULT);
    try (Connection other =
            DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("boathouse.db"));
        Statement statement = other.createStatement()) {
      assertThatThrownBy(() -> statement.executeUpdate("UPDATE photo SET sha256 = 'no'"))
          .hasMessageContaining("A photo keeps its identity");
      statement.executeUpdate("DROP TRIGGER photo_keeps_its_identity");
      statement.executeUpdate("UPDATE photo SET content = x'616264'");
    }
    assertThat(log.check())
        .contains(
            new Finding(
                Finding.Kind.FAULT,
                "A photo of P-0001 is damaged: its checksum differs from the one recorded."));
  }

  @Test
  void the_log_knows_every_identity_that_it_was_ever_given() {
    PatchEntry entry = boathouse.burn("clean");
    Reading second = boathouse.reading(2, "char");
    assertThat(log.holds(second.id())).isFalse();
    log.addReading("P-0001", second);
    Photo photo =
        new Photo(log.newId(), "a.jpg", "image/jpeg", new byte[] {1}, MORNING, Optional.empty());
    log.addPhoto("P-0001", photo, "Ada");
    log.amend(entry, "Ada", "soot, not char"); // strikes the second reading
    log.voidPatch("P-0001", "Ada", "wrong board");
    assertThat(List.of(entry.patch().id(), second.id(), photo.id())).allMatch(log::holds);
    assertThat(log.patch(entry.patch().id()).orElseThrow().voided()).contains("wrong board");
    assertThat(log.patch(second.id())).isEmpty();
  }

  @Test
  void the_state_differs_after_every_change_whoever_made_it() {
    String before = log.state();
    log.patches(Filter.ALL);
    assertThat(log.state()).isEqualTo(before);
    boathouse.burn("clean");
    String ours = log.state();
    assertThat(ours).isNotEqualTo(before);
    try (Logbook other = Logbook.open(folder.resolve("boathouse.db"), CLOCK)) {
      other.voidPatch("P-0001", "Bo", "wrong board");
    }
    assertThat(log.state()).isNotEqualTo(ours);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 19, 20, 21, 40, 41, 5000})
  void every_reading_of_a_patch_comes_back_however_many_there_are(int passes) {
    Reading[] readings =
        IntStream.rangeClosed(1, passes)
            .mapToObj(n -> boathouse.reading(n, n < passes ? "residue" : "clean"))
            .toArray(Reading[]::new);
    log.add(Boathouse.entry(boathouse.patch("P-0001", MORNING, readings)));
    assertThat(log.patch("P-0001").patch().readings()).containsExactly(readings);
  }

  @Test
  void a_thousand_patches_come_back_whole() {
    log.inTransaction(
        () -> {
          for (int i = 1; i <= 1000; i++) {
            log.add(
                Boathouse.entry(
                    boathouse.patch(
                        PatchCode.of(i),
                        MORNING.plusMinutes(i),
                        boathouse.reading(1, "residue"),
                        boathouse.reading(2, "clean"))));
          }
          return null;
        });
    List<PatchEntry> all = log.patches(Filter.ALL);
    assertThat(all).hasSize(1000).allMatch(e -> e.patch().readings().size() == 2);
    assertThat(all.get(999).patch().code()).isEqualTo("P-1000");
    assertThat(log.nextPatchCode()).isEqualTo("P-1001");
  }

  @Test
  void names_that_differ_in_capitals_alone_are_the_same_in_any_alphabet() {
    for (String[] pair : new String[][] {{"Stile", "sTILE"}, {"Türblatt", "TÜRBLATT"}}) {
      log.add(named(pair[0]), "Ada");
      assertThatThrownBy(() -> log.add(named(pair[1]), "Ada"))
          .isInstanceOf(Refusal.class)
          .hasMessage("This log has a board \"%s\" already; choose another name.", pair[0]);
      assertThat(log.board(pair[1]).name()).isEqualTo(pair[0]);
    }
  }

  private Board named(String name) {
    return new Board(
        log.newId(),
        name,
        "pine",
        boathouse.board.form(),
        Optional.empty(),
        OptionalDouble.empty(),
        Optional.empty());
  }
}
