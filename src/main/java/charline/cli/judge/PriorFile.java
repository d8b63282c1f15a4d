package charline.cli.judge;

import charline.cli.desk.Typed;
import charline.cli.render.Table;
import charline.model.Event;
import charline.model.Prior;
import charline.refusal.Refusal;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The priors of both models as a text file. One parameter a line; what follows {@code #} is a
 * remark; a parameter that is not named keeps the usual prior.
 *
 * @param charring prior of the burn-onset model
 * @param clearing prior of the removal model
 */
record PriorFile(Prior charring, Prior clearing) {
  private static final Pattern LINE = Pattern.compile("(\\S+)\\s+(\\S+)\\s*=(.*)");

  static PriorFile usual() {
    return new PriorFile(Prior.usual(Event.CHAR), Prior.usual(Event.CLEARING));
  }

  /**
   * Reads a file.
   *
   * @throws Refusal naming the line, what it must be and what it is
   */
  static PriorFile read(Path file) {
    try {
      return read(Files.readAllLines(file), file.getFileName().toString());
    } catch (CharacterCodingException e) {
      throw Typed.refused("--prior", "%s must be plain text in UTF-8.".formatted(file));
    } catch (IOException e) {
      throw Typed.refused(
          "--prior",
          "%s cannot be read; `charline prior` prints a file to begin with.".formatted(file));
    }
  }

  static PriorFile read(List<String> lines, String name) {
    PriorFile priors = usual();
    Set<String> seen = new HashSet<>();
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i).replaceFirst("#.*", "").strip();
      if (!line.isEmpty()) {
        try {
          priors = priors.with(line, seen);
        } catch (Refusal e) {
          throw Typed.refused("--prior", "%s, line %d: %s".formatted(name, i + 1, e.getMessage()));
        }
      }
    }
    return priors;
  }

  private PriorFile with(String line, Set<String> seen) {
    Matcher m = LINE.matcher(line);
    if (!m.matches()) {
      throw Refusal.usage(
          "a line must look like \"char dose = 30 x/ 4.5\", not \"%s\".".formatted(line));
    }
    String event = m.group(1).toLowerCase(Locale.ROOT);
    PriorLine parameter = parameter(m.group(2));
    if (!event.equals("char") && !event.equals("clearing")) {
      throw Refusal.usage(
          "the first word must be char or clearing, not \"%s\".".formatted(m.group(1)));
    }
    if (!seen.add(event + " " + parameter.word())) {
      throw Refusal.usage("%s %s is given twice; keep one.".formatted(event, parameter.word()));
    }
    Prior.Normal value = parameter.read(m.group(3));
    return event.equals("char")
        ? new PriorFile(parameter.put(charring, value), clearing)
        : new PriorFile(charring, parameter.put(clearing, value));
  }

  private static PriorLine parameter(String word) {
    Optional<PriorLine> found =
        Arrays.stream(PriorLine.values())
            .filter(p -> p.word().equals(word.toLowerCase(Locale.ROOT)))
            .findAny();
    return found.orElseThrow(
        () ->
            Refusal.usage(
                "the second word must be one of %s, not \"%s\"."
                    .formatted(
                        Arrays.stream(PriorLine.values())
                            .map(PriorLine::word)
                            .collect(Collectors.joining(", ")),
                        word)));
  }

  /** The file that {@link #read} reads, with what each line means and why. */
  String text() {
    StringBuilder text = new StringBuilder();
    remark(
        text,
        "What the models take for likely before any patch. Lines may be changed or left out; give"
            + " the file to `charline window --prior FILE`. No window comes of these alone: it"
            + " takes patches.");
    for (PriorLine parameter : PriorLine.values()) {
      text.append('\n');
      remark(
          text,
          parameter.word() + ": " + parameter.meaning() + ". Why: " + parameter.reason() + ".");
      text.append(parameter.write(Event.CHAR, charring)).append('\n');
      text.append(parameter.write(Event.CLEARING, clearing)).append('\n');
    }
    return text.toString();
  }

  private static void remark(StringBuilder text, String words) {
    Table.fold(words, Table.WIDTH - 2).forEach(l -> text.append("# ").append(l).append('\n'));
  }
}
