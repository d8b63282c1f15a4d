package charline.log.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import charline.exposure.DoseForm;
import charline.exposure.Emission;
import charline.exposure.Exposure;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.SpotDefinition;
import charline.exposure.TimedArea;
import charline.log.EmptyLog;
import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.trial.AnyCircumstances;
import charline.trial.Board;
import charline.trial.Coat;
import charline.trial.Finish;
import charline.trial.Mark;
import charline.trial.Outcome;
import charline.trial.Patch;
import charline.trial.PowerCheck;
import charline.trial.Reading;
import charline.trial.Rig;
import charline.trial.RigBuilder;
import charline.trial.Tone;
import charline.trial.Upkeep;
import charline.trial.WoodForm;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two logs agree after an export and an import, whatever is in the first. */
class RoundTripPropertyTest {
  private static final UUID NO_ID = new UUID(0, 0);

  private static final String[] NAMES = {
    "Runa", "=SUM(A1:A9)", "+49", "-", "@home", "'=x", "a, b; c", "say \"when\"", "two\nlines",
    " blank before", "after ", "NA", "null", "#12", "0.50", "ça brûle", "\u706b", "\ttab"
  };

  /** What comes along unseen when text is pasted, in words that are no names. */
  private static final String[] PASTED = {
    "soft\u000bbreak", "\u000b=1+1", "page\fend\f", "nul\u0000", "\u0000=SUM(A1)", "old\rline",
        "dos\r\nline",
    "\rfirst", "bell\u0007,", "del\u007f", "next\u0085line", "para\u2029graph", "\u0007",
        "\u0000\u000b "
  };

  private static final String[] WORDS =
      Stream.of(NAMES, PASTED).flatMap(Stream::of).toArray(String[]::new);

  @TempDir Path folder;

  @RepeatedTest(8)
  void a_log_of_anything_comes_back(RepetitionInfo info) {
    Random random = new Random(info.getCurrentRepetition());
    try (SheetBench from = new SheetBench(folder, "from.db");
        SheetBench to = new SheetBench(folder, "to.db")) {
      fill(from, random);
      String sheet = from.export();
      new TrialSheetImporter(to.log, SheetBench.CLOCK).add(SheetBench.sheet(sheet), true);
      Map<String, String> back = bare(to.log);
      bare(from.log).forEach((code, patch) -> assertThat(back.get(code)).isEqualTo(patch));
      assertThat(back).hasSameSizeAs(from.patches());
      Map<String, PatchEntry> came = new HashMap<>();
      to.patches().forEach(e -> came.put(e.patch().code(), e));
      for (PatchEntry entry : from.patches()) {
        assertThat(came.get(entry.patch().code()).typed()).containsAllEntriesOf(entry.typed());
      }
      assertThat(to.export()).isEqualTo(sheet);
    }
  }

  @RepeatedTest(8)
  void rigs_and_power_checks_come_back_and_with_them_every_dose(RepetitionInfo info)
      throws Exception {
    Random random = new Random(100 + info.getCurrentRepetition());
    Path rigs = folder.resolve("rigs.csv");
    Path checks = folder.resolve("power-checks.csv");
    Path upkeep = folder.resolve("upkeep.csv");
    try (SheetBench from = new SheetBench(folder, "from.db");
        Logbook to = EmptyLog.open(folder.resolve("to.db"), SheetBench.CLOCK)) {
      addRigs(from.log, random);
      fill(from, random);
      RigSheetExporter.writeRigs(from.log.rigs(), rigs);
      RigSheetExporter.writeChecks(from.log.rigs(), checks);
      boolean kept = from.log.rigs().stream().anyMatch(rig -> !rig.upkeep().isEmpty());
      if (kept) {
        RigSheetExporter.writeUpkeep(from.log.rigs(), upkeep);
      }
      RigSheet.read(
              rigs,
              Optional.of(checks),
              Optional.of(upkeep).filter(file -> kept),
              DateOrder.UNKNOWN)
          .addTo(to, SheetBench.CLOCK, "Runa");
      new TrialSheetImporter(to, SheetBench.CLOCK).add(SheetBench.sheet(from.export()), true);
      assertThat(to.rigs().stream().map(RoundTripPropertyTest::bare))
          .containsExactlyElementsOf(
              from.log.rigs().stream().map(RoundTripPropertyTest::bare).toList());
      assertThat(bare(to)).isEqualTo(bare(from.log));
      assertThat(exposures(to)).isEqualTo(exposures(from.log));
      assertThat(List.copyOf(exposures(to).values()))
          .as("doses rest on the checks")
          .isNotEqualTo(exposuresWithoutChecks(to));
      for (Path file : List.of(rigs, checks)) {
        assertThat(cells(file))
            .filteredOn(c -> !c.matches("-[0-9.]+")) // a negative number is no formula
            .noneMatch(c -> c.matches("(?s)[=+\\-@\\t].*"));
      }
    }
  }

