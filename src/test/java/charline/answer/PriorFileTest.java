package charline.answer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import charline.exposure.Emission;
import charline.model.Event;
import charline.model.HalfNormalSpread;
import charline.model.LearnedSpread;
import charline.model.LogNormalSpread;
import charline.model.Prior;
import charline.model.PriorSet;
import charline.refusal.Refusal;
import charline.wording.PriorFileText;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PriorFileTest {
  @Test
  void what_is_printed_reads_back_as_the_usual_priors() {
    Priors read =
        PriorFile.read(PriorFileText.of(Priors.USUAL, "use it").lines().toList(), Path.of("x"));
    for (Event event : Event.values()) {
      for (Emission emission : Emission.values()) {
        close(read.set().of(event, emission), Prior.usual(event, emission));
      }
    }
  }

  /** Five digits are printed. */
  private static void close(Prior ours, Prior usual) {
    close(ours.tau(), usual.tau());
    close(ours.phi().normal(), usual.phi().normal());
    assertThat(ours.phi().least()).isEqualTo(usual.phi().least());
    close(ours.psi().normal(), usual.psi().normal());
    assertThat(ours.psi().least()).isEqualTo(usual.psi().least());
    close(ours.lnSigma(), usual.lnSigma());
    assertThat(ours.omega()).isEqualTo(usual.omega());
    assertThat(ours.atMicrometres()).isEqualTo(usual.atMicrometres());
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
    assertThat(read.set().of(Event.CHAR, Emission.PULSED).tau().mean())
        .isCloseTo(Math.log(12), within(1e-12));
    assertThat(read.set().of(Event.CHAR, Emission.PULSED).tau().sd())
        .isCloseTo(Math.log(2), within(1e-12));
    assertThat(read.set().of(Event.CHAR, Emission.PULSED).phi())
        .isEqualTo(Prior.usual(Event.CHAR, Emission.PULSED).phi());
    assertThat(read.set().of(Event.CLEARING, Emission.PULSED).omega())
        .isEqualTo(new HalfNormalSpread(0.3));
    assertThat(read.set().of(Event.CHAR, Emission.PULSED).omega())
        .isEqualTo(LearnedSpread.OF_EMPTY_LOG);
  }

  @Test
  void the_spread_of_boards_may_be_half_normal_or_a_factor_or_both() {
    PriorSet read =
        PriorFile.read(
                List.of(
                    "char omega = 0 +/- 0.2",
                    "pulsed clearing omega = 0.14 x/ 1.9",
                    "cw clearing omega = 0 +/- 0.3 x/ 1.4"),
                Path.of("x"))
            .set();
    assertThat(read.of(Event.CHAR, Emission.PULSED).omega()).isEqualTo(new HalfNormalSpread(0.2));
    assertThat(read.of(Event.CLEARING, Emission.PULSED).omega())
        .isEqualTo(new LogNormalSpread(0.14, Math.log(1.9)));
    assertThat(read.of(Event.CLEARING, Emission.CONTINUOUS).omega())
        .isEqualTo(LearnedSpread.beforeAnyTrial(0.3, Math.log(1.4)));
    assertThat(
            PriorFile.read(
                    PriorFileText.of(new Priors(read, Optional.empty()), "use it").lines().toList(),
                    Path.of("y"))
                .set())
        .usingRecursiveComparison()
        .withEqualsForType((a, b) -> Math.abs(a - b) < 1e-4, Double.class)
        .isEqualTo(read);
  }

  /** Files from before a weight could be negative said nothing of where it is cut off. */
  @Test
  void a_file_that_names_no_bound_no_thickness_and_no_light_pins_what_it_always_pinned() {
    PriorSet read =
        PriorFile.read(
                List.of("char phi = 0.4 +/- 0.4", "clearing dose = 10 x/ 4.48"), Path.of("x"))
            .set();
    for (Emission emission : Emission.values()) {
      assertThat(read.of(Event.CHAR, emission).phi()).isEqualTo(new Prior.Weight(0.4, 0.4, 0));
      assertThat(read.of(Event.CLEARING, emission).tau().mean())
          .isCloseTo(Math.log(10), within(1e-12));
      assertThat(read.of(Event.CLEARING, emission).atMicrometres()).isEmpty();
    }
  }

  @Test
  void a_line_for_one_light_goes_before_a_line_for_both() {
    PriorSet read =
        PriorFile.read(
                List.of(
                    "cw char dose = 20 x/ 3",
                    "char dose = 40 x/ 2",
                    "cw char phi = 0 +/- 1 above -0.5"),
                Path.of("x"))
            .set();
    assertThat(Math.exp(read.of(Event.CHAR, Emission.CONTINUOUS).tau().mean()))
        .isCloseTo(20, within(1e-9));
    assertThat(Math.exp(read.of(Event.CHAR, Emission.PULSED).tau().mean()))
        .isCloseTo(40, within(1e-9));
    assertThat(read.of(Event.CHAR, Emission.CONTINUOUS).phi())
        .isEqualTo(new Prior.Weight(0, 1, -0.5));
    assertThat(read.of(Event.CHAR, Emission.PULSED).phi())
        .isEqualTo(Prior.usual(Event.CHAR, Emission.PULSED).phi());
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
          char omega = 0.2 +/- 0.2 | omega must look like "omega = 0 +/- 0.2", not "0.2 +/- 0.2".
          char omega = 0.2 x/ 1 | the factor of omega must be above 1, not 1.
          char omega = 4 x/ 2 | the spread of omega must be between 0.001 and 3, not 4.
          char omega = 0 +/- 0.2 x/ 0.5 | the factor of omega must be above 1, not 0.5.
          char phi = lots +/- 1 | phi takes plain numbers, not "lots"; write it like "phi = 0.4 +/- 0.4".
          char phi = 0.2 +/- 1 above -2 | the least phi must be between -1 and 20, not -2.
          char psi = 0.2 +/- 1 above -0.5 | psi must look like "psi = 0.4 +/- 0.4", not "0.2 +/- 1 above -0.5".
          char dose = 30 x/ 4 at 70um | dose must look like "dose = 30 x/ 4.5", not "30 x/ 4 at 70um".
          clearing dose = 10 x/ 4 at 0.1um | the thickness of dose must be between 1 and 100000, not 0.1.
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
