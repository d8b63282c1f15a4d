package charline.answer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import charline.model.Event;
import charline.model.Prior;
import charline.refusal.Refusal;
import charline.wording.PriorFileText;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PriorFileTest {
  @Test
  void what_is_printed_reads_back_as_the_usual_priors() {
    Priors read =
        PriorFile.read(PriorFileText.of(Priors.USUAL, "use it").lines().toList(), Path.of("x"));
    close(read.charring(), Prior.usual(Event.CHAR));
    close(read.clearing(), Prior.usual(Event.CLEARING));
  }

  /** Five digits are printed. */
  private static void close(Prior ours, Prior usual) {
    close(ours.tau(), usual.tau());
    close(ours.phi(), usual.phi());
    close(ours.psi(), usual.psi());
    close(ours.lnSigma(), usual.lnSigma());
    assertThat(ours.omegaScale()).isCloseTo(usual.omegaScale(), within(1e-5));
  }

  private static void close(Prior.Normal ours, Prior.Normal usual) {
    assertThat(ours.mean()).isCloseTo(usual.mean(), within(1e-4));
    assertThat(ours.sd()).isCloseTo(usual.sd(), within(1e-4));
  }

  @Test
  void a_line_replaces_its_parameter_and_leaves_the_others() {
    Priors read =
        PriorFile.read(
            List.of(
                "# boathouse", "", "Char dose = 12 ×/ 2  # thin wood", "clearing omega=0 +/- 0.3"),
            Path.of("x"));
    assertThat(read.charring().tau().mean()).isCloseTo(Math.log(12), within(1e-12));
    assertThat(read.charring().tau().sd()).isCloseTo(Math.log(2), within(1e-12));
    assertThat(read.charring().phi()).isEqualTo(Prior.usual(Event.CHAR).phi());
    assertThat(read.clearing().omegaScale()).isEqualTo(0.3);
    assertThat(read.charring().omegaScale()).isEqualTo(0.2);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          char dose 30 | a line must look like "char dose = 30 x/ 4.5", not "char dose 30".
          soot dose = 30 x/ 4 | the first word must be char or clearing, not "soot".
          char dosis = 30 x/ 4 | the second word must be one of dose, phi, psi, sigma, omega, not "dosis".
          char dose = 30 +/- 4 | dose must look like "dose = 30 x/ 4.5", not "30 +/- 4".
          char dose = -30 x/ 4 | the dose must be above 0, not -30.
          char dose = 30 x/ 1 | the factor of dose must be above 1, not 1.
          char phi = 0.4 +/- 0 | the spread of phi must be above 0, not 0.
          char phi = 30 +/- 1 | the phi must be between -20 and 20, not 30.
          char sigma = 0.001 x/ 2 | the sigma must be between 0.01 and 100, not 0.001.
          char dose = 30 x/ 1.001 | the factor of dose must be between 1.01 and 1000, not 1.001.
          char omega = 0 +/- 21 | the spread of omega must be between 0.001 and 3, not 21.
          char phi = lots +/- 1 | phi takes plain numbers, not "lots"; write it like "phi = 0.4 +/- 0.4".
          char omega = 0.2 | omega must look like "omega = 0 +/- 0.2", not "0.2".
          """)
  void a_bad_line_is_named_with_what_it_must_be(String line, String complaint) {
    assertThatThrownBy(() -> PriorFile.read(List.of("# first", line), Path.of("boathouse.prior")))
        .isInstanceOf(Refusal.class)
        .hasMessage("boathouse.prior, line 2: " + complaint);
  }

  @Test
  void a_parameter_given_twice_is_refused() {
    assertThatThrownBy(
            () -> PriorFile.read(List.of("char phi = 1 +/- 1", "char phi = 2 +/- 1"), Path.of("x")))
        .hasMessage("x, line 2: char phi is given twice; keep one.");
  }
}
