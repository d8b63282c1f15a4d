package charline.cli.command;

import charline.refusal.Refusal;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Where the log lies when the command does not say. */
public final class LogPlace {
  /** Names the log file for every command of a shell. */
  public static final String VARIABLE = "CHARLINE_LOG";

  /** Names the folder of fits that are kept. */
  public static final String CACHE_VARIABLE = "CHARLINE_CACHE";

  private static final String FOLDER = "charline";
  private static final String FILE = "log.db";

  private LogPlace() {}

  /**
   * {@code $CHARLINE_LOG}, else {@code charline/log.db} in the data folder that the platform keeps
   * for a person.
   *
   * @param env environment
   * @param system name of the operating system, as {@code os.name} has it
   * @param home the person's home folder
   */
  public static Path of(Map<String, String> env, String system, Path home) {
    return given(env, VARIABLE)
        .map(text -> path(text, VARIABLE))
        .orElseGet(() -> dataFolder(env, system, home).resolve(FOLDER).resolve(FILE));
  }

  /** Where the details of the program's own faults go, wherever the log is. */
  public static Path ofFaults(Map<String, String> env, String system, Path home) {
    return dataFolder(env, system, home).resolve(FOLDER).resolve("faults");
  }

  /**
   * Where fits are kept from one question to the next: {@code $CHARLINE_CACHE}, else {@code
   * charline} in the cache folder that the platform keeps for a person.
   */
  public static Path ofFits(Map<String, String> env, String system, Path home) {
    return given(env, CACHE_VARIABLE)
        .map(text -> path(text, CACHE_VARIABLE))
        .orElseGet(() -> cacheFolder(env, system, home));
  }

  private static Path cacheFolder(Map<String, String> env, String system, Path home) {
    String name = system.toLowerCase(Locale.ROOT);
    if (name.startsWith("windows")) {
      return given(env, "LOCALAPPDATA")
          .map(text -> path(text, "LOCALAPPDATA"))
          .orElseGet(() -> home.resolve("AppData").resolve("Local"))
          .resolve(FOLDER)
          .resolve("cache");
    }
    if (name.startsWith("mac")) {
      return home.resolve("Library").resolve("Caches").resolve(FOLDER);
    }
    return given(env, "XDG_CACHE_HOME")
        .map(text -> path(text, "XDG_CACHE_HOME"))
        .filter(Path::isAbsolute)
        .orElseGet(() -> home.resolve(".cache"))
        .resolve(FOLDER);
  }

  private static Path dataFolder(Map<String, String> env, String system, Path home) {
    String name = system.toLowerCase(Locale.ROOT);
    if (name.startsWith("windows")) {
      return given(env, "APPDATA")
          .map(text -> path(text, "APPDATA"))
          .orElseGet(() -> home.resolve("AppData").resolve("Roaming"));
    }
    if (name.startsWith("mac")) {
      return home.resolve("Library").resolve("Application Support");
    }
    return given(env, "XDG_DATA_HOME")
        .map(text -> path(text, "XDG_DATA_HOME"))
        .filter(Path::isAbsolute) // the XDG base directory rules say to ignore a relative one
        .orElseGet(() -> home.resolve(".local").resolve("share"));
  }

  private static Optional<String> given(Map<String, String> env, String name) {
    return Optional.ofNullable(env.get(name)).filter(value -> !value.isBlank());
  }

  private static Path path(String text, String variable) {
    try {
      return Path.of(text);
    } catch (InvalidPathException e) {
      throw Refusal.usage(
          "$%s must be a path on this system, not \"%s\" (%s); set it to another."
              .formatted(variable, text, e.getReason()),
          e);
    }
  }
}
