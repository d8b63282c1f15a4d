package charline.timing;

import java.io.File;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;

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
    String[] oneRow = oneRow(charline.getParent().getParent(), folder);
    double[] medians =
        Run.medians(
            ROUNDS,
            () ->
                Run.of(folder, with(with(new String[] {"--log", log.toString()}, add), program))
                    .seconds(),
            () -> Run.of(folder, java, "-cp", classes, Hello.class.getName()).seconds(),
            () -> Run.of(folder, oneRow).seconds());
    return List.of(
        new Timing.Line(
            "record one patch, process start to end",
            medians[0],
            "a Java \"hello\"",
            medians[1],
            Timing.Goal.atMost(3.5, 6),
            String.format(
                Locale.ROOT,
                "SQLite's driver, which alone (classes archived too) makes it %.2g times (%s for"
                    + " one row in a bare program); then reading the options' annotations, through"
                    + " classes that Java makes each time",
                medians[2] / medians[1],
                Timing.shown(medians[2]))));
  }

  /** How to run {@link OneRow} as charline is run: on the image's Java, from a class archive. */
  private static String[] oneRow(Path image, Path folder) throws Exception {
    Path library = image.resolve("lib");
    Path jar = folder.resolve("one-row.jar");
    String name = OneRow.class.getName().replace('.', '/') + ".class";
    try (JarOutputStream out = new JarOutputStream(Files.newOutputStream(jar));
        InputStream in = OneRow.class.getClassLoader().getResourceAsStream(name)) {
      out.putNextEntry(new JarEntry(name));
      in.transferTo(out);
    }
    Path archive = folder.resolve("one-row.jsa");
    String[] start = {
      image.resolve("runtime/bin/java").toString(),
      "-XX:TieredStopAtLevel=1",
      "-XX:+UseSerialGC",
      "-XX:-UsePerfData",
      "-Xlog:disable",
      "-Dorg.sqlite.lib.path=" + library,
      "-Dorg.sqlite.lib.name=libsqlitejdbc.so",
      "-Dorg.sqlite.tmpdir=" + library
    };
    String[] program = {
      "-cp",
      library.resolve("charline.jar") + File.pathSeparator + jar,
      OneRow.class.getName(),
      folder.resolve("one-row.db").toString()
    };
    Run.of(folder, with(with(program, "-XX:ArchiveClassesAtExit=" + archive), start));
    return with(with(program, "-XX:SharedArchiveFile=" + archive), start);
  }

  private static String[] with(String[] words, String... before) {
    String[] all = Arrays.copyOf(before, before.length + words.length);
    System.arraycopy(words, 0, all, before.length, words.length);
    return all;
  }
}
