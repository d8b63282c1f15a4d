package charline.ask;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import charline.log.Logbook;
import charline.log.search.Vocabulary;
import charline.refusal.Refusal;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A question that leaves something out is never answered with just that. */
class ExclusionTest {
  @TempDir static Path folder;
  private static Logbook log;

  @BeforeAll
  static void open() {
    log = AskedLog.in(folder);
  }

  @AfterAll
  static void close() {
    log.close();
  }

  private static Question ask(String question) {
    return Question.parse(
        Arrays.asList(question.split(" ")),
        Vocabulary.of(log),
        Optional.of("Runa"),
        AskedLog.CLOCK);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          any board but sill end 1            | all except sill end 1
          clean on any board but sill end 1   | clean except sill end 1
          all woods but pine                  | all except pine
          other woods than pine               | all except pine
          woods other than pine               | all except pine
          all finishes but wall panel latex   | all except wall panel latex
          everything save oak                 | all except oak
          everything save for oak             | all except oak
          all patches save those on oak       | all except oak
          by anyone but Runa                  | by anyone except Runa
          by others than Runa                 | by anyone except Runa
          burned by somebody else than Runa   | burned by anyone except Runa
          anything rather than latex          | all except latex
          char instead of residue             | char and no residue
          char rather than residue            | char and no residue
          power outside 40 to 60 %            | power not between 40 and 60 %
          outside the range 40 to 60 %        | not between 40 and 60 %
          out of the range 40 to 60 %         | not between 40 and 60 %
          clean out of 3 passes               | clean of 3 passes
          outside september                   | not in september
          latex outside of september          | latex not in september
          failed to clear                     | did not clear
          pine that failed to come off        | pine that did not come off
          unable to clear                     | did not clear
          only tint                           | tint only
          just tint                           | tint only
          nothing but tint                    | tint only
          took 2 passes before it was clean   | took 2 passes to be clean
          charred only after 2 passes         | needed 2 passes to char
          """)
  void an_exclusion_is_read_in_other_words_too(String question, String plain) {
    assertThat(ask(question).condition()).isEqualTo(ask(plain).condition());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "all but the last 5",
        "everything except the last 5 on oak",
        "all but the hottest",
        "not the newest 3",
        "no one but Runa",
        "by nobody but Runa",
        "no board but sill end 1",
        "hardly charred",
        "barely clean on oak",
        "almost clean",
        "nearly cleared on pine",
        "partly cleared",
        "half cleared oak",
        "charred before it cleared",
        "tint before char",
        "char after it was clean",
        "within 5 % of 60 %",
        "power 60 % give or take 5",
        "power 60 % plus or minus 5 %",
        "darker than oak",
        "latex on pine except"
      })
  void what_cannot_be_left_out_is_refused(String question) {
    assertThatThrownBy(() -> ask(question))
        .isInstanceOfSatisfying(
            Refusal.class, r -> assertThat(r.kind()).isEqualTo(Refusal.Kind.USAGE));
  }
}
