package charline.cli.judge;

import charline.cli.desk.Typed;
import charline.window.Asked;
import picocli.CommandLine.Option;

/** What a window has to keep, as options. */
final class AskedOptions {
  @Option(
      names = "--risk",
      paramLabel = "SHARE",
      defaultValue = "5%",
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

  Asked asked(boolean acceptTint) {
    double charRisk = inside("--risk", risk, 0.001, 0.5);
    double sure = inside("--confidence", confidence, 0.5, 0.999);
    double clearing = inside("--clear", clear, 0.05, 0.999);
    return new Asked(charRisk, sure, clearing, acceptTint);
  }

  static double inside(String option, String text, double low, double high) {
    double share = Typed.chance(option, text);
    double rounding = 1e-12; // 99.9 % is a little more than 0.999 once it is divided
    if (!(share >= low - rounding && share <= high + rounding)) {
      throw Typed.refused(
          option,
          "the share must be between %s and %s %%, not \"%s\"."
              .formatted(
                  charline.quantity.Figures.plain(100 * low),
                  charline.quantity.Figures.plain(100 * high),
                  text.strip()));
    }
    return share;
  }
}