  private static List<String> cells(Path file) {
    SheetText text = SheetText.read(file);
    String headings = text.body().lines().findFirst().orElseThrow().replace("\"", "");
    List<String> known = List.of(headings.split(","));
    return TextTable.read(text, known, known).rows().stream()
        .flatMap(row -> row.cells().values().stream())
        .toList();
  }

  private static Map<String, Exposure> exposures(Logbook log) {
    Map<String, Exposure> exposures = new TreeMap<>();
    log.patches(Filter.ALL).forEach(e -> exposures.put(e.patch().code(), e.patch().exposure()));
    return exposures;
  }

  private static List<Exposure> exposuresWithoutChecks(Logbook log) {
    return log.patches(Filter.ALL).stream()
        .map(PatchEntry::patch)
        .sorted(Comparator.comparing(Patch::code))
        .map(
            p ->
                new Patch(
                        p.id(),
                        p.code(),
                        p.burnedAt(),
                        with(p.rig(), p.rig().id(), List.of()),
                        p.board(),
                        p.finish(),
                        p.settings(),
                        p.areaSquareCentimetres(),
                        p.readings())
                    .exposure())
        .toList();
  }

  /** Without identities. */
  private static Rig bare(Rig rig) {
    Rig bare =
        with(
            rig,
            NO_ID,
            rig.checks().stream()
                .map(c -> new PowerCheck(NO_ID, c.at(), c.percent(), c.meteredWatts()))
                .toList());
    return RigBuilder.like(bare)
        .upkeep(
            rig.upkeep().stream()
                .map(u -> new Upkeep(NO_ID, u.at(), u.work(), u.hours(), u.note()))
                .toList())
        .build();
  }

  private static Rig with(Rig rig, UUID id, List<PowerCheck> checks) {
    return RigBuilder.like(rig).id(id).checks(checks).build();
  }

  private static void addRigs(Logbook log, Random random) {
    for (int i = 0; i < 3; i++) {
      boolean pulsed = random.nextBoolean();
      Rig rig =
          RigBuilder.heron(log.newId())
              .named(NAMES[random.nextInt(NAMES.length)].strip() + " r" + i)
              .emission(pulsed ? Emission.PULSED : Emission.CONTINUOUS)
              .ratedWatts(100 + 200 * random.nextDouble())
              .wavelengthNanometres(1000 + random.nextInt(640) / 10.0)
              .spotMeans(SpotDefinition.values()[random.nextInt(SpotDefinition.values().length)])
              .spotMillimetres(maybe(random, random.nextDouble()))
              .repetitionKilohertz(
                  pulsed ? maybe(random, 20 + random.nextInt(100) / 3.0) : OptionalDouble.empty())
              .pulseNanoseconds(OptionalDouble.empty())
              .scanWidthMillimetres(maybe(random, 60.5))
              .lens(maybeWord(random))
              .usual(AnyCircumstances.ofRig(random))
              .optics(0.1 + random.nextDouble(), 1 + 30 * random.nextDouble())
              .build();
      log.add(rig, "Runa");
    }
    for (Rig rig : log.rigs()) {
      for (int n = random.nextInt(4); n > 0; n--) {
        PowerCheck check = check(log, rig, random);
        log.rigEntries().addCheck(rig.name(), check, "Runa");
        log.rigEntries().addUpkeep(rig.name(), upkeep(log, check.at(), random), "Runa");
      }
    }
    log.rigEntries().addCheck("heron", check(log, log.rig("heron"), random), "Runa");
  }

