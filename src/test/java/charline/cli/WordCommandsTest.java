package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class WordCommandsTest {
  private static final String PATCH =
      "patch add --board %s --finish %s --power 60 --hand 22 --passes 1 --outcome clean";

  @TempDir Path folder;
  private Shell shell;

  @BeforeEach
  void open() {
    shell = Shell.withBench(folder);
  }

  @Test
  void woods_are_listed_with_other_names_class_numbers_and_sources() {
    Shell.Result oaks = shell.run("wood list oak");

    assertThat(oaks.code()).isZero();
    assertThat(oaks.out())
        .contains("wood", "class", "pores", "resin", "SG")
        .contains("northern red oak", "0.63", "ring", "hardwood", "red oak, quercus rubra")
        .contains("Sources", "USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a")
        .doesNotContain("pine");
    assertThat(oaks.out().lines()).allMatch(line -> line.length() <= 80);
    assertThat(shell.run("wood list oak --json").out())
        .contains(
            "\"wood\" : \"white oak\"",
            "\"class\" : \"hardwood\"",
            "\"pores\" : \"ring\"",
            "\"specific_gravity\" : 0.68",
            "\"also\" : [");
    assertThat(shell.run("wood list oak --csv").out())
        .startsWith("wood,also,class,generic,pores,resin,specific_gravity,source,like,by\n")
        .contains("white oak,quercus alba,hardwood,oak,ring,none,0.68,");
  }

  @Test
  void families_are_listed_with_usual_thickness_and_cautions() {
    assertThat(shell.run("family list").out())
        .contains("family", "usual film", "cautions")
        .contains("bed liner")
        .contains("isocyanates");
    assertThat(shell.run("family list --json").out())
        .contains(
            "\"family\" : \"alkyd\"",
            "\"usual_film\" : \"about 38 to 76 um (1.5 to 3 mil) per coat\"",
            "\"cautions\" : [",
            "\"clue\" : ",
            "\"source\" : ");
    assertThat(shell.run("family list --csv").out())
        .startsWith("family,also,usual_film,clue,behaviour,cautions,source,like,by\n");
  }

  @Test
  void a_wood_that_was_added_works_in_every_command() {
    assertThat(
            shell.run(
                "wood add \"Bog Oak\" --like \"european oak\" --also morta --also \"fen oak\""))
        .isEqualTo(
            new Shell.Result(
                0,
                "Wood bog oak is set up, like european oak: hardwood, ring-porous. It calls for\n"
                    + "  the same cautions.\n",
                ""));
    shell.mustDo("board add keel --wood \"fen oak\"");
    shell.mustDo(PATCH.formatted("keel", "wall-latex"));

    assertThat(shell.run("board show keel").out()).contains("bog oak");
    assertThat(shell.run("find latex over morta").out()).contains("1 patch found");
    assertThat(shell.run("find oak").out()).as("it is an oak").contains("1 patch found");
    assertThat(shell.run("window latex \"bog oak\" --json").out())
        .contains("\"wood\" : \"bog oak\"");
    assertThat(shell.run("window latex \"bog oak\"").out()).contains("hardwood dust");
    assertThat(shell.run("wood list --own --json").out())
        .contains("\"wood\" : \"bog oak\"", "\"like\" : \"european oak\"", "\"by\" : \"Ada\"");
  }

  @Test
  void a_family_that_was_added_carries_the_cautions_of_the_one_that_it_is_like() {
    assertThat(shell.run("family add \"deck varnish\" --like varnish").out())
        .isEqualTo(
            "Coating family deck varnish is set up, like varnish. It carries its cautions:\n"
                + "  lead, isocyanates.\n");
    shell.mustDo("finish add deck --coat \"deck varnish:mid:60um\"");
    shell.mustDo(PATCH.formatted("boathouse-1", "deck"));

    assertThat(shell.run("find \"deck varnish\"").out()).contains("1 patch found");
    assertThat(shell.run("window \"deck varnish\" pine").out()).contains("isocyanates", "lead");
  }

  /** What must be sampled before the beam is on stays so under a name of one's own. */
  @Test
  void a_family_that_was_added_has_to_be_sampled_as_the_one_that_it_is_like() {
    shell.mustDo("family add stucco --like \"textured coat\"");
    shell.mustDo("family add \"shop stucco\" --like stucco");
    shell.mustDo("finish add hall --coat \"shop stucco\"");

    Shell.Result next = shell.run("next \"shop stucco\" pine");

    assertThat(next.code()).isNotZero();
    assertThat(next.out() + next.err()).contains("asbestos").doesNotContain("P-0001");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          family add "deck varnish"             | A family that you add needs one that it is like, as it takes over its cautions; add --like, such as --like varnish.
          family add deck --like vanish         | No coating family "vanish" in this log; nearest: varnish.
          wood add pine --like oak              | The word "pine" means the wood pine already; choose another.
          wood add "bog:oak" --like oak         | The name of a wood may have letters, digits, blanks, hyphens and apostrophes, not ":"; choose another.
          wood add any --like oak               | The word "any" has a meaning of its own in questions; choose another.
          wood add latex --like oak             | The word "latex" means the family latex already; choose another.
          wood add parquet --like oak           | Parquet is a floor, not a wood; name the wood that it is made of, such as oak or beech.
          wood add morta --like oak --also Morta | The word "morta" is given twice; leave one out.
          """)
  void what_cannot_be_a_word_is_refused(String line, String sentence) {
    assertThat(shell.run(line)).isEqualTo(new Shell.Result(2, "", sentence + "\n"));
    assertThat(shell.run("wood list --own").code()).isEqualTo(1);
    assertThat(shell.run("family list --own").code()).isEqualTo(1);
  }

  @Test
  void what_a_word_is_like_is_put_right_with_history() {
    shell.mustDo("wood add morta --like larch");

    assertThat(shell.run("wood amend morta --like oak --why \"looked at the rays\" --by Bo").out())
        .isEqualTo("Wood morta is like oak now: hardwood, ring-porous.\n");
    assertThat(shell.run("wood show morta").out())
        .contains("hardwood", "like oak")
        .endsWith(
            """
            Changes, oldest first
              2026-06-01 14:30 Bo: like from larch to oak (looked at the rays)
            """);
    assertThat(shell.run("wood amend oak --like pine --why x").err())
        .isEqualTo("Only a wood that somebody added can be amended; oak comes with the program.\n");
    shell.mustDo("wood add fen --like morta");
    assertThat(shell.run("wood amend morta --like fen --why x").err())
        .isEqualTo("A wood cannot be like itself; fen is like morta.\n");
  }

  /** Two benches add words of their own and join their logs; then no word is lost or doubled. */
  @Test
  void merging_carries_the_words_that_were_added() {
    Shell other = new Shell(folder.resolve("other"));
    other.mustDo("rig add Egret --kind pulsed --rated 100W --spot 0.6mm --rep 40kHz --width 60mm");
    other.mustDo("wood add \"bog oak\" --like oak --also morta");
    other.mustDo("family add \"deck varnish\" --like varnish");
    other.mustDo("board add keel --wood morta");
    other.mustDo("finish add deck --coat \"deck varnish\"");
    other.mustDo(PATCH.formatted("keel", "deck"));

    assertThat(shell.run("merge " + folder.resolve("other/boathouse.db")).out())
        .contains("1 new wood, 1 new coating family");
    assertThat(shell.run("find \"deck varnish\" over morta").out()).contains("1 patch found");
    assertThat(shell.run("merge " + folder.resolve("other/boathouse.db")).out())
        .contains("nothing new");
    assertThat(shell.run("check").code()).isZero();
  }

  @Test
  void two_benches_that_added_the_same_word_differently_are_told() {
    Shell other = new Shell(folder.resolve("other"));
    other.mustDo("wood add \"bog oak\" --like larch --also morta");
    shell.mustDo("wood add \"bog oak\" --like oak");
    shell.mustDo("wood add fen --like oak --also morta");

    assertThat(shell.run("merge " + folder.resolve("other/boathouse.db")).out())
        .contains(
            "The wood bog oak was added here too: here it is like oak, in boathouse.db like\n")
        .contains("larch; it stays as it is here.");
    assertThat(shell.run("wood list --own --csv").out()).contains("bog oak,,hardwood,oak");
  }

  @Test
  void a_trial_sheet_carries_the_words_that_were_added() throws Exception {
    shell.mustDo("wood add \"bog oak\" --like oak");
    shell.mustDo("family add \"deck varnish\" --like varnish");
    shell.mustDo("board add keel --wood \"bog oak\"");
    shell.mustDo("finish add deck --coat \"deck varnish\" --coat \"deck varnish:dark\"");
    shell.mustDo(PATCH.formatted("keel", "deck"));
    Path sheet = folder.resolve("trials.csv");
    shell.mustDo("export --to " + sheet + " --rigs " + folder.resolve("rigs.csv"));

    Shell other = new Shell(folder.resolve("other"));
    String line = "import " + sheet + " --rigs " + folder.resolve("rigs.csv");
    assertThat(other.run(line + " --check").code()).isZero();
    other.mustDo(line);
    assertThat(other.run("wood list --own --json").out()).contains("\"like\" : \"oak\"");
    assertThat(other.run("family list --own --json").out()).contains("\"like\" : \"varnish\"");
    assertThat(other.run("find \"deck varnish\" over \"bog oak\"").out()).contains("1 patch found");
    Path again = folder.resolve("again.csv");
    other.mustDo("export --to " + again);
    assertThat(again).hasSameTextualContentAs(sheet);
  }

  @ParameterizedTest
  @ValueSource(strings = {"wood list --own", "family list --own"})
  void a_log_without_words_of_its_own_says_how_to_add_one(String line) {
    Shell.Result none = shell.run(line);
    assertThat(none.code()).isEqualTo(1);
    assertThat(none.out()).contains("add --help");
  }
}
