package charline.log.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import charline.log.PatchEntry;
import charline.refusal.Refusal;
import java.io.StringReader;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sheets that are read in blocks: here of a few lines each. */
class LargeSheetTest {
  private static final int BLOCK = 300;
  private static final String HEAD =
      "patch,burned_at,rig,board,wood,finish,family,power_pct,hand_mm_s,passes,outcome,note\n";

  @TempDir Path folder;

  private static TrialSheet inBlocks(String text) {
    return TrialSheet.read(new StringReader(text), BLOCK);
  }

  private static String line(String code, int passes, String note) {
    return "%s,2026-09-03,heron,b1,pine,wall,latex,60,22,%d,residue,\"%s\"\n"
        .formatted(code, passes, note);
  }

  private static List<List<String>> groups(TrialSheet sheet) {
    try (Stream<List<SheetRow>> patches = sheet.patches()) {
      return patches
          .map(rows -> rows.stream().map(row -> row.line() + " " + row.text(Column.NOTE)).toList())
          .toList();
    }
  }

  @Test
  void a_sheet_in_blocks_says_the_same_as_the_sheet_at_once() {
    Random random = new Random(17);
    StringBuilder text = new StringBuilder("\uFEFF\r\n" + HEAD);
    for (int i = 0; i < 300; i++) {
      String code = random.nextInt(5) == 0 ? "" : (random.nextBoolean() ? "A-" : "a-") + i / 3;
      String note = random.nextInt(4) == 0 ? "two\r\nlines, \"\"quoted\"\"" : "n" + i;
      text.append(line(random.nextInt(9) == 0 ? "far" : code, i % 3 + 1, note));
      if (random.nextInt(6) == 0) {
        text.append(random.nextBoolean() ? "\r\n" : ",,,,,,,,,,,\n");
      }
    }
    TrialSheet once = TrialSheet.read(new StringReader(text.toString()));
    TrialSheet blocks = inBlocks(text.toString());
    assertThat(groups(blocks)).isEqualTo(groups(once)).hasSizeGreaterThan(50);
    assertThat(groups(blocks)).as("it can be read again").isEqualTo(groups(once));
    assertThat(said(blocks)).isEqualTo(said(once));
  }

  private static List<String> said(TrialSheet sheet) {
    return sheet.rows().stream()
        .map(row -> row.line() + ": " + new TreeMap<>(row.cells()))
        .toList();
  }

  @Test
  void what_is_wrong_far_down_is_named_by_its_line() {
    String lines = line("A", 1, "x").repeat(20);
    assertThatThrownBy(() -> inBlocks(HEAD + lines + "too,few\n"))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("line 22: It has 2 cells under 12 column names");
    assertThatThrownBy(() -> inBlocks(HEAD + lines + line("B", 1, "open").replace("open\"", "")))
        .hasMessageContaining("A quote that opens on line 22 of the trial sheet is never closed");
    assertThatThrownBy(() -> inBlocks(HEAD + lines + "B\u0000\n"))
        .hasMessageContaining("is not plain text");
    assertThatThrownBy(() -> groups(inBlocks(HEAD.replace("note", "") + lines)))
        .hasMessageContaining("line 1: A column with cells has no name");
  }

  @Test
  void a_fault_far_down_leaves_the_log_as_it_was() {
    try (SheetBench bench = new SheetBench(folder, "log.db")) {
      StringBuilder text = new StringBuilder(HEAD);
      for (int i = 0; i < 40; i++) {
        text.append(line("A-" + i, 1, "x"));
      }
      TrialSheet bad = inBlocks(text + line("B", 1, "x").replace("residue", "purple"));
      TrialSheetImporter importer = new TrialSheetImporter(bench.log, SheetBench.CLOCK);
      assertThatThrownBy(() -> importer.add(bad, false)).hasMessageContaining("line 42");
      assertThat(bench.patches()).isEmpty();
      assertThat(importer.add(inBlocks(text.toString()), false).patches()).isEqualTo(40);
      assertThat(bench.patches()).extracting(PatchEntry::patch).hasSize(40);
    }
  }
}
