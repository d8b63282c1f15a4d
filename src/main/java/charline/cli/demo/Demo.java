package charline.cli.demo;

import charline.cli.command.LogCommand;
import charline.refusal.Refusal;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code demo}. */
@Command(
    addMethodSubcommands = false,
    name = "demo",
    header = "Run a whole job on invented trials, in a throw-away log.",
    description =
        "Imports the trials of a lakeside boathouse that is being restored, asks a question, "
            + "looks for windows (power in %%, speed in mm/s) and writes a sheet. Your own log is "
            + "not touched. The trials are invented; no number in them is a recommendation.",
    footer = {"", "Example:", "  charline demo"})
public final class Demo extends LogCommand {
  private static final String SAMPLES = "/sample-trials/";
  private static final List<String> SET_UP = List.of("rigs.csv", "power-checks.csv");
  private static final List<String> SHEETS =
      List.of(
          "latex-on-pine.csv",
          "varnish-on-ash.csv",
          "alkyd-on-plywood.csv",
          "clear-coat-on-larch.csv",
          "primer-on-oak.csv",
          "alkyd-on-pine-cw.csv",
          "shellac-on-oak.csv");

  private final ToIntFunction<List<String>> charline;

  @Option(
      names = "--to",
      paramLabel = "FOLDER",
      description = "Folder for the log, the trials and the sheet. Default: a new one.")
  private Path to;

  /**
   * @param charline runs a command of the program and gives its exit code
   */
  public Demo(ToIntFunction<List<String>> charline) {
    this.charline = charline;
  }

  @Override
  public Integer call() {
    try {
      Path folder = to == null ? Files.createTempDirectory("charline-demo") : emptied(to);
      List<Path> written = play(folder);
      desk.out().println("Written:");
      written.forEach(file -> desk.out().println("  " + file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return DONE;
  }

  private static Path emptied(Path folder) throws IOException {
    Path log = folder.resolve("boathouse.db");
    if (Files.exists(log)) {
      throw Refusal.usage("%s already exists; give another folder.".formatted(log));
    }
    return Files.createDirectories(folder);
  }

  private List<Path> play(Path folder) throws IOException {
    Path trials = Files.createDirectories(folder.resolve("sample-trials"));
    for (String name : SET_UP) {
      unpack(name, trials);
    }
    List<String> imports = new ArrayList<>(List.of("import"));
    for (String name : SHEETS) {
      imports.add(unpack(name, trials).toString());
    }
    imports.addAll(
        List.of(
            "--rigs",
            trials.resolve("rigs.csv").toString(),
            "--power-checks",
            trials.resolve("power-checks.csv").toString()));
    Path log = folder.resolve("boathouse.db");
    Path sheet = folder.resolve("latex-on-pine.html");
    run(log, imports);
    run(log, List.of("find", "clean", "latex", "over", "pine"));
    run(log, List.of("window", "--all"));
    run(log, List.of("window", "latex", "pine", "--job-area", "4.5m2"));
    run(log, List.of("sheet", "latex", "pine", "--to", sheet.toString()));
    return List.of(log, trials, sheet);
  }

  private static Path unpack(String name, Path folder) throws IOException {
    try (InputStream sample = Demo.class.getResourceAsStream(SAMPLES + name)) {
      if (sample == null) {
        throw Refusal.data("The sample trials %s are missing from the jar.".formatted(name));
      }
      Path file = folder.resolve(name);
      Files.copy(sample, file);
      return file;
    }
  }

  /** Shows a command as a person would type it, then runs it. */
  private void run(Path log, List<String> command) {
    desk.out()
        .println(
            "$ charline "
                + command.stream()
                    .map(word -> word.contains("/") ? Path.of(word).getFileName().toString() : word)
                    .collect(Collectors.joining(" ")));
    List<String> words = new ArrayList<>(List.of("--log", log.toString()));
    words.addAll(command);
    if (charline.applyAsInt(words) > NO) {
      throw Refusal.data("The demo stopped there; your own log was not touched.");
    }
    desk.out().println();
  }
}
