package charline.ask;

import charline.ask.time.TimePhrase;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Cuts a question into words. */
final class Splitting {
  private static final Pattern CHUNK = Pattern.compile("\"([^\"]*)\"|“([^”]*)”|(\\S+)");
  private static final Pattern AROUND = Pattern.compile("^['(\\[{¿¡*]+|['\")\\]}:.?!*…]+$");
  private static final Pattern COMPARING = Pattern.compile("^(<=|>=|=<|=>|<|>|==|=|~|±)(.+)$");
  private static final Pattern UNIT =
      Pattern.compile("(?i)(j|w|mj)/(cm|mm)2|(mm|cm|m|in)/(s|sec|min)|/s|1/e2?");
  private static final Pattern CODE = Pattern.compile("\\p{L}{1,4}-?\\d+");
  private static final Pattern NUMBERED = Pattern.compile("(\\d+)-(\\p{L}{3,})");

  private static final Pattern RANGE =
      Pattern.compile("(\\d+(?:[.,]\\d+)?)-(\\d+(?:[.,]\\d+)?(?:[^\\d-].*)?)");

  private static final Pattern HOURS =
      Pattern.compile("(\\d{1,2}(?:[:.]\\d\\d)?(?:am|pm)?)-(\\d{1,2}(?:[:.]\\d\\d)?(?:am|pm))");

  /** A slash after which no unit stands: "3/scorched", "4J/cm2/clean". */
  private static final Pattern APART =
      Pattern.compile("(?i)/(?=\\p{L}{3,})(?!(?:sec|min|cm2|mm2)(?:/|$))");

  private static final Map<String, List<String>> SHORT =
      Map.ofEntries(
          Map.entry("w/", List.of("with")),
          Map.entry("w/o", List.of("without")),
          Map.entry("and/or", List.of("or")),
          Map.entry("&", List.of("and")),
          Map.entry("+", List.of("and")),
          Map.entry("|", List.of("or")),
          Map.entry("@", List.of("at")),
          Map.entry("cannot", List.of("can", "not")),
          Map.entry("can't", List.of("can", "not")),
          Map.entry("won't", List.of("will", "not")),
          Map.entry("shan't", List.of("shall", "not")),
          Map.entry("ain't", List.of("is", "not")),
          Map.entry("i'm", List.of("i", "am")),
          Map.entry("let's", List.of("let", "us")),
          Map.entry("c/w", List.of("cw")),
          Map.entry("didnt", List.of("did", "not")),
          Map.entry("doesnt", List.of("does", "not")),
          Map.entry("dont", List.of("do", "not")),
          Map.entry("isnt", List.of("is", "not")),
          Map.entry("wasnt", List.of("was", "not")),
          Map.entry("werent", List.of("were", "not")),
          Map.entry("hasnt", List.of("has", "not")),
          Map.entry("havent", List.of("have", "not")),
          Map.entry("whats", List.of("what")),
          Map.entry("ive", List.of("i", "have")));

  private final List<Word> words = new ArrayList<>();
  private boolean comma;

  private Splitting() {}

  static List<Word> of(String question) {
    Splitting splitting = new Splitting();
    Matcher chunks = CHUNK.matcher(plain(question));
    while (chunks.find()) {
      String quoted = chunks.group(1) != null ? chunks.group(1) : chunks.group(2);
      if (quoted != null) {
        splitting.add(quoted, true);
      } else {
        splitting.chunk(chunks.group(3));
      }
    }
    return List.copyOf(splitting.words);
  }

  private static String plain(String question) {
    return question
        .replace('’', '\'')
        .replace('‘', '\'')
        .replace("²", "2")
        .replace("^2", "2")
        .replace("≥", ">=")
        .replace("≤", "<=")
        .replace("µ", "u")
        .replace("μ", "u")
        .replace("—", " , ")
        .replace(" – ", " to ")
        .replace("–", "-")
        .replace("...", " ");
  }

