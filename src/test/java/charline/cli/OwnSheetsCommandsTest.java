package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Trial sheets as people have them: headings, columns, dates and letters of their own. */
class OwnSheetsCommandsTest {
  private static final String EXTRAS =
      """
      patch,burned_at,rig,board,wood,family,power_pct,width_mm,hand_mm_s,passes,outcome,note,helper,lens temp
      S-1,2026-05-02 10:00,Heron,shed,oak,shellac,40,60,30,1,residue,by the door,Bo,31
      S-2,2026-05-02 10:05,Heron,shed,oak,shellac,40,60,25,1,clean,,,32
      """;

  private static final String OWN =
      """
      Nr;date;laser;board;timber;paint;power_pct;width_mm;speed;passes;result
      S-1;03/05/2026 10:00;Heron;shed;oak;shellac;40;60;1,2;1;leftovers
      S-2;14/05/2026;Heron;shed;oak;shellac;40;60;30mm/s;2;clean
      """;

  private static final String MAPS =
      " --map Nr=patch --map date=burned_at --map laser=rig --map timber=wood --map paint=family"
          + " --map \"speed=hand_mm_s in/s\" --map result=outcome";

  @TempDir Path folder;
  private Shell shell;

  @BeforeEach
  void open() {
    shell = Shell.withBench(folder);
  }

