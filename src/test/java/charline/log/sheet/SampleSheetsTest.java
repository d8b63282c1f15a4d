package charline.log.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import charline.exposure.SpotDefinition;
import charline.log.Filter;
import charline.log.Logbook;
import charline.refusal.Refusal;
import charline.trial.Rig;
import charline.trial.RigBuilder;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The sheets that come with the project go into a log as they are. */
class SampleSheetsTest {
  private static final Path SAMPLES = Path.of("sample-trials");

  @TempDir Path folder;

  private Logbook open() {
    return Logbook.open(folder.resolve("log.db"), SheetBench.CLOCK);
  }

  @Test
  void the_boathouse_trials_are_all_taken_and_taken_once() throws IOException {
    List<Path> sheets;
    try (var files = Files.list(SAMPLES)) {
      sheets = files.filter(f -> f.toString().contains("-on-")).sorted().toList();
    }
    try (Logbook log = open()) {
      RigSheet rigs =
          RigSheet.read(SAMPLES.resolve("rigs.csv"), SAMPLES.resolve("power-checks.csv"));
      assertThat(rigs.addTo(log, SheetBench.CLOCK, "Runa"))
          .isEqualTo(new RigSheet.Brought(2, 0, 0));
      assertThat(rigs.addTo(log, SheetBench.CLOCK, "Runa"))
          .isEqualTo(new RigSheet.Brought(0, 0, 0));
      TrialSheetImporter importer = new TrialSheetImporter(log, SheetBench.CLOCK);
      for (Path sheet : sheets) {
        importer.add(TrialSheet.read(sheet), false);
      }
      assertThat(
              log.patches(Filter.ALL).stream()
                  .collect(
                      Collectors.groupingBy(e -> e.patch().finish().name(), Collectors.counting())))
          .containsOnly(
              java.util.Map.entry("wall panel latex", 24L),
              java.util.Map.entry("bench varnish", 26L),
              java.util.Map.entry("locker enamel", 24L),
              java.util.Map.entry("ceiling clear coat", 24L),
              java.util.Map.entry("sill primer", 20L),
              java.util.Map.entry("rafter paint", 18L),
              java.util.Map.entry("door shellac", 5L));
      for (Path sheet : sheets) {
        assertThat(importer.add(TrialSheet.read(sheet), false).patches()).isZero();
      }
    }
  }

  @Test
  void the_sheet_of_the_reference_posterior_is_taken() {
    Path sheet = Path.of("src/test/resources/reference/posterior-passes-to-event/trials.csv");
    try (Logbook log = open()) {
      log.add(RigBuilder.heron(log.newId()).named("rig-200").build(), "sim");
      ImportResult result =
          new TrialSheetImporter(log, SheetBench.CLOCK).add(TrialSheet.read(sheet), false);
      assertThat(result).isEqualTo(new ImportResult(114, 585, 18, 6, 0));
    }
  }

  @Test
  void a_rig_sheet_gives_rigs_with_their_checks() {
    try (Logbook log = open()) {
      RigSheet.read(
              new StringReader(
                  "rig,emission,rated_w,wavelength_nm,spot_mm,spot_definition,rep_khz\n"
                      + "heron,pulsed,300,1064,500um,FWHM,60\n"),
              new StringReader(
                  "rig,checked_at,power_pct,metered_w\n"
                      + "heron,2026-09-01,80,231\n"
                      + "heron,2026-10-01,50,0.14kW\n"))
          .addTo(log, SheetBench.CLOCK, "Runa");
      Rig rig = log.rig("heron");
      assertThat(rig.spotDefinition()).isEqualTo(SpotDefinition.FULL_WIDTH_HALF_MAXIMUM);
      assertThat(rig.spotMillimetres()).hasValue(0.5);
      assertThat(rig.pulseNanoseconds()).isEmpty();
      assertThat(rig.checks()).extracting(c -> c.factor(300)).containsExactly(0.9625, 140.0 / 150);
    }
  }

