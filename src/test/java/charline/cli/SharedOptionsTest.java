package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import charline.cli.command.Asker;
import charline.cli.command.CommandContext;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever one question about trials can say, all can. */
class SharedOptionsTest {
  @TempDir static Path folder;
  private static Shell shell;
  private static Path priors;

  @BeforeAll
  static void import_the_boathouse() throws IOException {
    shell = new Shell(folder).at("2026-11-01T09:00:00Z");
    shell.mustDo(
        "import sample-trials/latex-on-pine.csv sample-trials/clear-coat-on-larch.csv"
            + " --rigs sample-trials/rigs.csv --power-checks sample-trials/power-checks.csv");
    priors = Files.writeString(folder.resolve("boathouse.prior"), "char dose = 40 x/ 1.5\n");
  }

  @ParameterizedTest
  @ValueSource(strings = {"window", "risk", "next", "quote", "onset", "removal", "sheet"})
  void every_question_takes_the_same_options(String command) {
    PrintStream nowhere = new PrintStream(new ByteArrayOutputStream());
    CommandContext desk =
        new CommandContext(Asker.NOBODY, nowhere, nowhere, Map.of(), Clock.systemUTC());

    assertThat(
            Commands.everything(desk)
                .getSubcommands()
                .get(command)
                .getCommandSpec()
                .optionsMap()
                .keySet())
        .contains(
            "--rig",
            "--at",
            "--tone",
            "--thickness",
            "--accept-tint",
            "--risk",
            "--confidence",
            "--clear",
            "--borrow",
            "--prior",
            "--with-wood",
            "--piece");
  }

  @ParameterizedTest
  @CsvSource({
    "next, --count 1",
    "quote, --area 2",
    "onset, ''",
    "removal, ''",
    "risk, --power 60 --hand 30"
  })
  void an_answer_from_other_priors_says_so(String command, String more) {
    String line = "%s latex pine %s".formatted(command, more);

    assertThat(shell.run(line + " --prior " + priors).out())
        .contains("Priors: from boathouse.prior, in place of the usual priors.");
    assertThat(shell.run(line).out()).doesNotContain("Priors: from");
    assertThat(shell.json(line + " --json --prior " + priors).get("prior"))
        .isEqualTo(Map.of("file", priors.toString()));
  }

  @Test
  void where_the_spread_of_boards_comes_from_is_said() {
    assertThat(shell.run("onset latex pine").out().replaceAll("\\s+", " "))
        .contains("Boards: learned from 1 other stratum of this log.");
    String pinned = "onset latex pine --prior " + priors;
    assertThat(shell.run(pinned).out().replaceAll("\\s+", " "))
        .contains("Boards: as the file of priors says; nothing is learned from the log.");
    assertThat(omega("onset latex pine --json"))
        .containsEntry("source", "log")
        .containsEntry("strata", 1);
    assertThat(omega(pinned + " --json")).containsEntry("source", "file");
  }

  @Test
  void the_first_stratum_of_a_log_says_that_boards_begin_cautiously(@TempDir Path own) {
    Shell fresh = new Shell(own).at("2026-11-01T09:00:00Z");
    fresh.mustDo(
        "import sample-trials/latex-on-pine.csv --rigs sample-trials/rigs.csv"
            + " --power-checks sample-trials/power-checks.csv");
    assertThat(fresh.run("removal latex pine").out().replaceAll("\\s+", " "))
        .contains(
            "Boards: no other stratum of this log has patches on two boards yet, so a cautious"
                + " start.");
    Map<?, ?> model = (Map<?, ?>) fresh.run("removal latex pine --json").json().get("model");
    assertThat(((Map<?, ?>) model.get("omega_prior")).get("source")).isEqualTo("cautious start");
  }

  @SuppressWarnings("unchecked")
  private static Map<String, Object> omega(String line) {
    Map<String, Object> model = (Map<String, Object>) shell.json(line).get("model");
    return (Map<String, Object>) model.get("omega_prior");
  }

  @Test
  void other_priors_move_the_burn_onset() {
    assertThat(even("onset latex pine --json --prior " + priors))
        .isNotEqualTo(even("onset latex pine --json"));
  }

