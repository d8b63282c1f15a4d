package charline.cli.command;

import charline.quantity.Measure.Quantity;
import charline.refusal.Refusal;
import charline.trial.DoseKnobs;
import charline.trial.Knob;
import charline.trial.Mark;
import charline.trial.Outcome;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What changed from one patch to the next, said in a few words in any order, as options of {@code
 * patch add}: {@code 18 clean}, {@code 60% ch}, {@code 2p residue}, {@code spot 0.9 on sill-2}.
 */
public final class WhatChanged {
  private static final Pattern NUMBER = Pattern.compile("([-+]?\\d*[.,]?\\d+)(.*)");

  /** What people call knobs, beside their names as options. */
  private static final Map<String, String> NAMES =
      Map.ofEntries(
          Map.entry("h", "hand"),
          Map.entry("speed", "hand"),
          Map.entry("w", "width"),
          Map.entry("s", "spot"),
          Map.entry("pow", "power"),
          Map.entry("k", "rep"),
          Map.entry("rate", "rep"),
          Map.entry("pass", "passes"),
          Map.entry("p", "passes"),
          Map.entry("on", "board"),
          Map.entry("board", "board"),
          Map.entry("of", "finish"),
          Map.entry("finish", "finish"),
          Map.entry("rig", "rig"),
          Map.entry("with", "rig"),
          Map.entry("soot", "soot"),
          Map.entry("depth", "depth"));

  private WhatChanged() {}

  /**
   * The options that these words are.
   *
   * @param words as typed
   * @param pace how the last patch was made: what a bare number is
   * @throws Refusal naming the word that it does not know, or what is said twice
   */
  public static List<String> options(List<String> words, DoseKnobs pace) {
    Map<String, String> options = new LinkedHashMap<>();
    List<String> marks = new ArrayList<>();
    for (int i = 0; i < words.size(); i++) {
      String word = words.get(i);
      String lower = word.toLowerCase(Locale.ROOT);
      String name = NAMES.getOrDefault(lower, knob(lower));
      if (!name.isEmpty() && i + 1 < words.size()) {
        put(options, name, words.get(++i));
        continue;
      }
      Matcher number = NUMBER.matcher(lower);
      if (number.matches()) {
        boolean unitNext =
            number.group(2).isEmpty() && i + 1 < words.size() && isUnit(words.get(i + 1));
        String unit = unitNext ? words.get(++i) : word.substring(number.group(1).length());
        numbered(options, number.group(1), unit, pace, word);
        continue;
      }
      Matcher glued = Pattern.compile("([a-z]+)([\\d.,].*)").matcher(lower);
      if (glued.matches() && !NAMES.getOrDefault(glued.group(1), knob(glued.group(1))).isEmpty()) {
        String knob = NAMES.getOrDefault(glued.group(1), knob(glued.group(1)));
        put(options, knob, word.substring(glued.group(1).length()));
        continue;
      }
      marks.add(outcome(word));
    }
    if (!marks.isEmpty()) {
      options.put("outcome", Outcome.parse(String.join("+", marks)).text());
    }
    List<String> line = new ArrayList<>();
    options.forEach(
        (option, value) -> {
          line.add("--" + option);
          line.add(value);
        });
    return line;
  }

  private static String knob(String word) {
    return Arrays.stream(Knob.values())
        .map(Knob::key)
        .filter(word::equals)
        .findFirst()
        .map(key -> key.equals("patch") ? "patch-area" : key)
        .orElse("");
  }

  private static boolean isUnit(String word) {
    return word.matches("(?i)%|w|kw|mm/s|cm/s|m/s|in/s|m/min|p|x|pass|passes|percent");
  }

  private static void numbered(
      Map<String, String> options, String number, String unit, DoseKnobs pace, String word) {
    String plain = unit.toLowerCase(Locale.ROOT);
    switch (plain) {
      case "" -> put(options, pace.pace().key(), number);
      case "%", "percent" -> put(options, "power", number + "%");
      case "w", "kw" -> put(options, "power", number + (plain.equals("w") ? "W" : "kW"));
      case "p", "x", "pass", "passes" -> put(options, "passes", number);
      case "khz", "hz", "mhz" -> put(options, "rep", number + unit);
      case "ns", "us" -> put(options, "pulse", number + unit);
      default -> {
        if (Quantity.SPEED.understands(unit)) {
          put(options, pace == DoseKnobs.SCAN ? "scan" : "hand", number + unit);
        } else {
          throw Refusal.usage(
              "I do not know which knob \"%s\" is; put its name before it, such as spot %s."
                  .formatted(word, word));
        }
      }
    }
  }

  private static void put(Map<String, String> options, String name, String value) {
    if (options.containsKey(name)) {
      throw Refusal.usage(
          "Say %s once: it came as %s and as %s.".formatted(name, options.get(name), value));
    }
    options.put(name, value);
  }

  /** An outcome, or the first letters of one mark. */
  private static String outcome(String word) {
    String lower = word.toLowerCase(Locale.ROOT);
    List<String> beginning =
        Arrays.stream(Mark.values()).map(Mark::word).filter(m -> m.startsWith(lower)).toList();
    if (beginning.size() > 1) {
      throw Refusal.usage(
          "\"%s\" may be %s; add a letter.".formatted(word, String.join(" or ", beginning)));
    }
    if (beginning.size() == 1) {
      return beginning.get(0);
    }
    try {
      return Outcome.parse(word).text();
    } catch (Refusal e) {
      throw Refusal.usage(
          "I do not know \"%s\": say what changed, such as 18 (the speed), 60%%, 2p, spot 0.9 or on BOARD, and the outcome. %s"
              .formatted(word, e.getMessage()));
    }
  }
}
