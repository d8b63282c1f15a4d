package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import charline.log.Filter;
import charline.log.Logbook;
import charline.log.sheet.OwnHeadings;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The log as a whole: import with a look before, export, backup, check, and merge side by side. */
class LogPagesTest {
  private static final Path TRIALS = Path.of("sample-trials");

  @AutoClose private final ServedLog served;
  private final Path folder;

  LogPagesTest(@TempDir Path folder) {
    this.folder = folder;
    served = new ServedLog(folder, "latex-on-pine");
  }

  private int patches() {
    return served.log().patches(Filter.ALL).size();
  }

  @Test
  void an_import_is_looked_at_first_and_then_recorded_once() throws Exception {
    int before = patches();
    String files = "trials=" + served.file(TRIALS.resolve("varnish-on-ash.csv"));
    assertThat(served.page("log/import?" + files))
        .contains("This would be imported", "varnish-on-ash.csv: 26 patches with 110 readings");
    assertThat(patches()).isEqualTo(before);
    assertThat(served.post("log/import?" + files, ""))
        .contains("Imported", "varnish-on-ash.csv: 26 patches with 110 readings");
    assertThat(patches()).isEqualTo(before + 26);
    assertThat(served.post("log/import?" + files, "")).contains("26 patches were there already");
  }

  @Test
  void a_sheet_of_a_persons_own_is_read_as_they_say_and_its_headings_are_remembered()
      throws Exception {
    Path sheet =
        Files.writeString(
            folder.resolve("own.csv"),
            """
            patch,date,rig,board,wood,family,power_pct,width_mm,hand_mm_s,passes,outcome,helper
            S-1,03/05/2026 10:00,heron,shed,oak,shellac,40,60,30,1,residue,Bo
            """);
    String files = "trials=" + served.file(sheet);
    assertThat(served.refusal("log/import?" + files)).contains("date", "helper");
    String said = files + "&extra=note&map=date%3Dburned_at";
    assertThat(served.refusal("log/import?" + said)).contains("say which comes first");
    assertThat(served.page("log/import?" + said + "&dates=day-first"))
        .contains("1 patch with 1 reading", "in the notes: \"helper\"");
    assertThat(served.charline("import --headings")).contains("No heading");
    assertThat(served.post("log/import?" + said + "&dates=day-first", "")).contains("Imported");
    assertThat(served.charline("patch show S-1")).contains("2026-05-03", "helper: Bo");
    assertThat(served.charline("import --headings")).contains("\"date\" is read as burned_at");
  }

  @Test
  void headings_that_are_remembered_are_shown_and_forgotten_one_by_one() throws Exception {
    assertThat(served.page("log")).doesNotContain("Headings that are remembered");
    OwnHeadings.NONE
        .with("<pace>=hand_mm_s in/s")
        .with("mood=skip")
        .keepBeside(served.log().file());
    assertThat(served.page("log"))
        .contains("Headings that are remembered (2)")
        .contains("\"&lt;pace&gt;\" is read as hand_mm_s, numbers in in/s")
        .contains("\"mood\" is left out");
    assertThat(served.led("log/headings/forget", "heading=%3Cpace%3E"))
        .contains("Headings that are remembered (1)", "\"mood\" is left out")
        .doesNotContain("is read as hand_mm_s");
    assertThat(served.charline("import --headings"))
        .contains("\"mood\" is left out")
        .doesNotContain("pace");
    assertThat(served.post("log/headings/forget", "heading=%3Cpace%3E"))
        .contains("is not remembered; remembered are");
    assertThat(served.led("log/headings/forget", "heading=mood"))
        .doesNotContain("Headings that are remembered");
  }

  @Test
  void remembered_headings_that_cannot_be_read_leave_the_page_of_the_log_standing()
      throws Exception {
    Files.writeString(OwnHeadings.file(served.log().file()), "heading,column\nmood,nowhere\n");
    assertThat(served.page("log"))
        .contains(
            "There is no column \"nowhere\"",
            OwnHeadings.file(served.log().file()).getFileName().toString())
        .contains("/log/backup");
  }

