package charline.answer;

import charline.model.Prior;
import charline.refusal.Refusal;
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
 */
public final class PriorFile {
  private static final Pattern LINE = Pattern.compile("(\\S+)\\s+(\\S+)\\s*=(.*)");

  private PriorFile() {}

  /**
   * Reads a file.
   *
   * @param lines its lines
   * @param file where they come from
   * @throws Refusal naming the line, what it must be and what it is
   */
  public static Priors read(List<String> lines, Path file) {
    Priors priors = new Priors(Priors.USUAL.charring(), Priors.USUAL.clearing(), Optional.of(file));
    Set<String> seen = new HashSet<>();
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i).replaceFirst("#.*", "").strip();
      if (!line.isEmpty()) {
        try {
          priors = with(priors, line, seen);
        } catch (Refusal e) {
          throw e.reworded("%s, line %d: %s".formatted(file.getFileName(), i + 1, e.getMessage()));
        }
      }
    }
    return priors;
  }

  private static Priors with(Priors priors, String line, Set<String> seen) {
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
        ? priors.withCharring(parameter.put(priors.charring(), value))
        : priors.withClearing(parameter.put(priors.clearing(), value));
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
}
