package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FindCommandTest {
  @TempDir Path folder;
  private Shell shell;

  @BeforeEach
  void three_patches_in_two_months() {
    shell = Shell.withBench(folder).at("2026-05-20T08:00:00Z");
    shell.mustDo(
        "patch add --board boathouse-1 --finish wall-latex --power 60% --hand 22 --passes 1"
            + " --outcome residue");
    shell.mustDo("patch read 1 --passes 2 --outcome clean");
    shell.mustDo("patch read 1 --passes 3 --outcome clean");
    shell.at("2026-06-01T12:30:00Z");
    shell.mustDo("patch add --like 1 --hand 18 --outcome clean");
    shell.mustDo("patch add --like 1 --board boathouse-2 --outcome char+residue --by Bea");
  }

  @Test
  void clean_patches_are_listed_with_the_settings_that_worked() {
    assertThat(shell.run("find clean latex over pine").out())
        .isEqualTo(
            """
            You ask for patches of latex, on pine or one of its species, that were clean
              at the last reading.
            2 patches found: 4 readings on 1 board, burned 2026-05-20 to 2026-06-01.

            latex over pine, rig Heron (pulsed, 1064 nm)
              patch   date        power    speed  passes  outcome  J/cm2  board
              P-0001  2026-05-20   60 %  22 mm/s       1  residue   9.09  boathouse-1
                                                     2-3  clean
              P-0002  2026-06-01   60 %  18 mm/s       1  clean     11.1  boathouse-1

            Settings that came out clean, of so many tried
              clean  of  power    speed  J/cm2  clean after  last used   coating, wood, rig
                  1   2   60 %  22 mm/s   9.09     2 passes  2026-05-20  latex over pine,
                                                                         Heron
                  1   1   60 %  18 mm/s   11.1       1 pass  2026-06-01  latex over pine,
                                                                         Heron
            A few clean patches do not make a setting safe; `charline window` shows how
              sure you can be, and --with-window whether it covers these settings.
            """);
  }

  @Test
  void a_day_that_is_another_one_by_the_clock_of_who_asks_is_said() {
    shell.mustDo("patch add --like 1 --at 2026-05-25T23:30-05:00 --outcome clean");
    assertThat(shell.run("find since 2026-05-26").out().replaceAll("\\s+", " "))
        .contains("burned 2026-05-25 to 2026-06-01, 1 of them on another day by your clock: their")
        .contains("P-0004 2026-05-25");
    assertThat(shell.run("find clean").out()).doesNotContain("by your clock");
    assertThat(shell.run("find since 2026-06-01").out())
        .contains("burned on 2026-06-01")
        .doesNotContain("by your clock");
  }

  /** The same power and speed through another lens are another setting. */
  @Test
  void what_a_list_leaves_out_is_said_where_it_differs() {
    shell.mustDo("patch add --like 1 --spot 0.9mm --outcome clean");
    assertThat(shell.run("find clean latex over pine").out())
        .contains(
            """
              patch   date        power    speed  passes  outcome  J/cm2  board, with
              P-0001  2026-05-20   60 %  22 mm/s       1  residue   9.09  boathouse-1, spot
                                                                          0.6 mm
                                                     2-3  clean
              P-0002  2026-06-01   60 %  18 mm/s       1  clean     11.1  boathouse-1, spot
                                                                          0.6 mm
              P-0004  2026-06-01   60 %  22 mm/s       1  clean     9.09  boathouse-1, spot
                                                                          0.9 mm
            """)
        .contains("  Heron, spot 0.6 mm\n", "  Heron, spot 0.9 mm\n");

    shell.mustDo("patch add --like 1 --width 50mm --rep 30kHz --pulse 100ns --outcome clean");
    assertThat(shell.run("find clean").out().replaceAll("\\s+", " "))
        .contains("boathouse-1, spot 0.6 mm, 30 kHz, 100 ns, width 50 mm")
        .contains("boathouse-1, spot 0.9 mm, 40 kHz, width 60 mm");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "find last month",
        "find --until 2026-05-31",
        "find clean --until 2026-05-20",
        "find boathouse-1 last month",
        "find --board boathouse-1 --until 2026-05-31 --job boathouse"
      })
  void words_and_options_narrow_together(String line) {
    assertThat(shell.run(line).out())
        .contains("\n1 patch found: ")
        .contains("P-0001")
        .doesNotContain("P-0002", "P-0003");
  }

  @Test
  void a_person_a_day_and_marks_may_be_asked_for() {
    assertThat(shell.run("find --by Bea --since today --outcome char").out())
        .contains("P-0003", "char+residue")
        .doesNotContain("P-0001", "P-0002");
  }

  @Test
  void nothing_found_says_what_was_searched_and_what_there_is() {
    Shell.Result result = shell.run("find tint latex");

    assertThat(result)
        .isEqualTo(
            new Shell.Result(
                1,
                """
                You ask for patches of latex, that were marked tint at the last reading. No
                  patch matches. The log has 3 patches, burned 2026-05-20 to 2026-06-01: latex
                  over pine (3).
                """,
                ""));
  }

  @Test
  void nothing_found_is_an_empty_array_to_a_program() {
    Shell.Result result = shell.run("find tint --json");

    assertThat(result.code()).isEqualTo(1);
    assertThat(result.out().strip()).isEqualTo("[ ]");
    assertThat(result.err()).contains("No patch");
  }

  @Test
  void an_unknown_word_is_refused_with_the_nearest() {
    assertThat(shell.run("find clean latx"))
        .isEqualTo(
            new Shell.Result(2, "", "I do not know \"latx\"; nearest words in this log: latex.\n"));
    assertThat(shell.run("find --wood pin").err())
        .isEqualTo("No wood \"pin\" in this log; nearest: pine.\n");
    assertThat(shell.run("find --since soon").err())
        .isEqualTo("--since: a day must read like 2026-06-01, today or yesterday, not \"soon\".\n");
    assertThat(shell.run("find --since 14:30").err())
        .isEqualTo(
            "--since: a day must read like 2026-06-01, today or yesterday, not \"14:30\".\n");
    assertThat(shell.run("find --until 2026-02-30").err())
        .isEqualTo(
            "--until: \"2026-02-30\" is not a valid date; write a day like 2026-06-01, today or"
                + " yesterday.\n");
  }

  @Test
  void json_gives_every_reading_and_the_dose() {
    assertThat(shell.run("find --board boathouse-2 --json").out())
        .contains(
            "\"patch\" : \"P-0003\"",
            "\"dose_j_cm2\" : 9.09090909",
            "\"fluence_j_cm2\" : 1.06103295",
            "\"irradiance_w_cm2\" : null",
            "\"outcome\" : \"char+residue\"");
  }

  @Test
  void csv_gives_a_line_for_each_reading() {
    assertThat(shell.run("find --csv").out().lines())
        .hasSize(1 + 5)
        .first()
        .asString()
        .startsWith("patch,burned_at,rig,board,wood,finish,family,tone,power_pct,power_w,rep_khz");
  }

  /**
   * Whoever takes a list into a sheet wants to know who did it, for which job, and what was noted.
   */
  @Test
  void csv_and_json_name_the_person_the_note_and_the_job(@TempDir Path other) {
    Shell bench = Shell.withBench(other);
    bench.mustDo(
        "patch add --board boathouse-1 --finish wall-latex --power 60 --hand 22 --passes 1"
            + " --outcome clean --by Bo --note \"near the hinge\"");

    assertThat(bench.run("find --csv").out().lines().toList())
        .satisfies(
            lines -> {
              assertThat(lines.get(0)).endsWith(",by,note,job");
              assertThat(lines.get(1)).endsWith(",Bo,near the hinge,boathouse");
            });
    assertThat(bench.run("find --json").out())
        .contains("\"job\" : \"boathouse\"", "\"by\" : \"Bo\"", "\"note\" : \"near the hinge\"");
  }

  @Test
  void a_list_of_finishes_keeps_the_thickness_of_every_coat(@TempDir Path other) {
    Shell bench = Shell.withBench(other);
    bench.mustDo("finish add sill --coat latex:pale:90um --coat primer:pale --coat alkyd::1.5mil");

    assertThat(bench.run("finish list --csv").out())
        .contains("sill,latex,pale,,latex:pale:90um + primer:pale + alkyd::38.1um\n");
    assertThat(bench.run("finish list --json").out())
        .contains("\"thickness_um\" : 90", "\"thickness_um\" : 38.1");
  }

  @Test
  void priors_are_listed_as_json_too() {
    assertThat(shell.run("prior --json").out())
        .contains("\"parameter\" : \"dose\"", "\"line\" : \"", "\"why\" : \"", "\"source\" : \"");
  }
}
