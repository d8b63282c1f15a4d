package charline.cli.trials;

import charline.answer.FamilyAndWood;
import charline.answer.PriorFile;
import charline.answer.Priors;
import charline.answer.TrialQuestion;
import charline.cli.command.TypedValues;
import charline.log.Logbook;
import charline.refusal.Refusal;
import charline.window.Requirements;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Which trials a question is about, what a window has to keep, and from which priors. */
final class StockOptions {
  private static final int MOST_PRIOR_BYTES = 1 << 20;

  @Option(
      names = "--risk",
      paramLabel = "SHARE",
      description = "Highest char risk per patch-sized area on a new board, in %%. Default: 5%%.")
  private String risk;

  @Option(
      names = "--confidence",
      paramLabel = "SHARE",
      defaultValue = "90%",
      description = "How sure each promise must be, in %%. Default: 90%%.")
  private String confidence;

  @Option(
      names = "--clear",
      paramLabel = "SHARE",
      defaultValue = "90%",
      description = "Lowest clearing chance, in %%. Default: 90%%.")
  private String clear;

  @Parameters(
      arity = "0..*",
      paramLabel = "FAMILY WOOD",
      description = "Coating family and wood, such as latex pine; any pools the woods.")
  private List<String> words = List.of();

  @Option(names = "--accept-tint", description = "Count a tint that stays in the grain as cleared.")
  private boolean acceptTint;

  @Option(
      names = "--borrow",
      description =
          "Borrow from the log's other trials under the same light, first from those of the same"
              + " coating and, for char, of the same wood. Little is borrowed from trials that"
              + " yours are unlike. Default: each stratum on its own.")
  private boolean borrow;

  @Option(
      names = "--prior",
      paramLabel = "FILE",
      description =
          "File of priors to use in place of the usual ones. `charline prior` prints such a file.")
  private Path priorFile;

  @Option(
      names = "--with-wood",
      paramLabel = "WOOD",
      description =
          "Count trials on this wood too, as if the woods were one; may be repeated. The answer"
              + " says which were pooled.")
  private List<String> pooled = List.of();

  /** Whether a family and a wood were named. */
  boolean named() {
    return words.size() >= 2;
  }

  boolean nothingNamed() {
    if (!pooled.isEmpty() && words.isEmpty()) {
      throw TypedValues.refused(
          "--with-wood",
          "it pools with the wood that you name, and --all names none; leave one out.");
    }
    return words.isEmpty();
  }

  /** Whether a limit of the char risk was typed. */
  boolean riskTyped() {
    return risk != null;
  }

  /** The limits of a window. */
  private Requirements asked() {
    return asked(0.5);
  }

  /** The same for an answer that needs more confidence than a window. */
  Requirements asked(double leastConfidence) {
    return new Requirements(
        risk == null
            ? Requirements.USUAL.charRisk()
            : Shares.inside("--risk", risk, Requirements.LEAST_CHAR_RISK, 0.5),
        Shares.inside("--confidence", confidence, leastConfidence, 0.999),
        Shares.inside("--clear", clear, 0.05, 0.999),
        acceptTint);
  }

  /** The coating family and the wood, in the log's own words. */
  FamilyAndWood about(Logbook log) {
    return FamilyAndWood.read(words, log)
        .pooledWith(pooled.stream().map(log.reference()::wood).toList());
  }

  /** All of the question but what it is about and in which way; needs no log. */
  TrialQuestion question() {
    return TrialQuestion.OF_ALL.with(asked()).with(priors()).borrowing(borrow);
  }

  private Priors priors() {
    if (priorFile == null) {
      return Priors.USUAL;
    }
    try {
      requireShortFile(priorFile);
      return PriorFile.read(Files.readAllLines(priorFile), priorFile);
    } catch (Refusal e) {
      throw TypedValues.refused("--prior", e.getMessage());
    } catch (CharacterCodingException e) {
      throw TypedValues.refused("--prior", "%s must be plain text in UTF-8.".formatted(priorFile));
    } catch (IOException e) {
      throw TypedValues.refused(
          "--prior",
          "%s cannot be read; `charline prior` prints a file to start from.".formatted(priorFile));
    }
  }

  private static void requireShortFile(Path file) throws IOException {
    boolean other = Files.exists(file) && !Files.isDirectory(file) && !Files.isRegularFile(file);
    if (other) {
      throw Refusal.usage("%s is a device or a pipe; give a file.".formatted(file));
    }
    if (Files.size(file) > MOST_PRIOR_BYTES) {
      throw Refusal.usage(
          "%s is too large for a prior file; `charline prior` prints one to start from."
              .formatted(file));
    }
  }
}
