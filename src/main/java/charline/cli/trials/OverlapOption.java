package charline.cli.trials;

import charline.window.Strokes;
import java.util.Optional;
import picocli.CommandLine.Option;

/** How strokes lie side by side. */
final class OverlapOption {
  @Option(
      names = "--overlap",
      paramLabel = "SHARE",
      description =
          "Share of a stroke's width that the next one covers again, 0 to 50 %%. Seams get their"
              + " passes twice. Default: 10%%, common practice.")
  private String overlap;

  boolean typed() {
    return overlap != null;
  }

  Strokes strokes() {
    return Optional.ofNullable(overlap)
        .map(share -> new Strokes(Shares.inside("--overlap", share, 0, 0.5)))
        .orElse(Strokes.USUAL);
  }
}