  private static Object even(String line) {
    Map<?, ?> model = (Map<?, ?>) shell.json(line).get("model");
    return ((Map<?, ?>) model.get("dose_even_j_cm2")).get("median");
  }

  @Test
  void a_sheet_from_other_priors_says_so_among_its_cautions() throws IOException {
    Path sheet = folder.resolve("latex.html");
    shell.mustDo("sheet latex pine --replace --to %s --prior %s".formatted(sheet, priors));
    assertThat(Files.readString(sheet))
        .contains("Your own priors")
        .contains("Priors: from boathouse.prior, in place of the usual priors.");
    shell.mustDo("sheet latex pine --replace --to " + sheet);
    assertThat(Files.readString(sheet)).doesNotContain("Your own priors");
  }

  @Test
  void next_patches_may_borrow() {
    assertThat(shell.run("next clear coat larch --count 1 --borrow").out().replaceAll("\\s+", " "))
        .contains("Borrowed for char: latex on pine (24 patches).");
  }

  @Test
  void the_burn_onset_is_shown_for_the_limits_that_are_asked_for() {
    String usual = shell.run("onset latex pine").out().replaceAll("\\s+", " ");
    String strict =
        shell.run("onset latex pine --risk 1% --confidence 95%").out().replaceAll("\\s+", " ");

    assertThat(usual).contains("char risk on a new board is at most 5 % with 90 % confidence");
    assertThat(strict).contains("char risk on a new board is at most 1 % with 95 % confidence");
    assertThat(dose(strict)).isLessThan(dose(usual));
  }

  @Test
  void a_limit_may_be_asked_for_itself() {
    assertThat(shell.run("onset latex pine --confidence 99.9% --clear 99.9%").out())
        .contains("99.9 %");
  }

  private static double dose(String onset) {
    return Double.parseDouble(onset.replaceFirst(".*Up to (\\S+) J/cm2.*", "$1"));
  }

  @Test
  void a_prior_file_that_is_not_there_or_not_text_is_refused() throws IOException {
    Path none = folder.resolve("none.prior");
    assertThat(shell.run("onset latex pine --prior " + none).err().strip())
        .isEqualTo(
            "--prior: " + none + " cannot be read; `charline prior` prints a file to start from.");
    Path binary = Files.write(folder.resolve("b.prior"), new byte[] {(byte) 0xff, 0, (byte) 0xfe});
    assertThat(shell.run("next latex pine --prior " + binary).err().strip())
        .isEqualTo("--prior: " + binary + " must be plain text in UTF-8.");
    Path wrong = Files.writeString(folder.resolve("wrong.prior"), "soot dose = 3 x/ 2\n");
    assertThat(shell.run("quote latex pine --area 2 --prior " + wrong).err().strip())
        .isEqualTo(
            "--prior: wrong.prior, line 1: the first word must be char or clearing, not \"soot\".");
  }

  @Test
  void a_refusal_ends_with_the_option_that_mends_it(@TempDir Path own) {
    Shell fresh = new Shell(own);
    fresh.mustDo("board add plank --wood pine");
    assertThat(fresh.run("next latex pine").err().strip())
        .isEqualTo(
            "A patch needs a rig, and the log has none. Set one up with `charline rig add`.");
    fresh.mustDo("rig add Heron --kind pulsed --rated 200W --rep 40kHz --width 60mm");
    assertThat(fresh.run("next latex pine").err().strip())
        .isEqualTo(
            "Without patches, charline uses the rig's usual spot, but rig Heron has none."
                + " Add --at spot=0.6mm.");
    assertThat(fresh.run("next latex pine --at spot=0.6mm").code()).isZero();
    fresh.mustDo("rig add Tern --kind cw --rated 500W --spot 0.6mm");
    assertThat(fresh.run("next latex pine").err().strip())
        .isEqualTo("The rig is missing, and the log has 2 of them. Name one with --rig.");
    assertThat(fresh.run("next latex pine --rig Tern").err().strip())
        .isEqualTo(
            "Without patches, charline uses the rig's usual scan width, but rig Tern has none."
                + " Add --at width=60mm, or give the rig a scan width.");
  }
}
