package charline.cli.word;

import java.util.List;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A word to be added, with other words for the same. */
public final class AddedWord {
  @Parameters(paramLabel = "NAME", description = "The name.")
  String name;

  @Option(
      names = "--also",
      paramLabel = "NAME",
      description = "Another name for the same; may be repeated.")
  List<String> also = List.of();

  @Option(
      names = "--by",
      paramLabel = "WHO",
      description = "Who adds it. Default: $$CHARLINE_BY, else your login name.")
  String by;
}
