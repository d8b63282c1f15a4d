package charline.ask;

import charline.exposure.DoseForm;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.PowerSetting;
import charline.exposure.TimedArea;
import charline.log.PatchEntry;
import charline.trial.Coat;
import charline.trial.Knob;
import charline.trial.Mark;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.trial.WoodFacts;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Which patches answer a question, written down by a person and worked out here from the patches
 * themselves, by rules that know nothing of how questions are read: {@code latex & pine & !char},
 * {@code clean & dose<5 -> lowest dose 1}. Void patches count where "void" is among the words.
 */
final class Expectation {
  private static final Pattern NUMBER = Pattern.compile("([a-z ]+)(<=|>=|<|>|=|~)([\\d.]+)");
  private static final Pattern DAYS =
      Pattern.compile("(\\d{4}-\\d\\d-\\d\\d)?\\.\\.(\\d{4}-\\d\\d-\\d\\d)?");
  private static final Pattern TIMES =
      Pattern.compile(
          "(\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d)?\\.\\.(\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d)?");
  private static final Pattern RANK =
      Pattern.compile("(newest|oldest|lowest|highest)\\s*([a-z ]*?)\\s*(\\d+)");

  private final List<WoodFacts> woods;
  private final Map<String, Predicate<PatchEntry>> named = new HashMap<>();
  private final Map<String, ToDoubleFunction<Patch>> numbers = new HashMap<>();

  Expectation(List<WoodFacts> woods) {
    this.woods = woods;
    seen();
    noted();
    numbers();
  }

  /** The codes of the patches that answer, out of all. */
  Set<String> codes(String rule, List<PatchEntry> all) {
    String[] parts = rule.split("->");
    Predicate<PatchEntry> wanted = new Rule(parts[0]).read();
    boolean askedForVoid = parts[0].contains("void");
    List<PatchEntry> found =
        all.stream()
            .filter(e -> askedForVoid || !AskedLog.VOID.contains(e.patch().code()))
            .filter(wanted)
            .toList();
    return (parts.length > 1 ? ranked(parts[1].strip(), found) : found)
        .stream().map(e -> e.patch().code()).collect(Collectors.toCollection(TreeSet::new));
  }

  private List<PatchEntry> ranked(String rank, List<PatchEntry> found) {
    Matcher matcher = RANK.matcher(rank);
    if (!matcher.matches()) {
      throw new IllegalArgumentException("no order: " + rank);
    }
    int limit = Integer.parseInt(matcher.group(3));
    List<PatchEntry> sorted = new ArrayList<>(found);
    boolean falling = matcher.group(1).equals("newest") || matcher.group(1).equals("highest");
    ToDoubleFunction<PatchEntry> value =
        matcher.group(2).isEmpty()
            ? e -> e.patch().burnedAt().toEpochSecond()
            : e -> number(matcher.group(2)).applyAsDouble(e.patch());
    sorted.removeIf(e -> Double.isNaN(value.applyAsDouble(e)));
    Comparator<PatchEntry> order = Comparator.comparingDouble(value);
    sorted.sort(falling ? order.reversed() : order);
    if (sorted.size() <= limit) {
      return sorted;
    }
    double edge = value.applyAsDouble(sorted.get(limit - 1));
    return sorted.stream()
        .filter(
            e ->
                sorted.indexOf(e) < limit
                    || Math.abs(value.applyAsDouble(e) - edge) < 1e-9 * Math.abs(edge))
        .toList();
  }

  private static Set<Mark> last(PatchEntry e) {
    List<Reading> readings = e.patch().readings();
    return readings.get(readings.size() - 1).outcome().marks();
  }

  private static boolean isCleared(Set<Mark> marks) {
    return !marks.contains(Mark.RESIDUE) && !marks.contains(Mark.TINT);
  }

  private void seen() {
    named.put("all", e -> true);
    named.put("clean", e -> last(e).equals(Set.of(Mark.CLEAN)));
    named.put("char", e -> last(e).contains(Mark.CHAR));
    named.put("tint", e -> last(e).contains(Mark.TINT));
    named.put("residue", e -> last(e).contains(Mark.RESIDUE));
    named.put("cleared", e -> isCleared(last(e)));
    named.put(
        "ever cleared",
        e -> e.patch().readings().stream().anyMatch(r -> isCleared(r.outcome().marks())));
    named.put(
        "ever clean",
        e -> e.patch().readings().stream().anyMatch(r -> r.outcome().marks().contains(Mark.CLEAN)));
    named.put(
        "ever residue",
        e ->
            e.patch().readings().stream()
                .anyMatch(r -> r.outcome().marks().contains(Mark.RESIDUE)));
  }

