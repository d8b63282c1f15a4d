package charline.answer;

import charline.exposure.Emission;
import charline.model.Event;
import charline.model.PriorSet;
import charline.refusal.Refusal;
import java.nio.file.Path;
import java.util.ArrayList;
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
 * remark; a parameter that is not named keeps the usual prior. A line counts for pulsed and
 * continuous light, or for the one that it begins with, which then goes before a line for both.
 */
public final class PriorFile {
  private static final Pattern LINE =
      Pattern.compile("(?:(pulsed|cw)\\s+)?(\\S+)\\s+(\\S+)\\s*=(.*)", Pattern.CASE_INSENSITIVE);

  /** One line, read. */
  private record Entry(
      Optional<Emission> light, Event event, PriorLine parameter, PriorLine.Value value) {
    String key() {
      return light.map(l -> l.word() + " ").orElse("") + event.word() + " " + parameter.word();
    }

    PriorSet into(PriorSet set) {
      PriorSet changed = set;
      for (Emission each : light.map(List::of).orElse(List.of(Emission.values()))) {
        changed = changed.with(event, each, parameter.put(changed.of(event, each), value));
      }
      return changed;
    }
  }

  private PriorFile() {}

  /**
   * Reads a file.
   *
   * @param lines its lines
   * @param file where they come from
   * @throws Refusal naming the line, what it must be and what it is
   */
  public static Priors read(List<String> lines, Path file) {
    List<Entry> entries = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i).replaceFirst("#.*", "").strip();
      if (!line.isEmpty()) {
        try {
          Entry entry = entry(line);
          if (!seen.add(entry.key())) {
            throw Refusal.usage("%s is given twice; keep one.".formatted(entry.key()));
          }
          entries.add(entry);
        } catch (Refusal e) {
          throw e.reworded("%s, line %d: %s".formatted(file.getFileName(), i + 1, e.getMessage()));
        }
      }
    }
    PriorSet set = Priors.USUAL.set();
    for (boolean forOneLight : new boolean[] {false, true}) {
      for (Entry entry : entries) {
        if (entry.light().isPresent() == forOneLight) {
          set = entry.into(set);
        }
      }
    }
    return new Priors(set, Optional.of(file));
  }

  private static Entry entry(String line) {
    Matcher m = LINE.matcher(line);
    if (!m.matches()) {
      throw Refusal.usage(
          "a line must look like \"char dose = 30 x/ 4.5\", not \"%s\".".formatted(line));
    }
    String word = m.group(2).toLowerCase(Locale.ROOT);
    PriorLine parameter = parameter(m.group(3));
    Event event =
        Arrays.stream(Event.values())
            .filter(e -> e.word().equals(word))
            .findAny()
            .orElseThrow(
                () ->
                    Refusal.usage(
                        "the first word must be char or clearing, not \"%s\"."
                            .formatted(m.group(2))));
    return new Entry(
        Optional.ofNullable(m.group(1)).map(Emission::ofWord),
        event,
        parameter,
        parameter.read(event, m.group(4)));
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
