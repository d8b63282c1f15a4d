package charline.log.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import charline.refusal.Refusal;
import java.io.IOException;
import java.io.StringReader;
import java.nio.ByteBuffer;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class TrialSheetTest {
  private static final String NEEDED = "burned_at,rig,board,passes,outcome";
  private static final String LINE = "2026-09-03,heron,b1,1,clean";

  @TempDir Path folder;

  private static TrialSheet sheet(String text) {
    return TrialSheet.read(new StringReader(text));
  }

  @Test
  void columns_may_come_in_any_order_and_case_with_a_byte_order_mark_and_returns() {
    TrialSheet sheet =
        sheet("\uFEFFOutcome,PASSES,board,Rig,Burned_At\r\nclean,1,b1,heron,2026-09-03\r\n");
    assertThat(sheet.rows()).hasSize(1);
    SheetRow row = sheet.rows().get(0);
    assertThat(row.line()).isEqualTo(2);
    assertThat(row.text(Column.OUTCOME)).isEqualTo("clean");
    assertThat(row.text(Column.BURNED_AT)).isEqualTo("2026-09-03");
    assertThat(row.text(Column.NOTE)).isEmpty();
  }

  @Test
  void semicolons_and_tabs_separate_as_well() {
    for (char separator : new char[] {',', ';', '\t'}) {
      TrialSheet sheet = sheet((NEEDED + "\n" + LINE + "\n").replace(',', separator));
      assertThat(sheet.separator()).isEqualTo(separator);
      assertThat(sheet.rows().get(0).text(Column.RIG)).isEqualTo("heron");
    }
  }

  @Test
  void lines_are_those_of_the_file_whatever_notes_and_gaps_stand_between() {
    TrialSheet sheet =
        sheet(
            "\n"
                + NEEDED
                + ",note\n"
                + LINE
                + ",\"one\ntwo\r\nthree \"\"four\"\", five\"\n\n,,,,,\n"
                + LINE
                + ",last");
    assertThat(sheet.rows()).extracting(SheetRow::line).containsExactly(3, 8);
    assertThat(sheet.rows().get(0).text(Column.NOTE)).isEqualTo("one\ntwo\nthree \"four\", five");
    assertThat(sheet.rows().get(1).text(Column.NOTE)).isEqualTo("last");
  }

  @Test
  void nothing_is_guessed_from_the_look_of_a_cell() {
    TrialSheet sheet =
        sheet(
            "patch,by,note," + NEEDED + "\n#12,NA,null," + LINE + "\n007,true,NaN," + LINE + "\n");
    assertThat(sheet.rows()).extracting(r -> r.text(Column.PATCH)).containsExactly("#12", "007");
    assertThat(sheet.rows()).extracting(r -> r.text(Column.BY)).containsExactly("NA", "true");
    assertThat(sheet.rows()).extracting(r -> r.text(Column.NOTE)).containsExactly("null", "NaN");
  }

  @Test
  void empty_columns_without_a_name_are_passed_over() {
    assertThat(sheet(NEEDED + ",,\n" + LINE + ",,\n").rows()).hasSize(1);
  }

  @Test
  void lines_with_one_code_belong_together_and_lines_without_stand_alone() {
    String rest = "," + LINE + "\n";
    TrialSheet sheet =
        sheet("patch," + NEEDED + "\nA" + rest + rest + "B" + rest + "a" + rest + rest);
    assertThat(sheet.patches())
        .extracting(rows -> rows.stream().map(SheetRow::line).toList().toString())
        .containsExactly("[2, 5]", "[3]", "[4]", "[6]");
  }

  private static final String COLUMNS =
      "patch, burned_at, rig, board, wood, finish, family, tone, power_pct, power_w, rep_khz,"
          + " pulse_ns, spot_mm, scan_mm_s, spacing_mm, width_mm, hand_mm_s, area_cm2, seconds,"
          + " passes, outcome, soot, depth_um, by, note, patch_cm2, form, condition, moisture_pct,"
          + " job, coats, read_at, burned_by, patch_note, wood_like, family_like, figure, lines_s,"
          + " standoff_mm, defocus_mm, rest_s, place, wood_part, wetted, air, extraction,"
          + " temperature_c, strokes_s, stroke_mm";
  private static final String NO_NAMES =
      "Line %d of the trial sheet must name the columns, not read \"%s\"; remove any title above"
          + " the names, and name at least burned_at, rig, board, passes, outcome, of %s.";

  static Stream<Arguments> bad_sheets() {
    return Stream.of(
        Arguments.of(
            "",
            "the trial sheet is empty; its first line must name the columns, such as"
                + " patch,rig,board."),
        Arguments.of(
            " \r\n\r\n",
            "the trial sheet is empty; its first line must name the columns, such as"
                + " patch,rig,board."),
        Arguments.of(
            NEEDED + "\n",
            "the trial sheet has column names but no lines under them; there is nothing to"
                + " import."),
        Arguments.of(
            "PK\u0003\u0004x",
            "the trial sheet is not plain text; if it is a spreadsheet, save it as CSV in UTF-8."),
        Arguments.of(
            NEEDED + "\n2026\u0000\n",
            "the trial sheet is not plain text; if it is a spreadsheet, save it as CSV in UTF-8."),
        Arguments.of(
            NEEDED + ",spott_mm\n" + LINE + ",0.5\n",
            "Nothing was imported: one place in the trial sheet must be corrected.\n"
                + "  line 1: There is no column \"spott_mm\"; nearest: spot_mm."),
        Arguments.of(
            NEEDED + ",Lampe,Himmel\n" + LINE + ",0.5,dry\n",
            "Nothing was imported: one place in the trial sheet must be corrected.\n  line 1: There are no columns \"Lampe\", \"Himmel\"; the columns are %s."
                .formatted(COLUMNS)),
        Arguments.of(
            "\nBoathouse; kitchen;;\n" + NEEDED.replace(',', ';') + "\n",
            NO_NAMES.formatted(2, "Boathouse, kitchen", COLUMNS)),
        Arguments.of(
            "Boathouse\n" + NEEDED + "\n" + LINE + "\n",
            NO_NAMES.formatted(1, "Boathouse", COLUMNS)),
        Arguments.of(
            "Probe;\"Datum\";Brett\nA;2026-09-03;b1\n",
            NO_NAMES.formatted(1, "Probe, Datum, Brett", COLUMNS)),
        Arguments.of(
            NEEDED + ",Rig\n" + LINE + ",x\n",
            "Nothing was imported: one place in the trial sheet must be corrected.\n"
                + "  line 1: Column rig is there twice; keep one."),
        Arguments.of(
            NEEDED + ",\n" + LINE + ",x\n",
            "Nothing was imported: one place in the trial sheet must be corrected.\n"
                + "  line 1: A column with cells has no name; name it or empty it."),
        Arguments.of(
            "patch,board,passes\nA,b1,1\n",
            "Nothing was imported: one place in the trial sheet must be corrected.\n"
                + "  line 1: Columns burned_at, rig, outcome are missing; every sheet needs"
                + " burned_at, rig, board, passes, outcome."),
        Arguments.of(
            NEEDED + "\n" + LINE + "\n" + LINE + ",x\n2026-09-03,heron\n",
            "Nothing was imported: 2 places in the trial sheet must be corrected.\n"
                + "  line 3: It has 6 cells under 5 column names; check its separators and"
                + " quotes.\n"
                + "  line 4: It has 2 cells under 5 column names; check its separators and"
                + " quotes."),
        Arguments.of(
            NEEDED + ",note\n" + LINE + ",\"open\n" + LINE + ",\n",
            "A quote that opens on line 2 of the trial sheet is never closed; close it or remove"
                + " it."));
  }

  @ParameterizedTest
  @MethodSource("bad_sheets")
  void a_sheet_that_is_none_is_refused_in_plain_words(String text, String message) {
    assertThatThrownBy(() -> sheet(text)).isInstanceOf(Refusal.class).hasMessage(message);
  }

  @Test
  void a_missing_file_a_folder_and_another_encoding_are_told_apart() throws IOException {
    Path missing = folder.resolve("none.csv");
    assertThatThrownBy(() -> TrialSheet.read(missing))
        .isInstanceOf(Refusal.class)
        .hasMessage("There is no file %s; check its name and folder.".formatted(missing));
    Path inner = Files.createDirectory(folder.resolve("inner"));
    assertThatThrownBy(() -> TrialSheet.read(inner))
        .isInstanceOf(Refusal.class)
        .hasMessage("inner is a folder; give a CSV file.");
  }

  /** As spreadsheets of Windows save them, and as "Unicode text". */
  @Test
  void a_sheet_may_come_in_other_encodings_than_utf_8() throws IOException {
    String text = NEEDED + ",by\n" + LINE + ",Zo\u00eb\n";
    for (Charset charset :
        List.of(
            StandardCharsets.UTF_8,
            Charset.forName("windows-1252"),
            StandardCharsets.UTF_16LE,
            StandardCharsets.UTF_16BE,
            StandardCharsets.UTF_16)) {
      Path file = folder.resolve(charset.name() + ".csv");
      Files.write(file, text.getBytes(charset));
      assertThat(SheetLetters.of(file).decode(ByteBuffer.wrap(text.getBytes(charset))).toString())
          .as(charset.name())
          .contains("Zo\u00eb");
      assertThat(TrialSheet.read(file)).isNotNull();
    }
  }
}