  /** "clean@2" and "cleared@<=2": so after some reading with that many passes. */
  private Predicate<PatchEntry> seenAfter(String mark, String passes) {
    return e ->
        e.patch().readings().stream()
            .filter(r -> compare(passes, r.passes()))
            .anyMatch(
                r ->
                    switch (mark) {
                      case "clean" -> r.outcome().marks().contains(Mark.CLEAN);
                      case "char" -> r.outcome().marks().contains(Mark.CHAR);
                      case "tint" -> r.outcome().marks().contains(Mark.TINT);
                      case "residue" -> r.outcome().marks().contains(Mark.RESIDUE);
                      case "cleared" -> isCleared(r.outcome().marks());
                      case "not clean" -> !r.outcome().marks().contains(Mark.CLEAN);
                      case "not cleared" -> !isCleared(r.outcome().marks());
                      case "not char" -> !r.outcome().marks().contains(Mark.CHAR);
                      default -> throw new IllegalArgumentException(mark);
                    });
  }

  private static boolean compare(String rule, double value) {
    String number = rule.replaceAll("[<>=]", "");
    double limit = Double.parseDouble(number);
    return rule.startsWith("<=")
        ? value <= limit
        : rule.startsWith(">=")
            ? value >= limit
            : rule.startsWith("<")
                ? value < limit
                : rule.startsWith(">") ? value > limit : value == limit;
  }

  private void noted() {
    named.put("soot", e -> e.patch().readings().stream().anyMatch(r -> r.soot().orElse(false)));
    named.put("photo", e -> AskedLog.PHOTOGRAPHED.contains(e.patch().code()));
    named.put("void", e -> AskedLog.VOID.contains(e.patch().code()));
    named.put("planned", e -> false); // nobody planned any
    named.put("note", e -> notes(e).findAny().isPresent());
    named.put("wetted", e -> Boolean.TRUE.equals(circumstance(e, Knob.WETTED)));
    named.put("air", e -> Boolean.TRUE.equals(circumstance(e, Knob.AIR)));
    named.put("extraction", e -> Boolean.TRUE.equals(circumstance(e, Knob.EXTRACTION)));
    for (String place : List.of("face", "arris", "end grain", "moulding", "knot")) {
      named.put(place, e -> place.equals(circumstance(e, Knob.PLACE)));
    }
    for (String figure : List.of("line", "circle", "zigzag", "spiral")) {
      named.put(figure, e -> figure.equals(circumstance(e, Knob.FIGURE)));
    }
    named.put("sap", e -> "sap".equals(circumstance(e, Knob.WOOD_PART)));
    named.put("heart", e -> "heart".equals(circumstance(e, Knob.WOOD_PART)));
    for (String tone : List.of("pale", "mid", "dark")) {
      named.put(
          tone,
          e ->
              e.patch().finish().coats().stream()
                  .limit(1)
                  .anyMatch(c -> c.tone().isPresent() && c.tone().get().word().equals(tone)));
    }
    for (String form : List.of("solid", "veneer")) {
      named.put("form " + form, e -> e.patch().board().form().word().equals(form));
    }
    named.put("pulsed", e -> e.patch().rig().emission().word().equals("pulsed"));
    named.put("cw", e -> e.patch().rig().emission().word().equals("cw"));
    for (String kind : List.of("hardwood", "softwood", "panel")) {
      named.put(kind, e -> wood(e).kind().equals(kind));
    }
    for (String pores : List.of("ring", "semi-ring", "diffuse")) {
      named.put(pores + "-porous", e -> wood(e).pores().equals(pores));
    }
    named.put("by hand", e -> e.patch().settings().form() instanceof HandPass);
    named.put("scanned", e -> e.patch().settings().form() instanceof LineScan);
    named.put("timed", e -> e.patch().settings().form() instanceof TimedArea);
    named.put(
        "depth known",
        e -> e.patch().readings().stream().anyMatch(r -> r.depthMicrometres().isPresent()));
  }

