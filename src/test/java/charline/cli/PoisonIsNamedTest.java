package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Poison and fire are named before the beam is on, and some coats get no beam at all. */
class PoisonIsNamedTest {
  private static final String RIGS =
      " --rigs sample-trials/rigs.csv --power-checks sample-trials/power-checks.csv";

  @TempDir Path folder;
  private Shell shell;

  @BeforeEach
  void open() {
    shell = new Shell(folder).at("2026-11-01T09:00:00Z");
  }

  /** The wall panel's trials as if they had been burned on another coat. */
  private void burned(String family, String finish) throws IOException {
    String sheet =
        Files.readString(Path.of("sample-trials/latex-on-pine.csv"))
            .replace("wall panel latex,latex,", finish + "," + family + ",")
            .replaceAll("latex:pale:50um \\+ latex:pale:45um", "");
    Path file = Files.writeString(folder.resolve("trials.csv"), sheet);
    shell.mustDo("import " + file + RIGS);
  }

  private static String unfolded(String text) {
    return text.replaceAll("\\s+", " ");
  }

  private String said(String line) {
    Shell.Result result = shell.run(line);
    return unfolded(result.out() + result.err());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\"pvc film\"",
        "\"PVC\"",
        "\"vinyl film\"",
        "\"chlorinated rubber\"",
        "\"Chlorinated-Rubber paint\""
      })
  void a_chlorinated_film_is_cautioned_as_it_is_written(String coat) {
    Shell.Result added = shell.run("finish add hall-door --coat " + coat);

    assertThat(added.code()).isZero();
    assertThat(unfolded(added.out()))
        .contains("BEFORE THE BEAM: ", "hydrogen chloride", "NO BEAM: ", "is never lasered");
  }

  @Test
  void a_name_that_says_pvc_is_enough_and_one_that_denies_it_is_none() {
    assertThat(said("finish add \"door pvc face\" --coat foil")).contains("is never lasered");
    assertThat(said("finish add \"melamine, PVC-free\" --coat melamine"))
        .doesNotContain("NO BEAM")
        .contains("formaldehyde when heated");
    assertThat(said("finish add \"wall vinyl paint\" --coat \"vinyl paint\""))
        .doesNotContain("NO BEAM");
    assertThat(said("finish add shelf --coat laminate"))
        .contains("NO BEAM: Finish shelf may hold chlorinated film");
  }

  @Test
  void what_a_coat_was_called_is_kept_and_brings_its_own_cautions() {
    assertThat(said("finish add stair --coat \"conversion varnish:mid\""))
        .contains("conversion varnish (varnish)", "isocyanates when heated; formaldehyde when");
    assertThat(said("finish add keel --coat \"two-pack\" --coat alkyd"))
        .contains("isocyanates when heated");
    assertThat(said("finish add \"hull antifouling\" --coat alkyd"))
        .contains("organotin: not tested", "Caution, antifouling: ");
    assertThat(said("finish add rail --coat nitro")).contains("nitrous smoke");
    assertThat(said("finish show stair --json")).contains("\"called\" : \"conversion varnish\"");
  }

  @Test
  void a_finish_shows_its_cautions_with_their_sources_in_json() throws IOException {
    shell.mustDo("finish add sill --coat alkyd");
    Map<String, Object> json = shell.json("finish show sill --json");

    assertThat(json).containsEntry("before_the_beam", "lead: not tested");
    assertThat(part(json, "cautions", 0)).containsEntry("topic", "Lead");
    assertThat((String) part(json, "cautions", 0).get("text"))
        .contains("In the USA the renovation rule covers housing from before 1978")
        .contains("6 ft2", "30 days", "certified firm");
    assertThat((String) part(json, "cautions", 0).get("source")).contains("745.83");
    assertThat(part(json, "tests", 0)).containsEntry("result", "not tested");
    assertThat(said("finish show sill")).contains("BEFORE THE BEAM: lead: not tested.");
  }

  @SuppressWarnings("unchecked")
  private static Map<String, Object> part(Map<String, Object> json, String key, int at) {
    return ((List<Map<String, Object>>) json.get(key)).get(at);
  }

  @ParameterizedTest
  @ValueSource(strings = {"next latex pine", "window latex pine", "quote latex pine --area 4.5m2"})
  void every_answer_says_first_that_lead_was_not_tested_and_then_what_the_test_said(String line)
      throws IOException {
    burned("latex", "wall panel latex");
    assertThat(shell.run(line).out().lines().limit(3))
        .anyMatch(words -> words.startsWith("BEFORE THE BEAM: lead: not tested"));

    shell.mustDo(
        "sample add lead found --finish \"wall panel latex\" --on 2026-10-30 --reference L-17"
            + " --value \"1.8 mg/cm2\"");
    assertThat(said(line + " --json"))
        .contains("\"before_the_beam\" : \"lead: found (2026-10-30, L-17, 1.8 mg/cm2)\"")
        .contains("\"topic\" : \"Class 4 laser\"", "\"result\" : \"found\"");
  }

  @Test
  void bench_list_and_sheet_have_it_at_the_top() throws IOException {
    burned("latex", "wall panel latex");
    Path list = folder.resolve("list.html");
    Path sheet = folder.resolve("sheet.html");
    shell.mustDo("next latex pine --to " + list).mustDo("sheet latex pine --to " + sheet);

    assertThat(Files.readString(list))
        .containsSubsequence(
            "<h1>latex on pine", "Before the beam: lead: not tested.", "<table>", "Older coats.");
    assertThat(Files.readString(list))
        .contains("smoke detectors isolated", "mineral spirits only at the last reading");
    assertThat(Files.readString(sheet))
        .containsSubsequence(
            "<header>", "Before the beam: lead: not tested.", "class=\"start\"", "Older coats.");
    assertThat(Files.readString(sheet)).contains("Mineral spirits only at the last reading");
  }

  @Test
  void wood_brings_its_own_poison() throws IOException {
    assertThat(said("board add \"jetty pile\" --wood pine --condition \"CCA, greenish\""))
        .contains("Caution, preserved wood: Preserved wood (CCA, creosote, pentachlorophenol)");
    assertThat(said("board add shelf --wood pine --form mdf")).contains("Caution, formaldehyde: ");
    burned("latex", "wall panel latex");
    shell.mustDo(
        "board amend \"wall panel offcut 1\" --condition \"old railway sleeper, creosoted\" --why"
            + " seen");
    assertThat(said("window latex pine"))
        .contains("lead: not tested; preserved wood: arsenic, chromium, creosote");
    shell.mustDo("board amend \"wall panel offcut 2\" --form mdf --why \"looked again\"");
    assertThat(said("next latex pine")).contains("formaldehyde when heated");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "next \"textured coat\" pine",
        "window \"textured coat\" pine",
        "quote \"textured coat\" pine --area 4.5m2",
        "sheet \"textured coat\" pine --replace --to SHEET"
      })
  void a_textured_coat_gets_nothing_until_a_sample_is_free(String typed) throws IOException {
    String line = typed.replace("SHEET", folder.resolve("sheet.html").toString());
    burned("textured coat", "hall texture");
    Shell.Result refused = shell.run(line);
    assertThat(refused.code()).isEqualTo(1);
    assertThat(unfolded(refused.out()))
        .startsWith("textured coat on pine: no beam. BEFORE THE BEAM: lead: not tested;")
        .contains("asbestos: not tested")
        .contains("Finish hall texture may hold asbestos, and no sample says that it is free")
        .contains("licensed or accredited asbestos surveyor", "`charline sample add`")
        .contains("Local codes, the insurer and licensed trades come first.")
        .doesNotContain("START", "to burn next");
    assertThat(folder.resolve("sheet.html")).doesNotExist();

    shell.mustDo("sample add asbestos inconclusive --finish \"hall texture\" --on 2026-10-29");
    assertThat(said(line)).contains("(the sample of 2026-10-29 was inconclusive)");
    assertThat(shell.run(line).code()).isEqualTo(1);

    shell.mustDo("sample add asbestos free --finish \"hall texture\" --on 2026-10-30");
    Shell.Result free = shell.run(line);
    assertThat(free.code()).as(free.err()).isZero();
    if (!typed.startsWith("sheet")) {
      assertThat(unfolded(free.out())).contains("asbestos: not found (2026-10-30, S-0002)");
    }

    shell.mustDo("sample add asbestos found --finish \"hall texture\" --reference B-18");
    Shell.Result found = shell.run(line);
    assertThat(found.code()).isEqualTo(1);
    assertThat(unfolded(found.out()))
        .contains("In finish hall texture, asbestos was found (2026-11-01, B-18).")
        .contains("Do not beam, sand or scrape it: removal is work for people licensed");
  }

  @Test
  void the_first_list_of_a_coat_is_for_the_finishes_that_were_sampled() {
    shell
        .mustDo("rig add Heron --kind pulsed --rated 200W --spot 0.6mm --rep 40kHz --width 60mm")
        .mustDo("finish add hall --coat \"textured coat\"")
        .mustDo("finish add attic --coat \"textured coat\"")
        .mustDo("sample add asbestos free --finish hall --reference B-1");

    Shell.Result next = shell.run("next \"textured coat\" pine");

    assertThat(next.code()).isZero();
    assertThat(unfolded(next.out()))
        .contains("asbestos: not found (2026-11-01, B-1)")
        .contains("not for finish attic: not known to be free of asbestos");
    assertThat(shell.run("next filler pine").code()).isEqualTo(1);
    assertThat(said("next filler pine")).contains("This coat may hold asbestos");
  }

  @ParameterizedTest
  @ValueSource(strings = {"pvc film", "foil"})
  void pvc_is_never_answered_whatever_a_sample_says(String family) throws IOException {
    burned(family, "hall pvc film");
    shell.mustDo("sample add \"chlorinated film\" free --finish \"hall pvc film\"");
    String about = "\"" + family + "\" pine";
    for (String line :
        List.of("next " + about, "window " + about, "quote " + about + " --area 4.5m2")) {
      Shell.Result refused = shell.run(line);
      assertThat(refused.code()).as(line).isEqualTo(1);
      assertThat(unfolded(refused.out()))
          .contains("(finish hall pvc film) is never lasered, whatever a sample says.")
          .contains("Use another method.");
    }
    assertThat(said("sheet " + about + " --to " + folder.resolve("s.html")))
        .contains("there is no sheet for a coat that the beam stays off");
    assertThat(folder.resolve("s.html")).doesNotExist();
  }

  @Test
  void what_was_burned_all_the_same_is_recorded_with_its_caution() throws IOException {
    burned("pvc film", "hall pvc film");
    Shell.Result recorded =
        shell.run("patch add --like LP-24 --hand 30mm/s --outcome residue --by Runa");
    assertThat(recorded.code()).isZero();
    assertThat(unfolded(recorded.out()))
        .contains("recorded", "Caution, no beam: ", "Caution, chlorinated film: Never laser PVC");
  }

  @Test
  void all_windows_name_the_strata_that_get_no_beam() throws IOException {
    burned("textured coat", "hall texture");
    shell.mustDo("import sample-trials/shellac-on-oak.csv");

    Shell.Result all = shell.run("window --all");

    assertThat(unfolded(all.out()))
        .contains("no beam - - - - textured coat on pine, pulsed 1064 nm")
        .contains("textured coat on pine, pulsed 1064 nm: no beam. Finish hall texture may hold");
    assertThat(all.out()).contains("shellac on oak");
    Object[] json = JSON.std.arrayFrom(shell.run("window --all --json").out());
    assertThat(json)
        .anySatisfy(each -> assertThat((Map<?, ?>) each).extracting("verdict").isEqualTo("no beam"))
        .hasSize(2);
    assertThat(said("window \"textured coat\" pine --json"))
        .contains("\"verdict\" : \"no beam\"", "\"reason\" : \"Finish hall texture may hold");
  }
}
