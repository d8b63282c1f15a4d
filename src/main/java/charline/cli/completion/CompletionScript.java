package charline.cli.completion;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/**
 * The completion script of a shell: a table of commands, options and what follows them, and a
 * function that reads it. One table for all shells, as picocli writes a script for bash alone and
 * knows nothing of the log.
 */
public final class CompletionScript {
  /** What follows an option or an argument, by "patch add --board" or "patch show 0". */
  private final Map<String, String> values = new LinkedHashMap<>();

  private final Map<String, String> commands = new LinkedHashMap<>();
  private final Map<String, String> options = new LinkedHashMap<>();
  private final Map<String, String> arguments = new LinkedHashMap<>();

  /**
   * @param line the program with all its commands
   */
  public CompletionScript(CommandLine line) {
    collect("", line);
  }

  private void collect(String path, CommandLine line) {
    Map<String, CommandLine> below = line.getSubcommands();
    if (!below.isEmpty()) {
      commands.put(path, String.join("|", below.keySet()));
    }
    List<OptionSpec> all = line.getCommandSpec().options();
    options.put(path, all.stream().map(OptionSpec::longestName).collect(Collectors.joining("|")));
    for (OptionSpec option : all) {
      String offer = Offer.ofOption(path, option);
      if (!offer.isEmpty()) {
        values.put(path + " " + option.longestName(), offer);
      }
    }
    for (PositionalParamSpec argument : line.getCommandSpec().positionalParameters()) {
      int first = argument.index().min();
      int last = argument.index().max();
      arguments.put(path + " " + first, Offer.ofArgument(path, argument, first));
      if (last > first) {
        arguments.put(path + " *", Offer.ofArgument(path, argument, first + 1));
      }
    }
    below.forEach((word, each) -> collect((path + " " + word).strip(), each));
  }

  /**
   * The script for bash, zsh or fish.
   *
   * @throws IllegalArgumentException for another shell
   */
  public String of(String shell) {
    boolean fish = shell.equals("fish");
    String table =
        function("commands", commands, fish)
            + function("options", options, fish)
            + function("value", shortened(), fish)
            + function("argument", arguments, fish);
    return template(shell).replace("@TABLE@\n", table);
  }

  /** Options that mean the same in every command are said once. */
  private Map<String, String> shortened() {
    Map<String, Set<String>> meanings = new TreeMap<>();
    values.forEach(
        (key, offer) -> meanings.computeIfAbsent(option(key), o -> new TreeSet<>()).add(offer));
    Map<String, String> rows = new LinkedHashMap<>();
    values.forEach(
        (key, offer) -> {
          boolean one = meanings.get(option(key)).size() == 1;
          rows.put(one ? "* " + option(key) : key, offer);
        });
    return rows;
  }

  private static String option(String key) {
    return key.substring(key.lastIndexOf(' ') + 1);
  }

  private static String function(String name, Map<String, String> rows, boolean fish) {
    Map<String, List<String>> byOffer =
        rows.keySet().stream()
            .collect(Collectors.groupingBy(rows::get, LinkedHashMap::new, Collectors.toList()));
    StringBuilder text = new StringBuilder();
    text.append(
        (fish
                ? "function __charline_%s\n    switch \"$argv\"\n"
                : "_charline_%s() {\n  _charline_found=\n  case \"$*\" in\n")
            .formatted(name));
    // What is said for one place in particular comes before what is said for any.
    List<Map.Entry<String, List<String>>> lines = byOffer.entrySet().stream().toList();
    for (boolean any : new boolean[] {false, true}) {
      for (Map.Entry<String, List<String>> line : lines) {
        List<String> keys =
            line.getValue().stream().filter(key -> key.contains("*") == any).toList();
        if (!keys.isEmpty()) {
          text.append(fish ? fishRow(keys, line.getKey()) : row(keys, line.getKey()));
        }
      }
    }
    return text.append(fish ? "    end\nend\n\n" : "  esac\n}\n\n").toString();
  }

  private static String row(List<String> keys, String offer) {
    String patterns =
        keys.stream().map(CompletionScript::pattern).collect(Collectors.joining(" | "));
    return "    %s) _charline_found='%s' ;;\n".formatted(patterns, offer);
  }

  /** A star outside of the quotes, where it is one. */
  private static String pattern(String key) {
    if (key.startsWith("*")) {
      return "*'" + key.substring(1) + "'";
    }
    return key.endsWith("*") ? "'" + key.substring(0, key.length() - 1) + "'*" : "'" + key + "'";
  }

  private static String fishRow(List<String> keys, String offer) {
    String patterns = keys.stream().map(key -> "'" + key + "'").collect(Collectors.joining(" "));
    return "        case %s\n            echo '%s'\n".formatted(patterns, offer);
  }

  private static String template(String shell) {
    String name = "/completion/" + shell;
    try (InputStream in = CompletionScript.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalArgumentException(shell);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
