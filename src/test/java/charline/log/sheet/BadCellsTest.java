package charline.log.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import charline.refusal.Refusal;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One good patch of two readings, spoilt in one or two cells at a time. */
class BadCellsTest {
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

  private static Map<String, String> good() {
    Map<String, String> cells = new LinkedHashMap<>();
    Column.headings().forEach(h -> cells.put(h, ""));
    String given =
        "patch=A|burned_at=2026-09-03|rig=heron|board=b1|wood=pine|finish=f1|family=latex|tone=pale"
            + "|power_pct=60|hand_mm_s=18|passes=1|outcome=residue";
    for (String cell : given.split("\\|")) {
      cells.put(cell.split("=")[0], cell.split("=")[1]);
    }
    return cells;
  }

  private static String line(Map<String, String> cells) {
    return cells.values().stream().map(c -> "\"" + c + "\"").collect(Collectors.joining(","))
        + "\n";
  }

  private static void spoil(Map<String, String> cells, String changes) {
    Arrays.stream(changes.split("\\|"))
        .filter(c -> !c.isEmpty())
        .forEach(
            c -> {
              String[] both = c.split("=", 2);
              assertThat(cells).containsKey(both[0]);
              cells.put(both[0], both[1]);
            });
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '~',
      quoteCharacter = '`',
      textBlock =
          """
          rig=hern ~ rig "hern": No rig "hern" in this log; nearest: heron.
          rig= ~ rig (empty): Give the rig that burned it.
          board= ~ board (empty): Give the board that it was burned on.
          wood= ~ wood (empty): Board b1 is new, so its wood must be given.
          finish=|family=|tone= ~ finish (empty): Give the finish, by its name or its family.
          family= ~ family (empty): Finish f1 is new, so its family must be given.
          tone=red ~ tone "red": A tone must be pale, mid or dark, not "red".
          form=log ~ form "log": A board's form must be solid, veneer, plywood or mdf, not "log".
          moisture_pct=95 ~ moisture_pct "95": Moisture of 95 % is outside 2 to 60 % (usual: 6 to 20); correct it, or say that you are sure.
          coats=latex:pale:90um:x ~ coats "latex:pale:90um:x": A coat must read family:tone:thickness, such as latex:pale:90um, not "latex:pale:90um:x".
          coats=latex:dark:90um ~ tone "pale": The tone must be that of the outermost coat in coats.
          coats=latex:pale:90mm ~ coats "latex:pale:90mm": Coat thickness of 90000 um is outside 1 to 5000 um (usual: 20 to 200); correct it, or say that you are sure.
          burned_at= ~ burned_at (empty): Give the time of burning, such as 2026-09-14.
          burned_at=14:9:26 ~ burned_at "14:9:26": A time must read like 2026-09-14 or 2026-09-14T10:30+02:00, not "14:9:26".
          read_at=2026-08-03 ~ read_at "2026-08-03": The reading of 2026-08-03 12:00 is from before the burning on 2026-09-03 12:00; correct it, or say that you are sure.
          burned_at=2026-13-01 ~ burned_at "2026-13-01": A time must read like 2026-09-14 or 2026-09-14T10:30+02:00, not "2026-13-01".
          burned_at=2206-09-03 ~ burned_at "2206-09-03": The year 2206 is too early or too late for trials with these lasers; correct it, or say that you are sure.
          power_pct= ~ power_pct (empty): The power (power_pct or power_w) is not set; give it in % or W.
          power_w=180 ~ power_w "180": Give power_pct or power_w, not both; leave one of them out.
          power_pct=140 ~ power_pct "140": Power must be between 0 and 100 %, not 140 %.
          power_pct=0 ~ power_pct "0": Power must be above 0 %, not 0 %.
          power_pct=lots ~ power_pct "lots": A percentage must be a number with an optional unit, such as 30%, not "lots".
          power_pct=|power_w=900 ~ power_w "900": Power of 900 W is more than rig heron gives (300 W at 100 %); correct it, or say that you are sure.
          hand_mm_s= ~ hand_mm_s (empty): The speed is missing: give hand_mm_s with width_mm, scan_mm_s with spacing_mm, or area_cm2 with seconds.
          scan_mm_s=4000 ~ scan_mm_s "4000": The dose must be given in one form: hand_mm_s with width_mm, scan_mm_s with spacing_mm, or area_cm2 with seconds; hand_mm_s and scan_mm_s are of different forms.
          hand_mm_s=|scan_mm_s=4000 ~ spacing_mm (empty): spacing_mm is not set; give it in mm.
          hand_mm_s=|seconds=4 ~ area_cm2 (empty): area_cm2 is not set; give it in cm2.
          hand_mm_s=|width_mm=60 ~ hand_mm_s (empty): hand_mm_s is not set; give it in mm/s.
          hand_mm_s=-18 ~ hand_mm_s "-18": Hand speed must be above 0 mm/s, not -18 mm/s.
          hand_mm_s=18kg ~ hand_mm_s "18kg": A speed must be in cm/s, in/s, m/min, m/s, mm/s, not "18kg".
          hand_mm_s=1,200 ~ hand_mm_s "1,200": Hand speed of 1,200 can be read in two ways; write it without a comma.
          hand_mm_s=1800 ~ hand_mm_s "1800": Hand speed of 1800 mm/s is outside 0.5 to 500 mm/s (usual: 5 to 60); correct it, or say that you are sure.
          spot_mm=5000 ~ spot_mm "5000": Spot diameter of 5000 mm is outside 0.02 to 20 mm (usual: 0.1 to 2); correct it, or say that you are sure.
          rep_khz=60000 ~ rep_khz "60000": Repetition rate of 60000 kHz is outside 1 to 2000 kHz (usual: 10 to 100); correct it, or say that you are sure.
          rig=otter|rep_khz=60 ~ rep_khz "60": Rig otter is cw and has no pulses; leave out rep_khz.
          rig=bare|width_mm=60|spot_mm=0.4 ~ rep_khz (empty): rep_khz is not set, and rig bare has no usual one; give it in kHz.
          rig=bare|width_mm=60|rep_khz=60 ~ spot_mm (empty): spot_mm is not set, and rig bare has no usual one; give it in mm.
          rig=bare|spot_mm=0.4|rep_khz=60 ~ width_mm (empty): width_mm is not set, and rig bare has no usual one; give it in mm.
          patch_cm2=0 ~ patch_cm2 "0": Patch size must be above 0 cm2, not 0 cm2.
          passes=0 ~ passes "0": Passes must be a whole number, 1 or more.
          passes=2.5 ~ passes "2.5": Passes must be a whole number, 1 or more.
          outcome= ~ outcome (empty): An outcome must name clean, tint, char or residue; nothing was given.
          outcome=clean+char ~ outcome "clean+char": Clean must be the only mark of an outcome; it came with char.
          soot=maybe ~ soot "maybe": Soot must be yes, no or empty.
          depth_um=-3 ~ depth_um "-3": Depth removed must be 0 or more um, not -3 um.
          """)
  void a_bad_cell_is_named(String changes, String fault) {
    Map<String, String> cells = good();
    spoil(cells, changes);
    refuses(line(cells), 2, fault);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '~',
      quoteCharacter = '`',
      textBlock =
          """
          passes=1 ~ passes "1": Passes on A must rise down the sheet; line 2 has 1 already.
          hand_mm_s=20 ~ hand_mm_s "20": All lines of A must agree, and line 2 has 18; give other settings their own patch code.
          spot_mm=0.4 ~ spot_mm "0.4": All lines of A must agree, and line 2 has 0.5; give other settings their own patch code.
          power_w=180 ~ power_w "180": All lines of A must agree, and line 2 has nothing; give other settings their own patch code.
          board=b2 ~ board "b2": All lines of A must agree, and line 2 has b1; give other settings their own patch code.
          rig=otter ~ rig "otter": All lines of A must agree, and line 2 has heron; give other settings their own patch code.
          """)
  void later_lines_must_agree_with_the_first(String changes, String fault) {
    Map<String, String> later = good();
    spoil(later, "passes=2|outcome=clean");
    spoil(later, changes);
    refuses(line(good()) + line(later), 3, fault);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '~',
      quoteCharacter = '`',
      textBlock =
          """
          wood=oak ~ wood "oak": Board b1 has wood pine on line 2; correct it or use another name.
          family=alkyd ~ family "alkyd": Finish f1 has family latex on line 2; correct it or use another name.
          tone= dark ~ tone "dark": Finish f1 has tone pale on line 2; correct it or use another name.
          form=mdf ~ form "mdf": Board b1 has form solid on line 2; correct it or use another name.
          """)
  void other_patches_must_agree_about_boards_and_finishes(String changes, String fault) {
    Map<String, String> other = good();
    spoil(other, "patch=B");
    spoil(other, changes);
    refuses(line(good()) + line(other), 3, fault);
  }

  private void refuses(String lines, int line, String fault) {
    String sheet = String.join(",", Column.headings()) + "\n" + lines;
    assertThatThrownBy(() -> bench.add(sheet))
        .isInstanceOf(Refusal.class)
        .hasMessage(
            "Nothing was imported: one place in the trial sheet must be corrected.\n  line %d, %s"
                .formatted(line, fault));
    assertThat(bench.patches()).isEmpty();
    assertThat(bench.log.boards()).isEmpty();
  }
}