  @Test
  void what_cannot_be_imported_is_refused_in_a_sentence_and_nothing_is_recorded() throws Exception {
    int before = patches();
    Path sheet = folder.resolve("odd.csv");
    Files.writeString(
        sheet, Files.readString(TRIALS.resolve("varnish-on-ash.csv")).replace(",0.5,", ",50,"));
    String files = "trials=" + served.file(sheet);
    assertThat(served.refusal("log/import?" + files))
        .contains("Not imported", "tick that you are sure", "odd.csv");
    assertThat(served.refusal("log/import")).contains("Choose a trial sheet");
    assertThat(served.refusal("log/import?trials=gone")).contains("not here any more");
    assertThat(
            served.refusal("log/import?checks=" + served.file(TRIALS.resolve("power-checks.csv"))))
        .contains("Choose a trial sheet, rigs or samples");
    assertThat(patches()).isEqualTo(before);
  }

  @Test
  void an_export_is_what_the_command_line_exports() throws Exception {
    assertThat(new String(served.download("log/export/patches"), StandardCharsets.UTF_8))
        .isEqualTo(served.charline("export"));
    assertThat(
            new String(served.download("log/export/patches?outcome=char"), StandardCharsets.UTF_8))
        .isEqualTo(served.charline("export --outcome char"));
    assertThat(new String(served.download("log/export/rigs"), StandardCharsets.UTF_8))
        .contains("heron,pulsed,300");
    assertThat(new String(served.download("log/export/power-checks"), StandardCharsets.UTF_8))
        .contains("heron", "144.4");
    assertThat(served.answer("log/export/upkeep")).contains("nothing is exported");
    assertThat(served.answer("log/export/patches?family=varnish")).contains("No patch matches");
  }

  @Test
  void a_backup_is_a_whole_log() throws Exception {
    Path copy = folder.resolve("copy.db");
    Files.write(copy, served.download("log/backup"));
    try (Logbook copied = Logbook.openExisting(copy, Clock.systemUTC())) {
      assertThat(copied.patches(Filter.ALL)).isEqualTo(served.log().patches(Filter.ALL));
    }
    assertThat(served.page("log/check"))
        .contains("data-part=\"/log/check/found\"", "/log/check?now=yes")
        .doesNotContain("undamaged");
    for (String found : List.of("log/check/found", "log/check?now=yes")) {
      assertThat(served.page(found)).contains("The log is undamaged: 24 patches");
    }
  }

  @Test
  void a_merge_shows_both_sides_before_it_is_made_and_takes_the_one_chosen() throws Exception {
    String file = "file=" + served.file(served.otherBench(folder));
    assertThat(served.page("log/merge?" + file))
        .contains("This would be merged", "One record was amended in both logs", "<h3>LP-01</h3>")
        .contains("<b>here</b>here", "<b>in slipway.db</b>by the slipway");
    assertThat(served.log().patch("LP-01").note()).contains("here");
    assertThat(served.post("log/merge?" + file, "take="))
        .contains("Merged", "The values here are kept");
    assertThat(served.log().patch("LP-01").note()).contains("here");
    assertThat(served.post("log/merge?" + file, "take=there"))
        .contains("Merged", "1 conflict is resolved.");
    assertThat(served.log().patch("LP-01").note()).contains("by the slipway");
    assertThat(served.page("log/merge?" + file)).doesNotContain("amended in both");
  }

  @Test
  void a_file_that_is_no_log_is_refused_and_the_page_says_what_it_is_not() throws Exception {
    assertThat(served.refusal("log/merge?file=" + served.file(TRIALS.resolve("rigs.csv"))))
        .contains("Not merged", "rigs.csv");
  }

  @Test
  void the_page_of_the_log_names_what_only_the_command_line_does() throws Exception {
    assertThat(served.page("log"))
        .contains("On the command line alone", "charline demo", "/log/backup", "data-upload")
        .contains("needs JavaScript");
  }
}
