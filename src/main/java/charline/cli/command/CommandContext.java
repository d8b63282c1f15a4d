package charline.cli.command;

import charline.answer.KeptFits;
import charline.fault.FaultFiles;
import charline.log.Logbook;
import charline.progress.WorkWatch;
import charline.refusal.Refusal;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/** Where one command works: its streams, its clock, its log, and who sits there. */
public final class CommandContext {
  /** Names the person for every record made in a shell. */
  public static final String PERSON_VARIABLE = "CHARLINE_BY";

  private final Asker asker;
  private final PrintStream out;
  private final PrintStream err;
  private final Map<String, String> env;
  private final Clock clock;
  private Optional<Path> chosenLog = Optional.empty();
  private Optional<ProgressLine> line = Optional.empty();
  private Optional<KeptFits> kept = Optional.empty();

  public CommandContext(
      Asker asker, PrintStream out, PrintStream err, Map<String, String> env, Clock clock) {
    this.asker = asker;
    this.out = out;
    this.err = err;
    this.env = Map.copyOf(env);
    this.clock = clock;
  }

  /** For the answer. */
  public PrintStream out() {
    line.ifPresent(ProgressLine::clear);
    return out;
  }

  /** Standard error: refusals, warnings, progress. */
  public PrintStream err() {
    line.ifPresent(ProgressLine::clear);
    return err;
  }

  /**
   * Shows on a terminal how far work is that takes longer than two seconds; close it at its end.
   */
  public ProgressLine watch(String doing) {
    ProgressLine shown = new ProgressLine(err, doing);
    if (asker.present()) {
      line = Optional.of(shown);
      shown.start();
    }
    return shown;
  }

  /** Is told how far work is. */
  public WorkWatch progress() {
    return line.map(WorkWatch.class::cast).orElse(WorkWatch.NONE);
  }

  /** Shows no progress from now on: what follows lasts until somebody stops it. */
  public void serve() {
    line.ifPresent(shown -> shown.pause(true));
  }

  public Map<String, String> env() {
    return env;
  }

  public Clock clock() {
    return clock;
  }

  /** Now, to the second, with the zone of the desk. */
  public OffsetDateTime now() {
    return OffsetDateTime.now(clock).truncatedTo(ChronoUnit.SECONDS);
  }

  /** A moment that is over, as typed after an option; now where nothing was typed. */
  public OffsetDateTime past(String option, String text) {
    return text == null ? now() : TypedTime.past(option, text, now(), clock.getZone());
  }

  /** The same for what counts from then on: a day alone counts from its beginning. */
  public OffsetDateTime pastFrom(String option, String text) {
    return text == null ? now() : TypedTime.pastFrom(option, text, now(), clock.getZone());
  }

  /** Works on this log and no other. */
  public void useLog(Path file) {
    chosenLog = Optional.of(file);
  }

  public Path logFile() {
    return chosenLog.orElseGet(() -> LogPlace.of(env, system(), Path.of(home())));
  }

  /** Fits from before. */
  public KeptFits kept() {
    if (kept.isEmpty()) {
      kept = Optional.of(KeptFits.in(LogPlace.ofFits(env, system(), Path.of(home()))));
    }
    return kept.get();
  }

  /** Ends what is still to do when the answer is out. */
  public void close() {
    kept.ifPresent(KeptFits::close);
  }

  /** Where the program's own faults are written down. */
  public FaultFiles faultFiles() {
    return new FaultFiles(LogPlace.ofFaults(env, system(), Path.of(home())), Release.version());
  }

  private static String system() {
    return System.getProperty("os.name", "");
  }

  /** The shell's word counts before the system's list of people, as everywhere on Unix. */
  private String home() {
    String given = env.get("HOME");
    return given != null && !given.isBlank() ? given : System.getProperty("user.home", ".");
  }

  /** Opens the log, beginning a new one where there is none. */
  public Logbook logToWrite() {
    Path file = logFile().toAbsolutePath();
    try {
      Files.createDirectories(file.getParent());
    } catch (IOException e) {
      throw Refusal.data(
          "The log must be in a folder that can be created, not %s; choose another with --log."
              .formatted(file.getParent()),
          e);
    }
    return told(Logbook.open(file, clock));
  }

  private Logbook told(Logbook log) {
    log.upgrade()
        .ifPresent(
            upgrade ->
                err.println(
                    "The log was upgraded from version %d to %d; a copy of the old one is in %s."
                        .formatted(upgrade.from(), upgrade.to(), upgrade.kept())));
    return log;
  }

  /** Opens an existing log: a mistyped name must not leave an empty log behind. */
  public Logbook logToRead() {
    return told(Logbook.openToRead(existing(), clock));
  }

  /** Opens an existing log whose rules another program may have changed. */
  public Logbook logToCheck() {
    return told(Logbook.openToCheck(existing(), clock));
  }

  private Path existing() {
    Path file = logFile();
    if (!Files.exists(file)) {
      throw Refusal.data(
          "There is no log at %s; choose one with --log or $%s, or start one with `charline rig add`."
              .formatted(file, LogPlace.VARIABLE));
    }
    return file;
  }

  /** Who makes a record: as given, else {@code $CHARLINE_BY}, else the name of the login. */
  public String person(String given) {
    if (given != null && !given.isBlank()) {
      return given.strip();
    }
    String known = env.get(PERSON_VARIABLE);
    return known != null && !known.isBlank()
        ? known.strip()
        : System.getProperty("user.name", "unknown");
  }

  public boolean someoneToAsk() {
    return asker.present();
  }

  /**
   * What was given, or else the answer to a question; asks again while the answer is refused.
   *
   * @param given what the command line says, or null
   * @param missing the refusal where there is nobody to ask: names what is missing and its option
   * @param question in a few words with the unit
   * @param offered taken for an empty answer
   * @param check throws in one sentence if the answer will not do
   */
  public String need(
      String given,
      String missing,
      String question,
      Optional<String> offered,
      Consumer<String> check) {
    if (given != null) {
      return given;
    }
    if (!asker.present()) {
      throw Refusal.usage(missing);
    }
    line.ifPresent(shown -> shown.pause(true));
    try {
      return answered(question, offered, check);
    } finally {
      line.ifPresent(shown -> shown.pause(false));
    }
  }

  private String answered(String question, Optional<String> offered, Consumer<String> check) {
    String prompt = question + offered.map(o -> " [" + o + "]").orElse("");
    while (true) {
      String answer = asker.answer(prompt).orElseThrow(CommandContext::unanswered);
      String value = answer.isEmpty() ? offered.orElse("") : answer;
      try {
        check.accept(value);
        return value;
      } catch (Refusal e) {
        err.println(e.getMessage());
      }
    }
  }

  private static Refusal unanswered() {
    return Refusal.usage("The questions were left unanswered, so nothing was recorded.");
  }
}
