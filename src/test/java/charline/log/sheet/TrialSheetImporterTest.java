package charline.log.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.PowerSetting;
import charline.exposure.TimedArea;
import charline.log.PatchEntry;
import charline.refusal.Refusal;
import charline.trial.Reading;
import charline.trial.WoodForm;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TrialSheetImporterTest {
  private static final String HEAD =
      "patch,burned_at,rig,board,wood,finish,family,tone,power_pct,hand_mm_s,passes,outcome,by,note\n";
  private static final String A1 =
      "A,2026-09-03T09:00+02:00,heron,panel 1,pine,wall latex,latex,pale,60,18,1,residue,Runa,\n";
  private static final String A2 =
      "A,2026-09-03T09:10+02:00,heron,panel 1,,,,,,,2,clean,Edvin,\"bare,\nand bright\"\n";

  @TempDir Path folder;
  private SheetBench bench;

  @BeforeEach
  void open() {
    bench = new SheetBench(folder, "log.db");
  }

  @AfterEach
  void close() {
    bench.close();
  }

  @Test
  void lines_with_one_code_become_one_patch_with_its_readings() {
    assertThat(bench.add(HEAD + A1 + A2)).isEqualTo(new ImportResult(1, 2, 1, 1, 0));
    PatchEntry entry = bench.log.patch("A");
    assertThat(entry.patch().burnedAt()).isEqualTo(OffsetDateTime.parse("2026-09-03T09:00+02:00"));
    assertThat(entry.patch().readings()).extracting(Reading::passes).containsExactly(1, 2);
    assertThat(entry.patch().lastReading().at())
        .isEqualTo(OffsetDateTime.parse("2026-09-03T09:10+02:00"));
    assertThat(entry.patch().lastReading().by()).contains("Edvin");
    assertThat(entry.patch().lastReading().note()).contains("bare,\nand bright");
    assertThat(entry.by()).contains("Runa");
    assertThat(entry.patch().finish().family()).isEqualTo("latex");
    assertThat(entry.patch().finish().tone().orElseThrow().word()).isEqualTo("pale");
  }

  @Test
  void what_is_left_empty_is_the_rigs_usual_and_what_is_typed_is_kept() {
    bench.add(HEAD + A1.replace(",18,", ",1.2in/s,"));
    PatchEntry entry = bench.log.patch("A");
    assertThat(entry.patch().settings().spot().diameterMillimetres()).isEqualTo(0.5);
    assertThat(entry.patch().settings().pulses().orElseThrow().repetitionKilohertz()).isEqualTo(60);
    assertThat(entry.patch().settings().form()).isEqualTo(new HandPass(60, 1.2 * 25.4));
    assertThat(entry.typed())
        .containsOnly(java.util.Map.entry("power", "60%"), java.util.Map.entry("hand", "1.2in/s"));
  }

  @Test
  void each_dose_form_is_read() {
    bench.add(
        "patch;burned_at;rig;board;wood;family;power_w;scan_mm_s;spacing_mm;area_cm2;seconds;patch_cm2;passes;outcome\n"
            + "A;2026-09-03;heron;b1;pine;latex;150;5000;0,06;;;30;1;clean\n"
            + "B;2026-09-03;heron;b1;pine;latex;150,5;;;25;4;;1;clean\n");
    assertThat(bench.log.patch("A").patch().settings().form()).isEqualTo(new LineScan(5000, 0.06));
    assertThat(bench.log.patch("A").patch().areaSquareCentimetres()).hasValue(30);
    assertThat(bench.log.patch("B").patch().settings().form()).isEqualTo(new TimedArea(25, 4));
    assertThat(bench.log.patch("B").patch().settings().power())
        .isEqualTo(PowerSetting.watts(150.5));
  }

  @Test
  void a_date_alone_is_noon_and_a_time_without_a_zone_is_the_clocks() {
    bench.add(
        HEAD
            + A1.replace("2026-09-03T09:00+02:00", "2026-09-03")
            + A1.replace("A,", "B,").replace("T09:00+02:00", " 9:00".replace(" 9", " 09")));
    assertThat(bench.log.patch("A").patch().burnedAt())
        .isEqualTo(OffsetDateTime.parse("2026-09-03T12:00+01:00"));
    assertThat(bench.log.patch("B").patch().burnedAt())
        .isEqualTo(OffsetDateTime.parse("2026-09-03T09:00+01:00"));
  }

  @Test
  void a_patch_without_a_code_gets_the_next_free_one() {
    bench.add(HEAD + A1.replaceFirst("A", "") + A1.replaceFirst("A", "P-0001"));
    assertThat(bench.patches()).extracting(e -> e.patch().code()).contains("P-0001", "P-0002");
  }

  @Test
  void nothing_more_is_recorded_on_a_void_board() {
    bench.add(HEAD + A1);
    PatchEntry other = bench.log.patch("A").with(bench.log.patch("A").patch().withCode("B"));
    bench.log.voidBoard(other.patch().board(), "Runa", "wet");
    assertThatThrownBy(() -> bench.log.add(other))
        .isInstanceOf(Refusal.class)
        .hasMessageStartingWith("Board panel 1 is void (wet), so patches on it count nowhere;");
    assertThat(bench.log.hasPatch("B")).isFalse();
  }

  @Test
  void importing_twice_does_no_harm() {
    String sheet = HEAD + A1 + A2 + A1.replaceFirst("A", "") + A1.replaceFirst("A", "");
    assertThat(bench.add(sheet)).isEqualTo(new ImportResult(3, 4, 1, 1, 0));
    assertThat(bench.add(sheet)).isEqualTo(new ImportResult(0, 0, 0, 0, 3));
    assertThat(bench.patches()).hasSize(3);
    assertThat(bench.add(sheet).words())
        .isEqualTo(
            "0 patches with 0 readings, 0 new boards, 0 new finishes; 3 patches were there"
                + " already");
    String third = A1.replaceFirst("A", "");
    assertThat(bench.add(HEAD + third + third + third)).isEqualTo(new ImportResult(1, 1, 0, 0, 2));
    assertThat(bench.add(HEAD + third.replace("T09:00+02:00", "T09:01+02:00")))
        .isEqualTo(new ImportResult(1, 1, 0, 0, 0));
  }

  @Test
  void a_code_that_is_taken_by_another_patch_is_refused() {
    bench.add(HEAD + A1);
    refuses(
        HEAD + A1.replace(",18,", ",20,"),
        "  line 2, patch \"A\": A is in the log and differs in its settings; give this patch its"
            + " own code, or amend the one in the log.");
    refuses(
        HEAD + A1 + A2,
        "  line 2, patch \"A\": A is in the log and differs in its readings; give this patch its"
            + " own code, or amend the one in the log.");
  }

  @Test
  void a_check_says_the_same_and_leaves_the_log_alone() {
    assertThat(bench.check(HEAD + A1 + A2)).isEqualTo(new ImportResult(1, 2, 1, 1, 0));
    assertThat(bench.patches()).isEmpty();
    assertThat(bench.log.boards()).isEmpty();
    assertThat(bench.log.finishes()).isEmpty();
  }

  @Test
  void one_bad_line_keeps_everything_out() {
    assertThatThrownBy(() -> bench.add(HEAD + A1 + A1.replaceFirst("A", "B").replace("heron", "?")))
        .isInstanceOf(Refusal.class);
    assertThat(bench.patches()).isEmpty();
    assertThat(bench.log.boards()).isEmpty();
  }

  @Test
  void twenty_faults_are_shown_and_the_rest_counted_by_their_true_lines() {
    StringBuilder sheet = new StringBuilder(HEAD).append(A1).append(A2);
    for (int i = 0; i < 23; i++) {
      sheet.append(A1.replaceFirst("A", "B" + i).replace(",1,residue", ",1,browned"));
    }
    assertThatThrownBy(() -> bench.add(sheet.toString()))
        .isInstanceOf(Refusal.class)
        .hasMessageStartingWith(
            "Nothing was imported: 23 places in the trial sheet must be corrected.\n"
                + "  line 5, outcome \"browned\": An outcome is clean, or tint, char and residue"
                + " joined by +, not \"browned\".\n"
                + "  line 6, ")
        .hasMessageEndingWith("\n  and 3 more");
  }

  @Test
  void values_far_from_hand_held_work_pass_only_if_the_person_is_sure() {
    String sheet = HEAD + A1.replace(",18,1,", ",18,900,");
    refuses(
        sheet,
        "  line 2, passes \"900\": Passes of 900 is outside 1 to 50 (usual: 1 to 10); correct it,"
            + " or say that you are sure.");
    new TrialSheetImporter(bench.log, SheetBench.CLOCK).add(SheetBench.sheet(sheet), true);
    assertThat(bench.log.patch("A").patch().lastReading().passes()).isEqualTo(900);
  }

  @Test
  void a_known_board_needs_no_wood_and_a_known_finish_no_family() {
    bench.add(HEAD + A1);
    ImportResult result =
        bench.add(
            HEAD
                + A1.replaceFirst("A", "B").replace(",pine,", ",,").replace(",latex,pale,", ",,,"));
    assertThat(result).isEqualTo(new ImportResult(1, 1, 0, 0, 0));
  }

  @Test
  void what_a_sheet_says_of_a_known_board_or_finish_must_agree_with_the_log() {
    bench.add(HEAD + A1);
    refuses(
        HEAD + A1.replaceFirst("A", "B").replace(",pine,", ",oak,"),
        "  line 2, wood \"oak\": Board panel 1 has wood pine in the log; correct it or use another"
            + " name.");
    refuses(
        HEAD + A1.replaceFirst("A", "B").replace(",latex,pale,", ",latex,dark,"),
        "  line 2, tone \"dark\": Finish wall latex has tone pale in the log; correct it or use"
            + " another name.");
  }

  @Test
  void what_later_lines_say_of_a_board_must_agree_with_its_first() {
    String sheet =
        """
        patch,burned_at,rig,board,wood,condition,moisture_pct,job,finish,family,power_pct,hand_mm_s,passes,outcome
        A-1,2026-09-01,heron,sill,pine,,9,boathouse,wall,latex,50,20,1,clean
        A-2,2026-09-01,heron,sill,pine,,9.0,boathouse,wall,latex,50,20,1,clean
        A-3,2026-09-01,heron,sill,pine,,,,wall,latex,50,20,1,clean
        A-4,2026-09-01,heron,sill,pine,weathered,19,ferry pier,wall,latex,50,20,1,clean
        """;
    assertThatThrownBy(() -> bench.add(sheet))
        .isInstanceOf(Refusal.class)
        .hasMessage(
            """
            Nothing was imported: 3 places in the trial sheet must be corrected.
              line 5, condition "weathered": Board sill has no condition on line 2; correct it or use another name.
              line 5, moisture_pct "19": Board sill has moisture_pct 9 on line 2; correct it or use another name.
              line 5, job "ferry pier": Board sill has job boathouse on line 2; correct it or use another name.\
            """);
  }

  @Test
  void a_finish_may_be_named_by_its_family_alone_and_boards_carry_more_where_given() {
    bench.add(
        "patch,burned_at,rig,board,wood,form,condition,moisture_pct,job,family,tone,coats,power_pct,hand_mm_s,passes,outcome\n"
            + "A,2026-09-03,heron,locker,plywood,plywood,dented,8.5,boathouse,enamel,dark,alkyd:dark:60um"
            + " + primer::1.5mil,60,18,1,clean\n");
    PatchEntry entry = bench.log.patch("A");
    assertThat(entry.patch().finish().name()).isEqualTo("dark alkyd");
    assertThat(entry.patch().finish().thicknessMicrometres()).hasValue(60 + 1.5 * 25.4);
    assertThat(entry.patch().board().form()).isEqualTo(WoodForm.PLYWOOD);
    assertThat(entry.patch().board().moisturePercent()).hasValue(8.5);
    assertThat(entry.patch().board().job()).contains("boathouse");
  }

  private void refuses(String sheet, String faults) {
    int before = bench.patches().size();
    assertThatThrownBy(() -> bench.add(sheet))
        .isInstanceOf(Refusal.class)
        .hasMessage(
            "Nothing was imported: one place in the trial sheet must be corrected.\n" + faults);
    assertThatThrownBy(() -> bench.check(sheet)).isInstanceOf(Refusal.class);
    assertThat(List.of(bench.patches().size())).containsExactly(before);
  }
}
