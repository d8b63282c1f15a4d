package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Results of samples: recorded, listed, put right, taken out, and carried from log to log. */
class SampleCommandsTest {
  @TempDir Path folder;
  private Shell shell;

  @BeforeEach
  void open() {
    shell = Shell.withBench(folder);
  }

  private static String unfolded(String text) {
    return text.replaceAll("\\s+", " ");
  }

  @Test
  void a_quote_without_lead_work_says_on_whose_word(@TempDir Path quoted) {
    Shell bench = new Shell(quoted).at("2026-11-01T09:00:00Z");
    bench.mustDo(
        "import sample-trials/latex-on-pine.csv --rigs sample-trials/rigs.csv --power-checks"
            + " sample-trials/power-checks.csv");
    String quote = "quote latex pine --area 2m2";
    String said = "Quoted as free of lead, as you said; ";
    assertThat(bench.flat(quote)).contains("CAUTION: Lead: not tested.").doesNotContain(said);
    assertThat(bench.flat(quote + " --lead free"))
        .contains("CAUTION: " + said + "the log has no test of these coats.")
        .doesNotContain("CAUTION: Lead: not tested.");
    bench.mustDo("sample add lead found --finish \"wall panel latex\"");
    assertThat(bench.flat(quote + " --lead free"))
        .contains("CAUTION: " + said + "a sample in the log found lead.");
    assertThat(bench.json(quote + " --lead free --json").get("warnings").toString()).contains(said);
    bench.mustDo("sample void 1 --why \"of another wall\"");
    bench.mustDo("sample add lead free --finish \"wall panel latex\"");
    assertThat(bench.flat(quote + " --lead free")).doesNotContain(said);
  }

  @Test
  void a_result_is_recorded_listed_and_shown() {
    Shell.Result added =
        shell.run(
            "sample add Pb found --finish wall-latex --on 2026-05-04 --tested-by \"Shore Lab\""
                + " --reference L-17 --value \"1.8 mg/cm2\" --note \"by the window\"");

    assertThat(added.code()).isZero();
    assertThat(unfolded(added.out()))
        .startsWith(
            "S-0001: lead in finish wall-latex: found (2026-05-04, L-17, 1.8 mg/cm2). BEFORE THE"
                + " BEAM: lead: found (2026-05-04, L-17, 1.8 mg/cm2).");
    assertThat(shell.run("sample list").out())
        .contains("S-0001", "2026-05-04", "lead", "lead: found; 1.8 mg/cm2; Shore Lab;");
    assertThat(shell.run("sample list --csv").out())
        .isEqualTo(
            """
            sample,substance,finish,job,result,value,taken_on,tested_by,reference,note,void_because
            S-0001,lead,wall-latex,,found,1.8 mg/cm2,2026-05-04,Shore Lab,L-17,by the window,
            """);
    assertThat(shell.run("sample list --json").out()).contains("\"result\" : \"found\"");
    assertThat(shell.run("sample show 1").out()).contains("by the window");
    assertThat(shell.run("sample list --finish wall-latex --job nowhere").code()).isEqualTo(1);
  }

  @Test
  void a_result_needs_what_it_is_about_and_a_day_that_was() {
    assertThat(shell.run("sample add lead free").err())
        .contains("A sample result belongs to a finish or to a job; name one of them.");
    assertThat(shell.run("sample add lead maybe --finish wall-latex").err())
        .contains("The result of a sample must be found, free or inconclusive, not \"maybe\".");
    assertThat(shell.run("sample add lead free --finish wall-latex --on 2027-01-01").err())
        .contains("The day of a sample must not be in the future, and 2027-01-01 is");
    assertThat(shell.run("sample add lead free --job slipway").err())
        .contains("no board of this log belongs to job slipway");
    assertThat(shell.run("sample list").code()).isEqualTo(1);
  }

  @Test
  void a_person_may_test_for_something_else_but_is_asked_about_a_slip() {
    Shell.Result slip = shell.run("sample add asbestus free --finish wall-latex");
    assertThat(slip.code()).isEqualTo(2);
    assertThat(slip.err())
        .contains("\"asbestus\" is none of the usual substances (nearest: asbestos)", "--sure");
    shell.mustDo("sample add \"barium sulphate\" found --finish wall-latex");
    assertThat(shell.run("finish show wall-latex").out()).contains("barium sulphate: found");
  }