  @Test
  void a_known_rig_gets_the_checks_that_are_new_and_stays_as_it_is() {
    String head = "rig,checked_at,power_pct,metered_w\n";
    String rigs =
        "rig,emission,rated_w,wavelength_nm,spot_definition\nheron,pulsed,300,1064,1/e2\n";
    try (Logbook log = open()) {
      add(log, rigs, head + "heron,2026-09-01,80,231\n");
      RigSheet.Brought more =
          add(
              log,
              rigs.replace("heron", "Heron"),
              head + "HERON,2026-09-01,80,231\nheron,2026-10-01,80,120\n");
      assertThat(more).isEqualTo(new RigSheet.Brought(0, 1, 0));
      assertThat(log.rigs()).hasSize(1);
      assertThat(log.rig("heron").checks())
          .extracting(c -> c.factor(300))
          .containsExactly(0.9625, 0.5);
      assertThatThrownBy(() -> add(log, rigs, head + "heron,2026-10-01,80,200\n"))
          .isInstanceOf(Refusal.class)
          .hasMessage(
              "Rig heron already has a power check at that time, 120 W at 80 % on 2026-10-01, not"
                  + " 200 W; correct the sheet.");
      assertThat(log.rig("heron").checks()).hasSize(2);
    }
  }

  @Test
  void two_rigs_whose_names_differ_in_capitals_alone_are_one_that_stands_twice() {
    refuses(
        "rig,emission,rated_w,wavelength_nm,spot_definition\n"
            + "Heron,pulsed,300,1064,1/e2\n"
            + "heron,cw,300,1064,1/e2\n",
        "rig,checked_at,power_pct,metered_w\nheron,2026-09-01,80,231\n",
        """
        Nothing was imported: one place in the rig sheet must be corrected.
          line 3, rig "heron": This rig is listed twice; keep one line.\
        """);
  }

  private static RigSheet.Brought add(Logbook log, String rigs, String checks) {
    return RigSheet.read(new StringReader(rigs), new StringReader(checks))
        .addTo(log, SheetBench.CLOCK, "Runa");
  }

  @Test
  void a_bad_rig_sheet_names_its_cells() {
    String head = "rig,emission,rated_w,wavelength_nm,spot_definition\n";
    String checkHead = "rig,checked_at,power_pct,metered_w\n";
    String good = head + "heron,pulsed,300,1064,1/e2\n";
    refuses(
        head + "heron,pulse,300,1064,1/e2\nheron2,cw,lots,1064,1/e2\n",
        checkHead + "heron,2026-09-01,80,231\n",
        """
        Nothing was imported: 2 places in the rig sheet must be corrected.
          line 2, emission "pulse": Kind of laser must be pulsed or cw, not "pulse".
          line 3, rated_w "lots": A power must be a number with an optional unit, such as 30W, not "lots".\
        """);
    refuses(
        good + "heron,cw,300,1064,1/e2\n",
        checkHead + "heron,2026-09-01,80,231\n",
        """
        Nothing was imported: one place in the rig sheet must be corrected.
          line 3, rig "heron": This rig is listed twice; keep one line.\
        """);
    refuses(
        good,
        checkHead + "hern,2026-09-01,80,231\nheron,2026-09-01,180,231\n",
        """
        Nothing was imported: 2 places in the power checks must be corrected.
          line 2, rig "hern": There is no such rig in the rig sheet; it has heron.
          line 3: Power setting must be between 0 and 100 %, not 180 %.\
        """);
  }

  private void refuses(String rigs, String checks, String message) {
    try (Logbook log = open()) {
      RigSheet sheet = RigSheet.read(new StringReader(rigs), new StringReader(checks));
      assertThatThrownBy(() -> sheet.addTo(log, SheetBench.CLOCK, "Runa"))
          .isInstanceOf(Refusal.class)
          .hasMessage(message);
      assertThat(log.rigs()).isEmpty();
    }
  }
}
