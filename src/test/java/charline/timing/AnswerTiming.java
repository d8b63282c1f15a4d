package charline.timing;

import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.trial.Patch;
import charline.trial.Stratum;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** From the return key to an answer of the sample log: the first time, and again. */
final class AnswerTiming {
  private static final int ROUNDS = 7;

  /** With what the README's script starts a short command. */
  private static final List<String> QUICK = List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC");

  private static final Path TWO_FITS =
      Path.of("src/test/resources/timing/two-fits.R").toAbsolutePath();

  private static final List<String> QUESTIONS =
      List.of(
          "window latex pine",
          "next latex pine",
          "onset latex pine",
          "sheet latex pine",
          "quote latex pine --area 4.5m2");

  private final Path folder;
  private final String charline;
  private final Path log;
  private final Path kept;

  private AnswerTiming(Path folder, String charline) throws Exception {
    this.folder = folder;
    this.charline = charline;
    Path demo = folder.resolve("demo");
    Run.of(folder, charline, "demo", "--to", demo.toString());
    log = demo.resolve("boathouse.db");
    kept = folder.resolve("kept");
  }

  static List<Timing.Line> lines(Path charline, Path folder) throws Exception {
    AnswerTiming timing = new AnswerTiming(folder, charline.toString());
    List<Timing.Line> lines = new ArrayList<>(timing.first());
    lines.addAll(timing.second());
    return lines;
  }

  /** Nothing is known of the log but its patches: every run has an empty cache. */
  private List<Timing.Line> first() throws Exception {
    Path data = folder.resolve("latex-on-pine.csv");
    FitTiming.write(data, latexOnPine());
    List<Run.Timed> works = new ArrayList<>();
    works.add(() -> Run.of(folder, "Rscript", TWO_FITS.toString(), data.toString()).seconds());
    QUESTIONS.forEach(question -> works.add(() -> asked(List.of(charline), question).seconds()));
    works.add(() -> asked(jar(List.of()), QUESTIONS.get(0)).seconds());
    works.add(() -> asked(jar(QUICK), QUESTIONS.get(0)).seconds());
    double[] medians = Run.medians(ROUNDS, works.toArray(Run.Timed[]::new));
    List<Timing.Line> lines = new ArrayList<>();
    for (int i = 0; i < medians.length - 1; i++) {
      boolean jar = i >= QUESTIONS.size();
      String words = QUESTIONS.get(jar ? 0 : i);
      String how =
          !jar
              ? ""
              : i == QUESTIONS.size()
                  ? " by `java -jar charline.jar`"
                  : " from the jar by the README's script";
      lines.add(
          new Timing.Line(
              "first `" + words + "`" + how + ", process start to end",
              medians[i + 1],
              "R, two logistic fits with a board intercept by glmer, process start to end",
              medians[0],
              Timing.Goal.atMost(jar ? 1 : 0.7, jar ? 3 : 2),
              "the models of every coating in the log, as boards are learned from all; then the"
                  + " checks. Java compiles what it runs while it runs"));
    }
    return lines;
  }

  private List<Timing.Line> second() throws Exception {
    for (String question : QUESTIONS) {
      again(question);
    }
    List<Run.Timed> works = new ArrayList<>();
    works.add(() -> again("find clean latex").seconds());
    QUESTIONS.forEach(question -> works.add(() -> again(question).seconds()));
    double[] medians = Run.medians(2 * ROUNDS, works.toArray(Run.Timed[]::new));
    List<Timing.Line> lines = new ArrayList<>();
    for (int i = 0; i < QUESTIONS.size(); i++) {
      lines.add(
          new Timing.Line(
              "second `" + QUESTIONS.get(i) + "`, nothing changed",
              medians[i + 1],
              "`find clean latex` on the same log",
              medians[0],
              Timing.Goal.atMost(1.5, 2),
              "reading the log, making sure that nothing changed, reading what was kept"));
    }
    return lines;
  }

  private List<Patch> latexOnPine() {
    try (Logbook book = Logbook.openToRead(log, Clock.systemUTC())) {
      return book.patches(Filter.ALL).stream()
          .map(PatchEntry::patch)
          .filter(
              p -> Stratum.of(p).family().equals("latex") && Stratum.of(p).wood().equals("pine"))
          .toList();
    }
  }

  private static List<String> jar(List<String> options) {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    String jar = Path.of("target/charline.jar").toAbsolutePath().toString();
    return Stream.of(List.of(java), options, List.of("-jar", jar)).flatMap(List::stream).toList();
  }

  private Run asked(List<String> program, String question) throws Exception {
    return Run.of(folder, words(program, question));
  }

  private Run again(String question) throws Exception {
    return Run.of(folder, kept, words(List.of(charline), question));
  }

  private String[] words(List<String> program, String question) throws Exception {
    List<String> to =
        question.startsWith("sheet")
            ? List.of(
                "--to", Files.createTempDirectory(folder, "sheet").resolve("s.html").toString())
            : List.of();
    return Stream.of(
            program,
            List.of("--log", log.toString()),
            Arrays.asList(question.toLowerCase(Locale.ROOT).split(" ")),
            to)
        .flatMap(List::stream)
        .toArray(String[]::new);
  }
}