  private void chunk(String typed) {
    String rest = typed;
    while (rest.startsWith(",") || rest.startsWith(";")) {
      comma = true;
      rest = rest.substring(1);
    }
    boolean after = false;
    while (rest.endsWith(",") || rest.endsWith(";")) {
      after = true;
      rest = rest.substring(0, rest.length() - 1);
    }
    for (String part : rest.split("(?<=\\p{L})[,;](?=\\p{L})")) {
      word(part);
      comma = comma || rest.contains(",") && !rest.matches(".*\\d,\\d.*");
    }
    comma = after;
  }

  private void word(String typed) {
    String whole = typed.toLowerCase(Locale.ROOT);
    if (SHORT.containsKey(whole)) {
      SHORT.get(whole).forEach(w -> add(w, false));
      return;
    }
    Matcher comparing = COMPARING.matcher(typed);
    if (typed.matches("[<>=~±]{1,2}")) {
      add(typed, false);
      return;
    }
    if (comparing.matches()) {
      add(comparing.group(1), false);
      word(comparing.group(2));
      return;
    }
    if (typed.matches("[-!]\\p{L}.*")) {
      add("not", false);
      word(typed.substring(1));
      return;
    }
    String bare = AROUND.matcher(typed).replaceAll("");
    String lower = bare.toLowerCase(Locale.ROOT);
    if (Character.isDigit(lower.isEmpty() ? ' ' : lower.charAt(0)) && APART.matcher(lower).find()) {
      APART.splitAsStream(bare).forEach(this::word);
      return;
    }
    Matcher hours = HOURS.matcher(lower);
    if (hours.matches()) {
      add(hours.group(1), false);
      add("to", false);
      add(hours.group(2), false);
      return;
    }
    Matcher range = RANGE.matcher(lower);
    if (range.matches() && !lower.matches("(19|20)\\d\\d-\\d{1,2}")) {
      add(range.group(1), false);
      add("to", false);
      add(range.group(2), false);
      return;
    }
    if (lower.matches("\\p{L}+([+|&]\\p{L}+)+")) {
      String[] parts = bare.split("[+|&]");
      for (int i = 0; i < parts.length; i++) {
        if (i > 0) {
          add(bare.contains("|") ? "or" : "and", false);
        }
        word(parts[i]);
      }
      return;
    }
    if (lower.isEmpty() || lower.matches("[-/_]+")) {
      if (typed.matches("[<>=~]+|-")) {
        add(typed, false);
      }
      return;
    }
    if (SHORT.containsKey(lower)) {
      SHORT.get(lower).forEach(w -> add(w, false));
      return;
    }
    if (lower.endsWith("n't")) {
      add(bare.substring(0, bare.length() - 3), false);
      add("not", false);
      return;
    }
    for (String ending : List.of("'ve", "'re", "'d", "'ll", "'m")) {
      if (lower.endsWith(ending)) {
        add(bare.substring(0, bare.length() - ending.length()), false);
        add(ending.equals("'ve") ? "have" : ending.equals("'m") ? "am" : "would", false);
        return;
      }
    }
    if (lower.endsWith("'s")) {
      word(bare.substring(0, bare.length() - 2));
      return;
    }
    if (lower.matches("\\d.*\\+")) {
      word(bare.substring(0, bare.length() - 1));
      add("or", false);
      add("more", false);
      return;
    }
    Matcher numbered = NUMBERED.matcher(bare);
    if (numbered.matches()) {
      add(numbered.group(1), false);
      add(numbered.group(2), false);
      return;
    }
    if (Character.isDigit(lower.charAt(0))
        || UNIT.matcher(lower).matches()
        || CODE.matcher(lower).matches()) {
      add(bare, false);
      return;
    }
    String before = "";
    for (String part : bare.split("[-_]+|(?=/)|(?<=/)")) {
      if (!part.isEmpty()) {
        String now = part.toLowerCase(Locale.ROOT);
        if (TimePhrase.isName(before) && TimePhrase.isName(now)) {
          add("to", false); // mon-wed
        }
        add(part, false);
        before = now;
      }
    }
  }

  private void add(String typed, boolean quoted) {
    if (!typed.isBlank()) {
      words.add(new Word(typed.strip(), typed.strip().toLowerCase(Locale.ROOT), comma, quoted));
      comma = false;
    }
  }
}