  private static Upkeep upkeep(Logbook log, OffsetDateTime at, Random random) {
    return new Upkeep(
        log.newId(),
        at,
        List.of("lens", "window-cleaned", "=fan").get(random.nextInt(3)),
        maybe(random, 1000 * random.nextDouble()),
        maybeWord(random));
  }

  private static PowerCheck check(Logbook log, Rig rig, Random random) {
    double percent = 100 - 90 * random.nextDouble();
    return new PowerCheck(
        log.newId(),
        OffsetDateTime.of(
            2026,
            1 + random.nextInt(9),
            2,
            9,
            random.nextInt(60),
            0,
            random.nextInt(1000) * 1_000_000,
            ZoneOffset.ofHoursMinutes(random.nextInt(12), 30)),
        percent,
        rig.ratedWatts() * percent / 100 * (0.8 + 0.3 * random.nextDouble()));
  }

  @Test
  void a_log_made_from_a_sheet_comes_back_with_all_that_was_typed() {
    String sheet =
        "patch,burned_at,rig,board,wood,family,power_pct,spot_mm,hand_mm_s,width_mm,passes,outcome\n"
            + "A,2026-09-03,heron,b1,pine,latex,60 %,0.02in,1.2in/s,6cm,1,clean\n";
    try (SheetBench from = new SheetBench(folder, "from.db");
        SheetBench to = new SheetBench(folder, "to.db")) {
      from.add(sheet);
      to.add(from.export());
      assertThat(from.log.patch("A").typed())
          .isEqualTo(Map.of("power", "60 %", "spot", "0.02in", "hand", "1.2in/s", "width", "6cm"));
      // Settings left to the rig are written out by the export, so they come back as typed.
      Map<String, String> all = new HashMap<>(from.log.patch("A").typed());
      all.putAll(Map.of("rep", "60kHz", "pulse", "100ns"));
      assertThat(to.log.patch("A").typed()).isEqualTo(all);
    }
  }

