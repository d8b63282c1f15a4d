package charline.answer;

import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import charline.log.Logbook;
import charline.plan.Site;
import charline.refusal.Refusal;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A face that forgets to ask whether the beam stays off gets no list all the same. */
class BarredAnswersTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-06-01T12:30:00Z"), ZoneOffset.UTC);

  @TempDir Path folder;

  private void ask(String family) {
    try (Logbook log = Logbook.open(folder.resolve("boathouse.db"), CLOCK)) {
      Answers.of(log, log.now())
          .next(TrialQuestion.about(family, "pine"), new PatchesWanted(1, Site.OFFCUT, List.of()));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"chlorinated film", "textured coat", "filler"})
  void a_coat_without_beam_has_no_list(String family) {
    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(() -> ask(family))
        .withMessage(
            "The beam stays off some of these coats; look at their finishes, then ask again.")
        .matches(refusal -> refusal.kind() == Refusal.Kind.NOTHING_FOUND);
  }

  @Test
  void another_coat_is_asked_for_its_rig() {
    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(() -> ask("latex"))
        .withMessage("A patch needs a rig, and the log has none.");
  }
}
