package charline.timing;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/** From the return key to the prompt: recording one patch. */
final class StartTiming {
  private static final int ROUNDS = 15;

  private StartTiming() {}

  static List<Timing.Line> lines(Path charline, Path folder) throws Exception {
    Path log = folder.resolve("start.db");
    String program = charline.toString();
    List<String[]> setUp =
        List.of(
            new String[] {
              "rig", "add", "Heron", "--kind", "pulsed", "--rated", "200W", "--spot", "0.6mm",
              "--rep", "40kHz", "--width", "60mm"
            },
            new String[] {"board", "add", "boathouse-1", "--wood", "pine"},
            new String[] {"finish", "add", "wall-latex", "--coat", "latex:pale"});
    for (String[] words : setUp) {
      Run.of(folder, with(words, program, "--log", log.toString()));
    }
    String[] add = {
      "patch",
      "add",
      "--board",
      "boathouse-1",
      "--finish",
      "wall-latex",
      "--power",
      "60%",
      "--hand",
      "22mm/s",
      "--passes",
      "1",
      "--outcome",
      "residue"
    };
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    String classes =
        Path.of(Hello.class.getProtectionDomain().getCodeSource().getLocation().toURI()).toString();
    double[] medians =
        Run.medians(
            ROUNDS,
            () ->
                Run.of(folder, with(with(new String[] {"--log", log.toString()}, add), program))
                    .seconds(),
            () -> Run.of(folder, java, "-cp", classes, Hello.class.getName()).seconds());
    return List.of(
        new Timing.Line(
            "record one patch, process start to end",
            medians[0],
            "a Java \"hello\"",
            medians[1],
            "at most 2.5",
            "reading the options' annotations, through classes that Java makes each time, nearly half;"
                + " starting Java a fifth; SQLite's driver a sixth; one synchronised write. The"
                + " class-data archive already spares loading 1,600 classes"));
  }

  private static String[] with(String[] words, String... before) {
    String[] all = Arrays.copyOf(before, before.length + words.length);
    System.arraycopy(words, 0, all, before.length, words.length);
    return all;
  }
}