  @Test
  void a_result_is_put_right_and_taken_out_with_its_history() {
    shell.mustDo("sample add lead free --finish wall-latex");
    shell.mustDo("sample amend 1 --result found --value 2% --why \"the report came\"");
    assertThat(shell.run("sample show S-0001").out())
        .contains("result          found")
        .contains("result from free to found (the report came)", "value from nothing to 2%");
    assertThat(shell.run("sample amend 1 --result found --why again").err())
        .contains("Nothing in S-0001 would change");

    shell.mustDo("sample void 1 --why \"another door\"");
    assertThat(shell.run("sample void 1 --why twice").err())
        .contains("S-0001 is void already (another door)");
    assertThat(shell.run("sample list").code()).isEqualTo(1);
    assertThat(shell.run("sample list --all").out()).contains("void: another door");
    assertThat(shell.run("finish show wall-latex").out()).contains("lead: not tested");
  }

  @Test
  void the_latest_of_equal_results_counts_and_one_that_found_it_outweighs_all() {
    shell.mustDo("sample add lead free --finish wall-latex --on 2026-05-20 --reference new");
    shell.mustDo("sample add lead free --finish wall-latex --on 2026-05-02 --reference old");
    assertThat(shell.run("finish show wall-latex").out()).contains("not found (2026-05-20, new)");
    shell.mustDo("sample add lead found --finish wall-latex --on 2026-05-10 --reference sill");
    assertThat(shell.run("finish show wall-latex").out()).contains("found (2026-05-10, sill)");
  }

  @Test
  void a_result_for_a_job_counts_for_what_was_burned_there_alone() {
    shell.mustDo("sample add lead free --job boathouse");
    assertThat(shell.run("finish show wall-latex").out()).contains("lead: not tested");
    shell.mustDo(
        "patch add --rig Heron --board boathouse-1 --finish wall-latex --power 40% --hand 30"
            + " --passes 1 --outcome residue");
    assertThat(unfolded(shell.run("finish show wall-latex").out())).contains("lead: not found");
    shell.mustDo("board add jetty-1 --wood pine --job jetty");
    shell.mustDo("patch add --like last --board jetty-1 --hand 32 --passes 1 --outcome residue");
    assertThat(shell.run("finish show wall-latex").out()).contains("lead: not tested");
  }

  @Test
  void export_writes_what_import_reads_and_importing_again_adds_nothing() throws IOException {
    shell.mustDo(
        "patch add --rig Heron --board boathouse-1 --finish wall-latex --power 40% --hand 30"
            + " --passes 1 --outcome residue");
    shell
        .mustDo("sample add lead found --finish wall-latex --reference =L-17 --value \"2, or so\"")
        .mustDo("sample add asbestos free --job boathouse --on 2026-05-04")
        .mustDo("sample add chromate free --finish wall-latex")
        .mustDo("sample void 3 --why slip");
    Path sheet = folder.resolve("all.csv");
    Path samples = folder.resolve("samples.csv");
    Path rigs = folder.resolve("rigs.csv");
    Shell.Result exported =
        shell.run("export --to %s --rigs %s --samples %s".formatted(sheet, rigs, samples));
    assertThat(exported.out()).contains("2 sample results written to");
    assertThat(Files.readString(samples))
        .startsWith("sample,finish,job,substance,taken_on,tested_by,reference,result,value,note\n")
        .contains("'=L-17");

    Path elsewhere = Files.createDirectory(folder.resolve("slipway"));
    Shell other = new Shell(elsewhere);
    String again = "import %s --rigs %s --samples %s".formatted(sheet, rigs, samples);
    assertThat(other.run(again).out()).contains("samples.csv: 2 new sample results.");
    assertThat(other.run(again).out()).contains("samples.csv: 0 new sample results.");
    assertThat(other.run("sample list --csv").out()).contains("=L-17", "\"2, or so\"", "boathouse");
    assertThat(other.run("check").code()).isZero();
  }

