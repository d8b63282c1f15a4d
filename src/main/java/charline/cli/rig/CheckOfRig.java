package charline.cli.rig;

import picocli.CommandLine.Parameters;

/** Which power check of which rig a command is about. */
final class CheckOfRig {
  @Parameters(index = "0", paramLabel = "NAME", description = "The rig.")
  String name;

  @Parameters(
      index = "1",
      paramLabel = "CHECK",
      description =
          "The power check: last, its day, its time, or its day and setting in %%, such as"
              + " \"2026-06-01 60%%\".")
  String which;
}
