package charline.cli;

import charline.cli.command.Asker;
import com.fasterxml.jackson.jr.ob.JSON;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A shell in the boathouse: one log, one clock that stands still, one person. */
final class Shell {
  private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

  private static final String LOG = "boathouse.db";

  /** Many tests ask the same of the sample trials; fits of other code are never found there. */
  private static final Path FITS = Path.of("target", "fits").toAbsolutePath();

  private static byte[] bench;

  private final Map<String, String> env = new HashMap<>();
  private Clock clock =
      Clock.fixed(Instant.parse("2026-06-01T12:30:00Z"), ZoneId.of("Europe/Berlin"));

  Shell(Path folder) {
    env.put("CHARLINE_LOG", folder.resolve(LOG).toString());
    env.put("CHARLINE_BY", "Ada");
    env.put("XDG_DATA_HOME", folder.toAbsolutePath().resolve("data").toString());
    env.put("APPDATA", folder.toAbsolutePath().resolve("data").toString());
    env.put("HOME", folder.toAbsolutePath().toString());
    env.put("CHARLINE_CACHE", FITS.toString());
  }

  /**
   * What a command did.
   *
   * @param code exit code
   * @param out standard output
   * @param err standard error
   */
  record Result(int code, String out, String err) {
    /** Standard output with its folded lines as one, so that a sentence may be looked for. */
    String flat() {
      return out.replaceAll("\\s+", " ");
    }

    /** Standard output read as JSON. */
    Map<String, Object> json() {
      try {
        return JSON.std.mapFrom(out);
      } catch (IOException e) {
        throw new AssertionError(out, e);
      }
    }
  }

  /** An object within an object of JSON. */
  @SuppressWarnings("unchecked")
  static Map<String, Object> part(Map<String, Object> json, String key) {
    return (Map<String, Object>) json.get(key);
  }

  /** A shell with a rig, two boards and a finish. */
  static Shell withBench(Path folder) {
    try {
      Files.write(folder.resolve(LOG), bench(), StandardOpenOption.CREATE_NEW);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new Shell(folder);
  }

  /** The log of that shell, set up once: every set-up is a new log and four commands. */
  private static synchronized byte[] bench() throws IOException {
    if (bench == null) {
      Path folder = Files.createTempDirectory("bench");
      new Shell(folder).setUp();
      bench = Files.readAllBytes(folder.resolve(LOG));
      Files.delete(folder.resolve(LOG));
      Files.delete(folder);
    }
    return bench;
  }

  /**
   * Sets a rig, two boards and a finish up, as another person would have: they are not the same.
   */
  Shell setUp() {
    return mustDo("rig add Heron --kind pulsed --rated 200W --spot 0.6mm --rep 40kHz --width 60mm")
        .mustDo("board add boathouse-1 --wood pine --job boathouse")
        .mustDo("board add boathouse-2 --wood pine --job boathouse")
        .mustDo("finish add wall-latex --coat latex:pale:90um");
  }

  Shell set(String name, String value) {
    env.put(name, value);
    return this;
  }

  Shell unset(String name) {
    env.remove(name);
    return this;
  }

  /** Lets the clock stand at another moment. */
  Shell at(String instant) {
    clock = Clock.fixed(Instant.parse(instant), ZoneId.of("Europe/Berlin"));
    return this;
  }

  /** Lets another clock tell the time. */
  Shell with(Clock other) {
    clock = other;
    return this;
  }

  /** Runs a command with nobody to ask. */
  Result run(String line) {
    return run(Asker.NOBODY, words(line));
  }

  /** What a command says, its folded lines as one. */
  String flat(String line) {
    return run(line).flat();
  }

  /** What a command says in JSON. */
  Map<String, Object> json(String line) {
    return run(line).json();
  }

  Result run(List<String> words) {
    return run(Asker.NOBODY, words);
  }

  /** Runs a command at a terminal whose person gives these answers, then leaves. */
  Result asking(Person person, String line) {
    return run(person, words(line));
  }

  /** Runs a command that sets the scene. */
  Shell mustDo(String line) {
    Result result = run(line);
    if (result.code() != 0) {
      throw new AssertionError(line + ": " + result);
    }
    return this;
  }

  private Result run(Asker asker, List<String> words) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int code =
        Main.run(
            words.toArray(String[]::new),
            asker,
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            env,
            clock);
    return new Result(code, text(out), text(err));
  }

  private static String text(ByteArrayOutputStream bytes) {
    return bytes.toString(StandardCharsets.UTF_8).replace("\r\n", "\n");
  }

  /** Words as a shell splits them; double quotes keep words together. */
  static List<String> words(String line) {
    List<String> words = new ArrayList<>();
    Matcher matcher = WORD.matcher(line);
    while (matcher.find()) {
      words.add(matcher.group(1) == null ? matcher.group(2) : matcher.group(1));
    }
    return words;
  }

  /** Someone at a terminal with their answers ready. */
  static final class Person implements Asker {
    private final Deque<String> answers;
    private final List<String> questions = new ArrayList<>();

    Person(String... answers) {
      this.answers = new ArrayDeque<>(Arrays.asList(answers));
    }

    @Override
    public boolean present() {
      return true;
    }

    @Override
    public Optional<String> answer(String question) {
      questions.add(question);
      return Optional.ofNullable(answers.poll());
    }

    List<String> questions() {
      return questions;
    }
  }
}
