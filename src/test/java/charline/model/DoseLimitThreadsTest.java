package charline.model;

import static org.assertj.core.api.Assertions.assertThat;

import charline.exposure.Emission;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class DoseLimitThreadsTest {
  @Test
  void dose_limits_are_the_same_whoever_else_computes_at_the_time() {
    Posterior posterior =
        Fitter.withDefaults().beforeTrials(Event.CHAR, Emission.PULSED, 1).posterior();
    double alone = posterior.doseLimit(0.05).lnDose(0.1, 0, 1);

    assertThat(
            IntStream.range(0, 16)
                .parallel()
                .mapToObj(k -> posterior.doseLimit(0.05).lnDose(0.1, 0, 1)))
        .containsOnly(alone);
  }
}