  @Test
  void what_an_earlier_version_kept_unplain_goes_out_as_a_sheet_that_comes_back() throws Exception {
    String sheet =
        "patch,burned_at,rig,board,wood,family,power_pct,spot_mm,hand_mm_s,passes,outcome,by,note\n"
            + "A,2026-09-03,heron,b1,pine,latex,60,0.5,18,1,clean,Runa,dry\n";
    Path file = folder.resolve("from.db");
    try (SheetBench from = new SheetBench(folder, "from.db");
        SheetBench to = new SheetBench(folder, "to.db")) {
      from.add(sheet);
      try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
          Statement statement = connection.createStatement()) {
        statement.execute("UPDATE board SET job = char(7)");
        statement.execute("UPDATE reading SET judged_by = 'Ru' || char(12) || 'na' || char(13)");
        statement.execute(
            "UPDATE reading SET note = 'dry' || char(13) || 'by the lake' || char(0)");
      }
      assertThat(from.add(from.export()).skipped()).isEqualTo(1);
      try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
          Statement statement = connection.createStatement()) {
        statement.execute("UPDATE board SET name = 'slip' || char(11) || 'way'");
      }
      String out = from.export();
      to.add(out);
      PatchEntry entry = to.log.patch("A");
      assertThat(entry.patch().board().name()).isEqualTo("slip\nway");
      assertThat(entry.patch().board().job()).isEmpty();
      assertThat(entry.patch().lastReading().by()).contains("Ru\nna");
      assertThat(entry.patch().lastReading().note()).contains("dry\nby the lake ");
      assertThat(to.export()).isEqualTo(out);
    }
  }

  @Test
  void a_name_pasted_into_a_sheet_with_what_cannot_be_seen_is_read_without_it() {
    try (SheetBench bench = new SheetBench(folder, "from.db")) {
      bench.add(
          "patch,burned_at,rig,board,wood,family,power_pct,spot_mm,hand_mm_s,passes,outcome,note\n"
              + "A,2026-09-03,heron\u007f,sill\u009b2,pine,latex,60,0.5,18,1,clean,\u007f\n");
      assertThat(bench.log.patch("A").patch().board().name()).isEqualTo("sill 2");
      assertThat(bench.log.patch("A").patch().lastReading().note()).isEmpty();
    }
  }

  @Test
  void numbers_stay_numbers_and_words_cannot_run() throws Exception {
    try (SheetBench bench = new SheetBench(folder, "from.db")) {
      fill(bench, new Random(5));
      Path file = folder.resolve("out.csv");
      TrialSheetExporter.write(bench.patches(), bench.log.ownWords(), file);
      TrialSheet sheet = TrialSheet.read(file);
      for (SheetRow row : sheet.rows()) {
        assertThat(row.cells().get("passes")).matches("\\d+");
        assertThat(row.cells().values())
            .filteredOn(c -> !c.matches("-[0-9.]+")) // a negative number is no formula
            .noneMatch(c -> c.matches("(?s)[=+\\-@\\t].*"));
      }
      assertThat(Files.readString(file)).isEqualTo(bench.export());
      assertThat(Files.list(folder).map(Path::toString)).noneMatch(f -> f.endsWith(".part"));
    }
  }

  /** Everything but identities, the order of recording, and which knobs were typed. */
  private static Map<String, String> bare(Logbook log) {
    Map<String, String> bare = new HashMap<>();
    for (PatchEntry e : log.patches(Filter.ALL)) {
      Patch p = e.patch();
      Board b = p.board();
      Finish f = p.finish();
      List<Reading> readings =
          p.readings().stream()
              .map(
                  r ->
                      new Reading(
                          NO_ID,
                          r.passes(),
                          r.outcome(),
                          r.soot(),
                          r.depthMicrometres(),
                          r.at(),
                          r.by(),
                          r.note()))
              .toList();
      bare.put(
          p.code(),
          List.of(
                  p.burnedAt(),
                  p.rig().name(),
                  new Board(
                      NO_ID,
                      b.name(),
                      b.wood(),
                      b.form(),
                      b.condition(),
                      b.moisturePercent(),
                      b.job()),
                  new Finish(NO_ID, f.name(), f.family(), f.coats()),
                  p.settings(),
                  p.circumstances(),
                  p.areaSquareCentimetres(),
                  readings,
                  e.by(),
                  e.note())
              .toString());
    }
    return bare;
  }

  private static void fill(SheetBench bench, Random random) {
    List<Rig> rigs = bench.log.rigs();
    List<Board> boards = new ArrayList<>();
    List<Finish> finishes = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      Board board =
          new Board(
              bench.log.newId(),
              NAMES[random.nextInt(NAMES.length)].strip() + " b" + i,
              List.of("pine", "oak", "ash").get(random.nextInt(3)),
              WoodForm.values()[random.nextInt(4)],
              maybeWord(random),
              maybe(random, 8 + random.nextInt(9) / 4.0),
              maybeWord(random).map(String::strip));
      bench.log.add(board, "Runa");
      boards.add(board);
      Finish finish = finish(bench, random, i);
      bench.log.add(finish, "Runa");
      finishes.add(finish);
    }
    for (int i = 0; i < 25; i++) {
      Rig rig = rigs.get(random.nextInt(rigs.size()));
      Settings settings = settings(rig, random);
      OffsetDateTime at =
          OffsetDateTime.of(
              2026,
              1 + random.nextInt(12),
              3,
              9,
              i,
              0,
              random.nextInt(1000) * 1_000_000,
              ZoneOffset.ofHoursMinutes(random.nextInt(12), 30));
      List<Reading> readings = readings(bench, random, at);
      Patch patch =
          new Patch(
              bench.log.newId(),
              random.nextBoolean() ? bench.log.nextPatchCode() : "=" + i,
              at,
              rig,
              boards.get(random.nextInt(4)),
              finishes.get(random.nextInt(4)),
              settings,
              AnyCircumstances.of(settings.form(), random),
              maybe(random, 20 + random.nextDouble()),
              readings);
      bench.log.add(
          new PatchEntry(
              patch,
              typed(settings, random),
              maybeWord(random).map(String::strip),
              maybeWord(random),
              Optional.empty()));
    }
  }

  private static Finish finish(SheetBench bench, Random random, int i) {
    List<Coat> coats = new ArrayList<>();
    for (int n = random.nextInt(3); n > 0; n--) {
      coats.add(
          new Coat(
              List.of("latex", "wax/oil", "clear coat").get(random.nextInt(3)),
              random.nextBoolean()
                  ? Optional.of(Tone.values()[random.nextInt(3)])
                  : Optional.empty(),
              maybe(random, 30 + random.nextInt(100) / 3.0)));
    }
    return new Finish(
        bench.log.newId(), "f" + i + NAMES[random.nextInt(10)].strip(), "latex", coats);
  }

  private static Settings settings(Rig rig, Random random) {
    DoseForm form =
        switch (random.nextInt(3)) {
          case 0 -> new LineScan(3000 + 1000 * random.nextDouble(), 0.06);
          case 1 -> new HandPass(60, 18);
          default -> new TimedArea(25, 3 + random.nextDouble());
        };
    return new Settings(
        random.nextBoolean()
            ? PowerSetting.percent(100 * random.nextDouble())
            : PowerSetting.watts(150 + random.nextInt(3) / 3.0),
        form,
        new Spot(0.1 + random.nextDouble(), rig.spotDefinition()),
        rig.emission() == Emission.CONTINUOUS
            ? Optional.empty()
            : Optional.of(
                new Pulses(
                    20 + random.nextInt(80),
                    // A rig with a usual pulse lends it where a sheet is silent.
                    rig.pulseNanoseconds().isPresent()
                        ? OptionalDouble.of(120)
                        : maybe(random, 99.5))));
  }

  /** Typed text for some knobs, as a person at a prompt would have it, and some that went stale. */
  private static Map<String, String> typed(Settings settings, Random random) {
    Map<String, String> typed = new HashMap<>();
    if (settings.form() instanceof HandPass && random.nextBoolean()) {
      typed.put("hand", random.nextBoolean() ? "18mm/s" : "1.8cm/s");
      typed.put("width", random.nextBoolean() ? "6cm" : "6\u000bcm");
    }
    return typed;
  }

  private static List<Reading> readings(SheetBench bench, Random random, OffsetDateTime burned) {
    List<Reading> readings = new ArrayList<>();
    int passes = 0;
    OffsetDateTime at = random.nextBoolean() ? burned : burned.plusMinutes(7);
    for (int n = 1 + random.nextInt(4); n > 0; n--) {
      passes += 1 + random.nextInt(2);
      EnumSet<Mark> marks = EnumSet.of(Mark.CLEAN);
      if (random.nextBoolean()) {
        marks =
            EnumSet.of(Mark.values()[1 + random.nextInt(3)], Mark.values()[1 + random.nextInt(3)]);
      }
      Optional<String> note = maybeWord(random);
      if (!readings.isEmpty() && readings.get(readings.size() - 1).outcome().charred()) {
        note = Optional.of("sanded since");
      }
      readings.add(
          new Reading(
              bench.log.newId(),
              passes,
              new Outcome(marks),
              random.nextBoolean() ? Optional.of(random.nextBoolean()) : Optional.empty(),
              maybe(random, random.nextInt(300) / 7.0),
              at,
              maybeWord(random).map(String::strip),
              note));
      at = at.plusSeconds(200 + random.nextInt(200));
    }
    return readings;
  }

  private static Optional<String> maybeWord(Random random) {
    return random.nextBoolean()
        ? Optional.of(WORDS[random.nextInt(WORDS.length)])
        : Optional.empty();
  }

  private static OptionalDouble maybe(Random random, double value) {
    return random.nextBoolean() ? OptionalDouble.of(value) : OptionalDouble.empty();
  }
}
