package charline.trial;

import static org.assertj.core.api.Assertions.assertThat;

import charline.exposure.HandPass;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.SpotDefinition;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A depth, a thickness and an outcome that cannot all be true. */
class DepthClashTest {
  private static final Settings SETTINGS =
      new Settings(
          PowerSetting.percent(50),
          new HandPass(60, 20),
          new Spot(0.6, SpotDefinition.ONE_OVER_E_SQUARED),
          Optional.of(new Pulses(40, OptionalDouble.empty())));

  /** Readings written as "passes outcome depth", the depth left out where none was measured. */
  private static Optional<DepthClash> clash(double coat, String... readings) {
    Finish finish =
        new Finish(
            new UUID(1, 1),
            "shutter",
            "latex",
            coat == 0
                ? List.of()
                : List.of(new Coat("latex", Optional.empty(), OptionalDouble.of(coat))));
    return DepthClash.of(
        Pieces.patch(
            1,
            Pieces.rig(1, "Heron", 200),
            Pieces.board(1, "pine"),
            finish,
            SETTINGS,
            Arrays.stream(readings).map(DepthClashTest::reading).toArray(Reading[]::new)));
  }

  private static Reading reading(String text) {
    String[] words = text.strip().split(" ");
    Reading plain = Pieces.reading(Integer.parseInt(words[0]), words[1]);
    return new Reading(
        plain.id(),
        plain.passes(),
        plain.outcome(),
        plain.soot(),
        words.length > 2 ? OptionalDouble.of(Double.parseDouble(words[2])) : OptionalDouble.empty(),
        plain.at(),
        plain.by(),
        plain.note());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          95 | 2 residue 22; 4 clean 44 | GONE_TOO_SOON | 4 | 44  | true
          95 | 4 residue 44; 5 clean    | GONE_TOO_SOON | 5 | 55  | false
          95 | 1 clean 66               | GONE_TOO_SOON | 1 | 66  | true
          95 | 1 tint 30                | GONE_TOO_SOON | 1 | 30  | true
          95 | 1 char 30                | GONE_TOO_SOON | 1 | 30  | true
          95 | 2 residue 124            | LEFT_TOO_LONG | 2 | 124 | true
          """)
  void the_first_clash_of_a_patch_is_found(
      double coat,
      String readings,
      DepthClash.Kind kind,
      int passes,
      double depth,
      boolean measured) {
    DepthClash found = clash(coat, readings.split(";")).orElseThrow();
    assertThat(found.kind()).isEqualTo(kind);
    assertThat(found.passes()).isEqualTo(passes);
    assertThat(found.depthMicrometres()).isEqualTo(depth);
    assertThat(found.measured()).isEqualTo(measured);
    assertThat(found.coatMicrometres()).isEqualTo(95);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          95 | 2 residue 44; 4 clean
          95 | 1 clean 67
          95 | 1 clean 160
          95 | 2 residue 123
          95 | 2 residue; 4 clean
          0  | 1 clean 5
          """)
  void a_film_may_vary_by_three_tenths_and_what_was_not_measured_clashes_with_nothing(
      double coat, String readings) {
    assertThat(clash(coat, readings.split(";"))).isEmpty();
  }

  @Test
  void the_doubt_says_what_differs() {
    assertThat(Plausibility.about(clash(95, "4 clean 44").orElseThrow()).sentence())
        .isEqualTo(
            "After 4 passes the finish is gone with 44 um removed, but the coat is 95 um thick;"
                + " check the depth, the outcome and the coat's thickness, or say that you are"
                + " sure.");
    assertThat(Plausibility.about(clash(95, "4 residue 44", "5 clean").orElseThrow()).finding())
        .isEqualTo(
            "After 5 passes the finish is gone with no more than 55 um removed at the pace measured"
                + " before, but the coat is 95 um thick");
  }
}
