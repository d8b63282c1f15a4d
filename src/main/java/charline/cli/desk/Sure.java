package charline.cli.desk;

import charline.refusal.Refusal;
import charline.trial.Plausibility.Doubt;
import java.util.List;
import picocli.CommandLine.Option;

/** The person's word that an unlikely value is meant as it stands. */
public final class Sure {
  @Option(
      names = "--sure",
      description = "Take it as it stands, even if a value looks like a slip.")
  private boolean sure;

  /** Refuses with a sentence that offers {@code --sure}, unless the person is sure. */
  public void doubt(String sentence) {
    if (!sure) {
      throw Refusal.usage(sentence);
    }
  }

  /** Refuses what is doubtful, unless the person is sure. */
  public void require(List<Doubt> doubts) {
    if (!doubts.isEmpty()) {
      doubt(doubts.get(0).sentence().replace("say that you are sure", "add --sure"));
    }
  }
}