  private Path sheet(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  @Test
  void other_columns_are_refused_by_name_with_the_way_out() throws IOException {
    Shell.Result refused = shell.run("import " + sheet("shed.csv", EXTRAS));
    assertThat(refused.code()).isEqualTo(3);
    assertThat(refused.err().replaceAll("\\s+", " "))
        .contains("There are no columns \"helper\", \"lens temp\"; the columns are patch,")
        .contains("--extra note", "--extra skip", "--map \"HEADING=COLUMN\"");
    assertThat(shell.run("find shellac").code()).isEqualTo(1);
  }

  @Test
  void other_columns_come_along_in_the_notes() throws IOException {
    Path sheet = sheet("shed.csv", EXTRAS);
    assertThat(shell.flat("import " + sheet + " --extra note"))
        .contains("2 patches with 2 readings", "in the notes: \"helper\", \"lens temp\".");
    assertThat(shell.flat("patch show S-1")).contains("by the door; helper: Bo; lens temp: 31");
    assertThat(shell.flat("patch show S-2")).contains("lens temp: 32").doesNotContain("helper");
    assertThat(shell.flat("import " + sheet + " --extra note"))
        .contains("2 patches were there already");
  }

  @Test
  void other_columns_are_left_out_and_named() throws IOException {
    Path sheet = sheet("shed.csv", EXTRAS);
    assertThat(shell.flat("import " + sheet + " --extra skip"))
        .contains("2 patches with 2 readings", "left out: \"helper\", \"lens temp\".");
    assertThat(shell.flat("patch show S-1")).contains("by the door").doesNotContain("helper");
    Map<String, Object> again = shell.json("import " + sheet + " --extra skip --json");
    assertThat(again).containsEntry("recorded", true);
    assertThat((List<?>) again.get("sheets"))
        .first()
        .asString()
        .contains("patches=0", "already_there=2", "left_out=[helper, lens temp]");
  }

  @Test
  void a_mistyped_column_is_not_taken_for_another_one() throws IOException {
    Path sheet = sheet("shed.csv", EXTRAS.replace("lens temp", "depht_um"));
    for (String way : List.of("note", "skip")) {
      assertThat(shell.run("import " + sheet + " --extra " + way).err())
          .contains("There is no column \"depht_um\"; nearest: depth_um.");
    }
    assertThat(shell.flat("import " + sheet + " --extra note --map depht_um=skip"))
        .contains("in the notes: \"helper\"; left out: \"depht_um\".");
  }

  @Test
  void headings_of_a_persons_own_get_a_meaning_that_is_remembered_shown_and_forgotten()
      throws IOException {
    Path sheet = sheet("shed.csv", OWN.replace("leftovers", "residue"));
    assertThat(shell.run("import " + sheet).err())
        .contains("no columns \"Nr\", \"laser\"", "--map \"HEADING=COLUMN\"");
    assertThat(shell.flat("import " + sheet + MAPS + " --dates day-first"))
        .contains("2 patches with 2 readings", "\"laser\" is read as rig")
        .contains("\"speed\" is read as hand_mm_s, numbers in in/s", "Headings are remembered");
    assertThat(shell.flat("patch show S-1"))
        .contains("2026-05-03 10:00", "30.48 mm/s", "hand 1,2in/s");
    assertThat(shell.flat("patch show S-2")).contains("2026-05-14", "30 mm/s");

    assertThat(shell.flat("import " + sheet + " --dates day-first"))
        .contains("2 patches were there already");
    assertThat(shell.flat("import --headings"))
        .contains("\"timber\" is read as wood; \"paint\" is read as family");
    assertThat(shell.run("import --headings --json").out())
        .contains("\"heading\" : \"speed\"", "\"unit\" : \"in/s\"");
    assertThat(shell.flat("import --forget timber")).doesNotContain("timber").contains("paint");
    assertThat(shell.run("import " + sheet + " --dates day-first").err())
        .contains("no column \"timber\"");
  }

  @Test
  void what_an_own_heading_means_must_be_a_column() throws IOException {
    Path sheet = sheet("shed.csv", OWN);
    assertThat(shell.run("import " + sheet + " --map speed=hand_mms").err())
        .contains("There is no column \"hand_mms\"; nearest: hand_mm_s.");
    assertThat(shell.run("import " + sheet + " --map speed").err())
        .contains("must read HEADING=COLUMN");
    assertThat(shell.run("import " + sheet + " --map \"speed=hand_mm_s kg\"").err())
        .contains("A speed must be in");
    assertThat(shell.run("import " + sheet + " --map \"result=outcome um\"").err())
        .contains("outcome holds no numbers with a unit");
    assertThat(shell.run("import --forget speed").err())
        .contains("No heading of your own is remembered.");
  }

  @Test
  void nothing_is_remembered_of_a_dry_run_or_a_refused_sheet() throws IOException {
    Path sheet = sheet("shed.csv", OWN.replace("leftovers", "residue"));
    shell.mustDo("import " + sheet + MAPS + " --dates day-first --check");
    assertThat(shell.run("import " + sheet + MAPS).code()).isNotZero();
    assertThat(shell.flat("import --headings")).contains("No heading of your own is remembered");
  }

  @Test
  void dates_in_figures_are_asked_about() throws IOException {
    Path sheet = sheet("shed.csv", OWN.replace("leftovers", "residue"));
    Shell.Result refused = shell.run("import " + sheet + MAPS);
    assertThat(refused.code()).isEqualTo(2);
    assertThat(refused.err().replaceAll("\\s+", " "))
        .isEqualTo(
            "shed.csv has dates such as 03/05/2026 10:00 in line 2, which may begin with the day or"
                + " with the month (14/05/2026 in line 3 can only begin with the day); say which"
                + " comes first. Add --dates day-first or --dates month-first. ");
    assertThat(shell.run("import " + sheet + MAPS + " --dates month-first").err())
        .contains("line 3, burned_at \"14/05/2026\": \"14/05/2026\" is no date with the month");
    Shell.Result asked =
        shell.asking(new Shell.Person("whichever", "day"), "import " + sheet + MAPS);
    assertThat(asked.code()).as(asked.err()).isZero();
    assertThat(asked.err()).contains("Dates must be day-first or month-first");
    assertThat(shell.flat("patch show S-1")).contains("2026-05-03 10:00");
  }

  @Test
  void dates_that_disagree_are_refused() throws IOException {
    Path sheet = sheet("shed.csv", OWN.replace("03/05/2026", "05/23/2026"));
    assertThat(shell.run("import " + sheet + MAPS).err().replaceAll("\\s+", " "))
        .contains("14/05/2026 in line 3 begins with the day")
        .contains("05/23/2026 10:00 in line 2 with the month; make them agree.");
  }

  @Test
  void dates_with_the_name_of_the_month_need_no_order() throws IOException {
    Path sheet =
        sheet(
            "shed.csv",
            EXTRAS
                .replace("2026-05-02 10:00", "2 May 2026 10:00 AM")
                .replace("2026-05-02 10:05", "\"May 2, 2026, 2:05 pm\""));
    shell.mustDo("import " + sheet + " --extra skip");
    assertThat(shell.flat("patch show S-1")).contains("2026-05-02 10:00");
    assertThat(shell.flat("patch show S-2")).contains("2026-05-02 14:05");
  }

  @Test
  void day_first_dates_hold_for_power_checks_upkeep_and_samples_too() throws IOException {
    Path rigs =
        sheet(
            "rigs.csv",
            "rig,emission,rated_w,wavelength_nm,spot_definition\nGull,cw,1000,1064,1/e2\n");
    Path checks =
        sheet("checks.csv", "rig,checked_at,power_pct,metered_w\nGull,03.05.2026,50,480\n");
    Path samples =
        sheet("samples.csv", "finish,substance,taken_on,result\nwall-latex,lead,3.5.26,free\n");
    String line =
        "import --rigs %s --power-checks %s --samples %s".formatted(rigs, checks, samples);
    assertThat(shell.run(line).err().replaceAll("\\s+", " "))
        .contains("line 2, checked_at \"03.05.2026\": \"03.05.2026\" may begin with the day")
        .contains("--dates day-first");
    shell.mustDo(line + " --dates day-first");
    assertThat(shell.flat("rig show Gull")).contains("2026-05-03");
    assertThat(shell.flat("sample show S-0001")).contains("2026-05-03");
  }

  @Test
  void letters_of_other_systems_are_read() throws IOException {
    String text = EXTRAS.replace("by the door", "unter der Tür – 5 µm");
    for (Charset letters :
        List.of(Charset.forName("windows-1252"), StandardCharsets.UTF_16, StandardCharsets.UTF_8)) {
      Path sheet = folder.resolve("shed.csv");
      Files.write(sheet, text.replace("S-", letters.name() + "-").getBytes(letters));
      shell.mustDo("import " + sheet + " --extra skip");
      assertThat(shell.run("patch show " + letters.name() + "-1").out())
          .contains("unter der Tür – 5 µm");
    }
  }
}