  @Test
  void a_bad_sample_sheet_names_its_line_and_nothing_is_imported() throws IOException {
    Path samples =
        Files.writeString(
            folder.resolve("samples.csv"),
            "finish,substance,taken_on,result\nwall-latex,lead,2026-05-04,free\n"
                + "wall-lattex,lead,4 May,perhaps\n");
    Shell.Result bad = shell.run("import --samples " + samples);
    assertThat(bad.code()).isEqualTo(3);
    assertThat(bad.err())
        .contains("3 places in samples.csv must be corrected")
        .contains("line 3, finish \"wall-lattex\": No finish \"wall-lattex\"")
        .contains("line 3, result \"perhaps\":", "A day must read like 2026-05-04.");
    assertThat(shell.run("sample list").code()).isEqualTo(1);
  }

  @Test
  void a_merge_brings_results_with_their_history() throws IOException {
    Path elsewhere = Files.createDirectory(folder.resolve("slipway"));
    Shell other = new Shell(elsewhere).setUp();
    shell.mustDo("sample add asbestos free --finish wall-latex --reference here");
    other
        .mustDo("finish add sill --coat alkyd")
        .mustDo("sample add lead free --finish sill --reference there")
        .mustDo("sample amend 1 --result found --why \"the report came\"");
    Path there = elsewhere.resolve("boathouse.db");

    Shell.Result merged = shell.run("merge " + there);

    assertThat(unfolded(merged.out()))
        .contains("1 new sample result")
        .contains("The code S-0001 is taken by another sample here, so the merged one is S-0002.");
    assertThat(shell.run("sample list --csv").out())
        .contains("S-0001,asbestos,wall-latex,,free", "S-0002,lead,sill,,found");
    assertThat(shell.run("sample show 2").out()).contains("result from free to found");
    assertThat(unfolded(shell.run("merge " + there).out())).contains("nothing new");

    other.mustDo("sample void 1 --why \"wrong sill\"");
    assertThat(unfolded(shell.run("merge " + there).out())).contains("1 amended as there");
    assertThat(shell.run("sample list --all").out()).contains("void: wrong sill");
    assertThat(shell.run("check").code()).isZero();
  }

  @Test
  void a_result_goes_with_its_finish_into_another_record_of_it() {
    shell
        .mustDo("finish add \"wall latex\" --coat latex:pale:90um")
        .mustDo("sample add lead found --finish \"wall latex\" --reference L-17")
        .mustDo("finish join \"wall latex\" --into wall-latex --why \"one and the same\"");
    assertThat(shell.run("finish show wall-latex").out()).contains("lead: found", "L-17");
    assertThat(shell.run("sample list").out()).contains("finish wall-latex");
    assertThat(shell.run("check").code()).isZero();
  }

  @Test
  void what_a_coat_is_called_may_be_amended_and_travels() throws IOException {
    Path copy = folder.resolve("copy.db");
    shell.mustDo("backup " + copy);
    Shell other = new Shell(folder).set("CHARLINE_LOG", copy.toString());
    assertThat(
            unfolded(
                other.run("finish amend wall-latex --coat \"vinyl film:pale\" --why seen").out()))
        .contains("vinyl film (chlorinated film)", "NO BEAM: ");
    assertThat(unfolded(other.run("finish show wall-latex").out()))
        .contains("from nothing to vinyl film (seen)");

    shell.mustDo("merge " + copy);
    assertThat(shell.run("finish show wall-latex").out()).contains("vinyl film", "NO BEAM: ");
  }

  @Test
  void results_amended_on_both_benches_are_a_conflict() throws IOException {
    shell.mustDo("sample add lead free --finish wall-latex");
    Path copy = folder.resolve("copy.db");
    shell.mustDo("backup " + copy);
    Shell other = new Shell(folder).set("CHARLINE_LOG", copy.toString());
    shell.mustDo("sample amend 1 --reference A-1 --why here");
    other.mustDo("sample amend 1 --reference B-1 --why there");

    Shell.Result merged = shell.run("merge " + copy);

    assertThat(merged.code()).isEqualTo(1);
    assertThat(unfolded(merged.out()))
        .contains("Sample S-0001 was amended here and in copy.db: reference is A-1 here and B-1");
    shell.mustDo("merge " + copy + " --take there");
    assertThat(shell.run("sample list").out()).contains("B-1");
  }
}