  private static Object circumstance(PatchEntry e, Knob knob) {
    return e.patch().circumstances().values().get(knob);
  }

  private WoodFacts wood(PatchEntry e) {
    return woods.stream()
        .filter(w -> w.name().equals(e.patch().board().wood()))
        .findAny()
        .orElseThrow();
  }

  private static Stream<String> notes(PatchEntry e) {
    return Stream.concat(
        e.note().stream(), e.patch().readings().stream().flatMap(r -> r.note().stream()));
  }

  private void numbers() {
    numbers.put("dose", p -> p.exposure().doseJoulesPerCm2());
    numbers.put("total dose", p -> p.exposure().doseJoulesPerCm2() * p.lastReading().passes());
    numbers.put(
        "fluence",
        p -> p.rig().emission().word().equals("pulsed") ? p.exposure().intensity() : Double.NaN);
    numbers.put(
        "power",
        p ->
            p.settings().power().unit() == PowerSetting.Unit.PERCENT
                ? p.settings().power().value()
                : Double.NaN);
    numbers.put("watts", p -> p.exposure().deliveredWatts());
    numbers.put("speed", p -> speed(p.settings().form()));
    numbers.put("spot", p -> p.settings().spot().diameterMillimetres());
    numbers.put(
        "rate", p -> p.settings().pulses().map(x -> x.repetitionKilohertz()).orElse(Double.NaN));
    numbers.put("passes", p -> p.lastReading().passes());
    numbers.put(
        "first clean",
        p ->
            p.readings().stream()
                .filter(r -> r.outcome().marks().contains(Mark.CLEAN))
                .mapToDouble(Reading::passes)
                .findFirst()
                .orElse(Double.NaN));
    numbers.put(
        "first cleared",
        p ->
            p.readings().stream()
                .filter(r -> isCleared(r.outcome().marks()))
                .mapToDouble(Reading::passes)
                .findFirst()
                .orElse(Double.NaN));
    numbers.put(
        "depth",
        p ->
            p.readings().stream()
                .map(Reading::depthMicrometres)
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble)
                .reduce((a, b) -> b)
                .orElse(Double.NaN));
    numbers.put("moisture", p -> p.board().moisturePercent().orElse(Double.NaN));
    numbers.put("thickness", p -> p.finish().thicknessMicrometres().orElse(Double.NaN));
    numbers.put("size", p -> p.areaSquareCentimetres().orElse(Double.NaN));
    numbers.put("rest", p -> knob(p, Knob.REST));
    numbers.put("standoff", p -> knob(p, Knob.STAND_OFF));
    numbers.put("temperature", p -> knob(p, Knob.TEMPERATURE));
  }

  private static double knob(Patch p, Knob knob) {
    Object value = p.circumstances().values().get(knob);
    return value == null ? Double.NaN : (Double) value;
  }

  private static double speed(DoseForm form) {
    return form instanceof HandPass hand
        ? hand.handSpeedMillimetresPerSecond()
        : form instanceof LineScan scan ? scan.spotSpeedMillimetresPerSecond() : Double.NaN;
  }

  private ToDoubleFunction<Patch> number(String name) {
    ToDoubleFunction<Patch> number = numbers.get(name.strip());
    if (number == null) {
      throw new IllegalArgumentException("no number: " + name);
    }
    return number;
  }

  /** One word or comparison of a rule. */
  private Predicate<PatchEntry> atom(String text) {
    String word = text.strip();
    if (named.containsKey(word)) {
      return named.get(word);
    }
    int at = word.indexOf('@');
    if (at > 0) {
      return seenAfter(word.substring(0, at), word.substring(at + 1));
    }
    Matcher number = NUMBER.matcher(word);
    if (number.matches()) {
      ToDoubleFunction<Patch> value = number(number.group(1));
      String rule = number.group(2);
      double limit = Double.parseDouble(number.group(3));
      return e -> {
        double v = value.applyAsDouble(e.patch());
        return rule.equals("=")
            ? Math.abs(v - limit) < 1e-9
            : rule.equals("~")
                ? Math.abs(v - limit) <= 0.1 * limit + 1e-9
                : compare(rule + limit, v);
      };
    }
    Matcher days = DAYS.matcher(word);
    if (days.matches()) {
      return e -> isWithin(e, days.group(1), days.group(2));
    }
    Matcher times = TIMES.matcher(word);
    if (times.matches()) {
      return e -> isBetween(e, times.group(1), times.group(2));
    }
    return attribute(word);
  }

  private static boolean isWithin(PatchEntry e, String first, String last) {
    LocalDate day = e.patch().burnedAt().atZoneSameInstant(AskedLog.CLOCK.getZone()).toLocalDate();
    return (first == null || !day.isBefore(LocalDate.parse(first)))
        && (last == null || !day.isAfter(LocalDate.parse(last)));
  }

  private static boolean isBetween(PatchEntry e, String first, String end) {
    LocalDateTime at =
        e.patch().burnedAt().atZoneSameInstant(AskedLog.CLOCK.getZone()).toLocalDateTime();
    return (first == null || !at.isBefore(LocalDateTime.parse(first)))
        && (end == null || at.isBefore(LocalDateTime.parse(end)));
  }

  private Predicate<PatchEntry> attribute(String word) {
    int colon = word.indexOf(':');
    if (colon < 0) {
      return e -> e.patch().finish().family().equals(word) || isWood(e, word);
    }
    String name = word.substring(colon + 1).strip();
    return switch (word.substring(0, colon)) {
      case "wood" -> e -> e.patch().board().wood().equals(name);
      case "rig" -> e -> e.patch().rig().name().contains(name);
      case "board" -> e -> e.patch().board().name().contains(name);
      case "finish" -> e -> e.patch().finish().name().contains(name);
      case "job" -> e -> e.patch().board().job().filter(name::equals).isPresent();
      case "by" -> e -> e.by().filter(name::equals).isPresent();
      case "judged" ->
          e -> e.patch().readings().stream().anyMatch(r -> r.by().filter(name::equals).isPresent());
      case "noted" -> e -> notes(e).anyMatch(n -> n.contains(name));
      case "condition" ->
          e -> e.patch().board().condition().filter(c -> c.contains(name)).isPresent();
      case "coat" -> e -> coats(e).contains(name);
      case "under" -> e -> coats(e).indexOf(name) > 0;
      case "stack" -> e -> coats(e).equals(List.of(name.split(" over ")));
      case "top" -> e -> coats(e).get(0).equals(name);
      default -> throw new IllegalArgumentException("no rule: " + word);
    };
  }

  private static List<String> coats(PatchEntry e) {
    List<String> coats = e.patch().finish().coats().stream().map(Coat::family).toList();
    return coats.isEmpty() ? List.of(e.patch().finish().family()) : coats;
  }

  private boolean isWood(PatchEntry e, String word) {
    WoodFacts wood = wood(e);
    return wood.name().equals(word) || wood.generic().filter(word::equals).isPresent();
  }

  /** And, or, not and brackets. */
  private final class Rule {
    private final String text;
    private int at;

    Rule(String text) {
      this.text = text.strip();
    }

    Predicate<PatchEntry> read() {
      Predicate<PatchEntry> all = any();
      if (at < text.length()) {
        throw new IllegalArgumentException("no rule: " + text);
      }
      return all;
    }

    private Predicate<PatchEntry> any() {
      Predicate<PatchEntry> left = all();
      while (take('|')) {
        left = left.or(all());
      }
      return left;
    }

    private Predicate<PatchEntry> all() {
      Predicate<PatchEntry> left = one();
      while (take('&')) {
        left = left.and(one());
      }
      return left;
    }

    private Predicate<PatchEntry> one() {
      if (take('!')) {
        return one().negate();
      }
      if (take('(')) {
        Predicate<PatchEntry> inner = any();
        if (!take(')')) {
          throw new IllegalArgumentException("bracket open: " + text);
        }
        return inner;
      }
      int from = at;
      while (at < text.length() && "&|()".indexOf(text.charAt(at)) < 0) {
        at++;
      }
      return atom(text.substring(from, at));
    }

    private boolean take(char sign) {
      while (at < text.length() && text.charAt(at) == ' ') {
        at++;
      }
      if (at < text.length() && text.charAt(at) == sign) {
        at++;
        return true;
      }
      return false;
    }
  }
}
