package charline.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Doses that a study of beech under a continuous 10.6 µm laser prints for 45 W metered over a beam
 * 10 mm wide, the wood moved under it: Acta Facultatis Xylologiae Zvolen 61(1), 2019, table 1,
 * after Vidholdova, Reinprecht and Igaz 2017, BioResources 12(2):4177-4186. That table has 25.5
 * J/cm² at 18 mm/s; the study of 2017 gives 25, as 45 W over 10 mm by 18 mm/s does, so 25.5 is a
 * misprint.
 */
class PublishedDosesReferenceTest {
  @ParameterizedTest
  @CsvSource({
    "58, 7.8, 0.05",
    "42, 10.7, 0.05",
    "36, 12.5, 0.05",
    "30, 15.0, 0.05",
    "24, 18.8, 0.05",
    "18, 25, 0.5",
    "12, 37.5, 0.05",
    "6, 75.0, 0.05"
  })
  void dose_by_hand_is_as_printed(double speed, double printed, double halfDigit) {
    Settings settings =
        new Settings(
            PowerSetting.watts(45),
            new HandPass(10, speed),
            new Spot(10, SpotDefinition.D4_SIGMA),
            Optional.empty());
    assertThat(Exposure.of(Emission.CONTINUOUS, 45, settings).doseJoulesPerCm2())
        .isCloseTo(printed, within(halfDigit * (1 + 1e-9)));
  }
}
