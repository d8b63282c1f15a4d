package charline.cli.trials;

import charline.answer.FamilyAndWood;
import charline.answer.TrialQuestion;
import charline.cli.command.TypedValues;
import charline.log.Logbook;
import charline.window.Requirements;
import java.util.Optional;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What every question about trials can say: which trials, on which rig, and what to keep. */
final class QuestionOptions {
  @Mixin private StockOptions stock;

  @Option(
      names = "--rig",
      paramLabel = "NAME",
      description = "Rig that the answer is for. Default: the one most patches were burned on.")
  private String rigName;

  @Option(
      names = "--at",
      paramLabel = "KNOBS",
      description =
          "Knobs that stay fixed, such as spot=0.6mm,rep=40kHz,width=60mm; also pulse (ns) and"
              + " spacing (mm). Default: as most of the patches had them.")
  private String at;

  @Mixin private WayOptions way;

  @Option(
      names = "--piece",
      paramLabel = "BOARD",
      description =
          "The client's piece that the answer is for, by the name of its board, which must carry"
              + " patches of that coat. Default: any board, as one not seen yet.")
  private String piece;

  /** Whether a family and a wood were named. */
  boolean named() {
    return stock.named();
  }

  boolean nothingNamed() {
    boolean nothing = stock.nothingNamed();
    if (piece != null && nothing) {
      throw TypedValues.refused(
          "--piece",
          "a piece is of one wood with one coat, and --all asks about every one; leave one out.");
    }
    return nothing;
  }

  /** The piece that the answer is for, if one was named. */
  Optional<String> piece() {
    return Optional.ofNullable(piece);
  }

  /** Whether a limit of the char risk was typed. */
  boolean riskTyped() {
    return stock.riskTyped();
  }

  /** The limits of an answer that needs more confidence than a window. */
  Requirements asked(double leastConfidence) {
    return stock.asked(leastConfidence);
  }

  /** The coating family and the wood, in the log's own words. */
  FamilyAndWood about(Logbook log) {
    return stock.about(log);
  }

  /** All of the question but what it is about; needs no log. */
  TrialQuestion question() {
    TrialQuestion question = stock.question().with(KnobsText.read(at)).with(way.way());
    TrialQuestion forPiece = piece == null ? question : question.forPiece(piece);
    return rigName == null ? forPiece : forPiece.onRig(rigName);
  }
}
