package charline.cli;

import static charline.cli.Shell.part;
import static org.assertj.core.api.Assertions.assertThat;

import charline.answer.LogFitter;
import charline.answer.Priors;
import charline.answer.Strata;
import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.model.Event;
import charline.model.ModelFit;
import charline.model.Trials;
import charline.plan.InventedShop;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.trial.Rig;
import charline.trial.Stratum;
import charline.window.Box;
import charline.window.CharredSpots;
import charline.window.Forecast;
import charline.window.JobRisk;
import charline.window.Recommendation;
import charline.window.Requirements;
import charline.window.RigSetup;
import charline.window.Strokes;
import charline.window.WindowFinder;
import charline.wording.Printed;
import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every bound that a person or a program reads is true: an upper bound is never printed below the
 * exact one, a lower bound never above it, and a range never reaches outside. Seen on the sample
 * trials and on two simulated shops: on the terminal, on the sheet, on the bench list and in JSON.
 */
class PrintedBoundsPropertyTest {
  private static final Path SAMPLES = Path.of("sample-trials");
  private static final OffsetDateTime NOW = OffsetDateTime.parse("2026-11-01T10:00:00+01:00");
  private static final double AREA = 4.5;

  @TempDir static Path folder;
  private static final Map<String, Seen> ANSWERS = new LinkedHashMap<>();

  /**
   * One stratum with its exact answer.
   *
   * @param shell where its log is
   * @param words coating and wood
   */
  record Seen(Shell shell, String words, Trials trials, Recommendation found) {
    String run(String command) {
      Shell.Result result = shell.run(command);
      assertThat(result.err()).as(command).isEmpty();
      return result.out();
    }

    /** Folded lines as one, so that a sentence may be looked for. */
    String flat(String command) {
      return run(command).replaceAll("\\s+", " ");
    }

    Map<String, Object> json(String command) {
      try {
        return JSON.std.with(JSON.Feature.USE_BIG_DECIMAL_FOR_FLOATS).mapFrom(run(command));
      } catch (IOException e) {
        throw new AssertionError(e);
      }
    }
  }

  @BeforeAll
  static void answer_every_stratum() throws IOException {
    Path own = Files.createDirectory(folder.resolve("samples"));
    Shell shell = new Shell(own).at("2026-11-01T09:00:00Z");
    try (Stream<Path> files = Files.list(SAMPLES)) {
      String sheets =
          files
              .map(Path::toString)
              .filter(name -> name.contains("-on-") && name.endsWith(".csv"))
              .sorted()
              .collect(Collectors.joining(" "));
      shell.mustDo(
          "import %s --rigs %s --power-checks %s"
              .formatted(sheets, SAMPLES.resolve("rigs.csv"), SAMPLES.resolve("power-checks.csv")));
    }
    add("sample", shell, own);
    shop(1, 1.0, 0.1);
    shop(2, 0.6, 0.3);
  }

  private static void shop(int number, double gap, double spread) throws IOException {
    InventedShop shop = InventedShop.draw(gap, spread, number);
    Random random = new Random(number);
    StringBuilder sheet =
        new StringBuilder("patch,burned_at,rig,board,wood,finish,family,power_pct");
    sheet.append(",rep_khz,pulse_ns,spot_mm,width_mm,hand_mm_s,passes,outcome,patch_cm2\n");
    for (int k = 0; k < 30; k++) {
      double power = 30 + 10 * random.nextInt(5);
      double hand = 10 + random.nextInt(40);
      Patch patch = shop.burn(InventedShop.BENCH.settings(power, hand), k % 5, 4);
      for (Reading reading : patch.readings()) {
        sheet.append(
            "%s,%s,Heron,%s,pine,shutter,latex,%s,40,100,0.6,60,%s,%d,%s,25\n"
                .formatted(
                    patch.code(),
                    patch.burnedAt(),
                    patch.board().name(),
                    power,
                    hand,
                    reading.passes(),
                    reading.outcome().text()));
      }
    }
    Path own = Files.createDirectory(folder.resolve("shop" + number));
    Files.writeString(own.resolve("trials.csv"), sheet);
    Shell shell = new Shell(own).at("2026-12-01T09:00:00Z");
    shell.mustDo("rig add Heron --kind pulsed --rated 200W --spot 0.6mm --rep 40kHz --width 60mm");
    shell.mustDo("import %s --sure".formatted(own.resolve("trials.csv")));
    add("shop " + number, shell, own);
  }

  private static void add(String where, Shell shell, Path own) {
    try (Logbook log =
        Logbook.openExisting(
            own.resolve("boathouse.db"),
            Clock.fixed(Instant.parse("2026-11-01T09:00:00Z"), ZoneId.of("Europe/Berlin")))) {
      Map<Stratum, List<Patch>> strata =
          log.patches(Filter.ALL).stream()
              .map(PatchEntry::patch)
              .collect(Collectors.groupingBy(Stratum::of, LinkedHashMap::new, Collectors.toList()));
      LogFitter fitting = new LogFitter(Strata.of(log));
      strata.forEach(
          (stratum, patches) -> {
            Rig rig = log.rig(RigSetup.mostUsedRig(patches).name());
            Trials trials = new Trials(stratum, patches, false);
            Recommendation found =
                new WindowFinder(fitting.fitter(trials, Priors.USUAL, false))
                    .recommend(
                        trials,
                        RigSetup.of(rig, patches, NOW).withStrokes(Strokes.USUAL),
                        Requirements.USUAL);
            String words = stratum.family() + " " + stratum.wood() + " --rig " + rig.name();
            ANSWERS.put(where + ", " + words, new Seen(shell, words, trials, found));
          });
    }
  }

  static List<String> answers() {
    return List.copyOf(ANSWERS.keySet());
  }

  static List<String> windows() {
    return ANSWERS.entrySet().stream()
        .filter(e -> e.getValue().found().chosen().isPresent())
        .map(Map.Entry::getKey)
        .toList();
  }

  /** One stratum of each verdict where there is one, as fits take their time. */
  static List<String> some() {
    Map<Object, String> one = new LinkedHashMap<>();
    ANSWERS.forEach((answer, seen) -> one.putIfAbsent(seen.found().verdict(), answer));
    return List.copyOf(one.values());
  }

  @Test
  void windows_and_other_verdicts_are_among_them() {
    assertThat(windows()).hasSizeGreaterThanOrEqualTo(3);
    assertThat(answers()).hasSizeGreaterThanOrEqualTo(windows().size() + 3);
  }

  @ParameterizedTest
  @MethodSource("windows")
  void a_window_on_the_terminal(String answer) {
    Seen seen = ANSWERS.get(answer);
    Box box = seen.found().chosen().orElseThrow();
    String text = seen.flat("window " + seen.words() + " --job-area " + AREA + "m2");
    List<Forecast> three = List.of(box.start(), box.hotCorner(), box.coldCorner());

    List<BigDecimal> upper = Printed.only(text, " at most # % # % # %", 3);
    List<BigDecimal> lower = Printed.only(text, " at least # % # % # %", 3);
    List<BigDecimal> spots = Printed.only(text, " at most # # # clearing chance", 3);
    for (int k = 0; k < 3; k++) {
      Printed.percentAtMost(answer, upper.get(k), three.get(k).charRiskUpper());
      Printed.percentAtLeast(answer, lower.get(k), three.get(k).clearChanceLower());
      Printed.atMost(answer, spots.get(k), seen.found().charredSpots(three.get(k)).upper());
    }
    List<BigDecimal> stay =
        Printed.only(text, "STAY power # to # %, (?:hand|scan) speed # to # mm/s", 4);
    inside(answer, stay, box);
    List<BigDecimal> other =
        Printed.numbers(
            text.replaceAll(".*Windows for other numbers of passes", ""), "(\\d+) # to # # to # #");
    for (int k = 0; k < seen.found().alternatives().size(); k++) {
      inside(answer, other.subList(6 * k + 1, 6 * k + 5), seen.found().alternatives().get(k));
    }
    JobRisk job = JobRisk.of(seen.found(), AREA).orElseThrow();
    List<BigDecimal> whole =
        Printed.only(
            text,
            "start setting (?:under |over )?# %, at most # %; expected charred areas #, at most"
                + " #\\.",
            4);
    Printed.percentAtMost(answer, whole.get(1), job.upper());
    Printed.atMost(answer, whole.get(3), job.marksUpper());
  }

  private static void inside(String answer, List<BigDecimal> printed, Box box) {
    Printed.inside(
        answer,
        printed.get(0),
        printed.get(1),
        box.powerPercent().low(),
        box.powerPercent().high());
    Printed.inside(
        answer,
        printed.get(2),
        printed.get(3),
        box.speedMillimetresPerSecond().low(),
        box.speedMillimetresPerSecond().high());
  }

  @ParameterizedTest
  @MethodSource("some")
  void a_window_in_json(String answer) {
    Seen seen = ANSWERS.get(answer);
    Shell.Result result =
        seen.shell().run("window " + seen.words() + " --json --job-area " + AREA + "m2");
    Map<String, Object> json = parsed(result.out());
    Optional<Box> box = seen.found().chosen();
    assertThat(json.get("start") == null).isEqualTo(box.isEmpty());
    box.ifPresent(
        b -> {
          forecast(answer, part(json, "start"), b.start(), seen.found());
          forecast(answer, part(json, "hot_corner"), b.hotCorner(), seen.found());
          forecast(answer, part(json, "cold_corner"), b.coldCorner(), seen.found());
          List<?> power = (List<?>) part(json, "ranges").get("power_pct");
          Printed.inside(
              answer,
              number(power.get(0)),
              number(power.get(1)),
              b.powerPercent().low(),
              b.powerPercent().high());
          JobRisk job = JobRisk.of(seen.found(), AREA).orElseThrow();
          Printed.atMost(answer, number(part(json, "job").get("any_char_upper")), job.upper());
          Printed.atMost(
              answer, number(part(json, "job").get("char_areas_upper")), job.marksUpper());
        });
    seen.found().charFit().ifPresent(fit -> model(answer, part(part(json, "models"), "char"), fit));
    seen.found()
        .clearingFit()
        .ifPresent(fit -> model(answer, part(part(json, "models"), "clearing"), fit));
  }

  private static void forecast(
      String answer, Map<String, Object> json, Forecast exact, Recommendation found) {
    Printed.atMost(
        answer,
        number(part(json, "charred_spots_per_m2").get("upper")),
        found.charredSpots(exact).upper());
    Printed.atMost(answer, number(json.get("char_risk_upper")), exact.charRiskUpper());
    Printed.atLeast(answer, number(json.get("clear_chance_lower")), exact.clearChanceLower());
  }

  private static void model(String answer, Map<String, Object> json, ModelFit fit) {
    Map.of(
            "tau", fit.tau(),
            "phi", fit.phi(),
            "psi", fit.psi(),
            "sigma", fit.sigma(),
            "omega", fit.omega(),
            "dose_even_j_cm2", fit.evenDoseJoulesPerCm2())
        .forEach(
            (key, estimate) -> {
              Printed.atLeast(
                  answer + " " + key, number(part(json, key).get("low")), estimate.low());
              Printed.atMost(
                  answer + " " + key, number(part(json, key).get("high")), estimate.high());
            });
  }

  @ParameterizedTest
  @MethodSource("some")
  void a_model_on_the_terminal(String answer) {
    Seen seen = ANSWERS.get(answer);
    model(answer, seen.flat("onset " + seen.words()), seen.found().charFit().orElseThrow());
    model(answer, seen.flat("removal " + seen.words()), seen.found().clearingFit().orElseThrow());
  }

  private static void model(String answer, String text, ModelFit fit) {
    Map.of(
            "even-chance dose", fit.evenDoseJoulesPerCm2(),
            " tau", fit.tau(),
            " phi", fit.phi(),
            " psi", fit.psi(),
            " sigma", fit.sigma(),
            " omega", fit.omega())
        .forEach(
            (row, estimate) -> {
              List<BigDecimal> printed = Printed.only(text, row + " # # to # [a-zA-Z]", 3);
              Printed.atLeast(answer + row, printed.get(1), estimate.low());
              Printed.atMost(answer + row, printed.get(2), estimate.high());
            });
    double lnIntensity = Math.log(fit.referenceIntensity());
    if (fit.event() == Event.CHAR) {
      Printed.atLeast(
          answer,
          Printed.only(text, "Up to # J/cm2 in one pass", 1).get(0),
          Math.exp(fit.lnPromisedDose(0.05, 0.9, lnIntensity, 1)));
    } else {
      Printed.atMost(
          answer,
          Printed.only(text, "From # J/cm2 in one pass", 1).get(0),
          Math.exp(fit.lnPromisedDose(0.9, 0.9, lnIntensity, 1)));
    }
  }

  @ParameterizedTest
  @MethodSource("some")
  void checks_and_rates_on_the_terminal(String answer) {
    Seen seen = ANSWERS.get(answer);
    Map<String, Object> json = seen.json("removal " + seen.words() + " --json");
    String text = seen.flat("removal " + seen.words());
    List<BigDecimal> shares = Printed.numbers(text, "# % \\d+ \\d+ # % to # %");
    List<Map<String, Object>> bins = list(part(json, "checks"), "calibration");
    for (int k = 0; k < shares.size() / 3; k++) {
      Printed.percentAtLeast(
          answer, shares.get(3 * k + 1), number(bins.get(k).get("low")).doubleValue());
      Printed.percentAtMost(
          answer, shares.get(3 * k + 2), number(bins.get(k).get("high")).doubleValue());
    }
    List<BigDecimal> passes = Printed.numbers(text, "(?:>|) ?# \\(#-#\\)");
    List<Map<String, Object>> rates = list(json, "rates");
    if (passes.size() == 6 * rates.size()) {
      for (int k = 0; k < rates.size(); k++) {
        for (int column = 0; column < 2; column++) {
          Map<String, Object> exact =
              part(rates.get(k), column == 0 ? "passes_median" : "passes_for_90_pct");
          Printed.atLeast(
              answer, passes.get(6 * k + 3 * column + 1), number(exact.get("low")).doubleValue());
          Printed.atMost(
              answer, passes.get(6 * k + 3 * column + 2), number(exact.get("high")).doubleValue());
        }
      }
    }
  }

  @ParameterizedTest
  @MethodSource("some")
  void what_to_burn_next_on_the_terminal_and_on_the_bench_list(String answer) throws IOException {
    Seen seen = ANSWERS.get(answer);
    String next = "next " + seen.words() + " --count 4";
    Map<String, Object> json = parsed(seen.shell().run(next + " --json").out());
    List<BigDecimal> exact =
        list(json, "patches").stream().map(p -> number(p.get("char_risk_upper"))).toList();
    String text = seen.shell().run(next).out().replaceAll("\\s+", " ");
    compare(answer, Printed.numbers(text, "char risk [^;]*?, at most # %"), exact);
    List<BigDecimal> spots = Printed.numbers(text, "charred spots per m², at most #");
    assertThat(spots).hasSameSizeAs(exact);
    for (int k = 0; k < spots.size(); k++) {
      Printed.atMost(
          answer,
          spots.get(k),
          CharredSpots.of(seen.found().patchSquareCentimetres(), 0, exact.get(k).doubleValue())
              .upper());
    }
    if (exact.isEmpty()) {
      return;
    }
    Path list = folder.resolve("list" + Math.abs(answer.hashCode()) + ".html");
    assertThat(seen.shell().run(next + " --to " + list).code()).isZero();
    compare(
        answer, Printed.numbers(Files.readString(list), "char risk [^;<]*?, at most # %"), exact);
  }

  private static void compare(String answer, List<BigDecimal> printed, List<BigDecimal> exact) {
    assertThat(printed).as(answer).hasSameSizeAs(exact);
    for (int k = 0; k < printed.size(); k++) {
      Printed.percentAtMost(answer, printed.get(k), exact.get(k).doubleValue());
    }
  }

  @ParameterizedTest
  @MethodSource("windows")
  void a_sheet(String answer) throws IOException {
    Seen seen = ANSWERS.get(answer);
    Path sheet = folder.resolve("sheet" + Math.abs(answer.hashCode()) + ".html");
    seen.run("sheet " + seen.words() + " --job-area " + AREA + "m2 --to " + sheet);
    String html = Files.readString(sheet).replace("&nbsp;", " ");
    Box box = seen.found().chosen().orElseThrow();

    List<BigDecimal> start =
        Printed.only(
            html,
            "char [^;<]*, at most # % \\([^)]*, at most #\\); clears [^;<]*, at least # %",
            3);
    Printed.percentAtMost(answer, start.get(0), box.start().charRiskUpper());
    Printed.atMost(answer, start.get(1), seen.found().charredSpots(box.start()).upper());
    Printed.percentAtLeast(answer, start.get(2), box.start().clearChanceLower());
    List<BigDecimal> inside =
        Printed.only(
            html, "char at most # %, at most # spots per m² \\([^)]*\\); clears at least # %", 3);
    Printed.percentAtMost(answer, inside.get(0), box.hotCorner().charRiskUpper());
    Printed.atMost(answer, inside.get(1), seen.found().charredSpots(box.hotCorner()).upper());
    Printed.percentAtLeast(answer, inside.get(2), box.coldCorner().clearChanceLower());
    List<BigDecimal> stay = new ArrayList<>(Printed.only(html, "stay in # to # %", 2));
    stay.addAll(Printed.only(html, "stay in # to # mm/s", 2));
    inside(answer, stay, box);
    JobRisk job = JobRisk.of(seen.found(), AREA).orElseThrow();
    Printed.percentAtMost(
        answer, Printed.only(html, "any char [^;<]*, at most # %", 1).get(0), job.upper());
  }

  @ParameterizedTest
  @MethodSource("windows")
  void a_quote(String answer) {
    Seen seen = ANSWERS.get(answer);
    String quote = "quote " + seen.words() + " --area " + AREA + "m2";
    Map<String, Object> total = part(seen.json(quote + " --json"), "total");
    List<BigDecimal> hours = Printed.only(seen.flat(quote), "h, from # to # h", 2);
    Printed.atLeast(answer, hours.get(0), number(total.get("low_h")).doubleValue());
    Printed.atMost(answer, hours.get(1), number(total.get("high_h")).doubleValue());
  }

  @ParameterizedTest
  @MethodSource("some")
  void a_risk(String answer) {
    Seen seen = ANSWERS.get(answer);
    String risk = "risk " + seen.words() + " --power 60% --hand 25 --passes 2";
    Map<String, Object> json = parsed(seen.shell().run(risk + " --json").out());
    if (json.get("char_risk_upper") == null) {
      return;
    }
    double charring = number(json.get("char_risk_upper")).doubleValue();
    double clearing = number(json.get("clear_chance_lower")).doubleValue();
    String text = seen.shell().run(risk).out().replaceAll("\\s+", " ");
    Printed.percentAtMost(
        answer, Printed.only(text, "char risk [^;]*?at most # % charred", 1).get(0), charring);
    Printed.percentAtLeast(
        answer, Printed.only(text, "clearing chance [^;]*?at least # %", 1).get(0), clearing);
    Printed.atMost(
        answer,
        Printed.only(text, "charred spots per m² # at most #", 2).get(1),
        number(part(json, "charred_spots_per_m2").get("upper")).doubleValue());
    List<BigDecimal> chars = Printed.numbers(text, "May char up to # in # areas");
    if (!chars.isEmpty()) {
      assertThat(chars.get(0).doubleValue() / chars.get(1).doubleValue())
          .as(answer)
          .isGreaterThanOrEqualTo(charring);
    }
    List<BigDecimal> clears = Printed.numbers(text, "; clears at least # in #");
    if (!clears.isEmpty()) {
      assertThat(clears.get(0).doubleValue() / clears.get(1).doubleValue())
          .as(answer)
          .isLessThanOrEqualTo(clearing);
    }
  }

  @ParameterizedTest
  @MethodSource("some")
  void what_a_piece_changed(String answer) {
    Seen seen = ANSWERS.get(answer);
    String board = seen.trials().patches().get(0).board().name();
    String window = "onset " + seen.words() + " --piece \"" + board + "\"";
    Map<String, Object> piece = part(parsed(seen.shell().run(window + " --json").out()), "piece");
    Map<String, Object> shift = part(piece, "shift");
    List<BigDecimal> printed =
        Printed.only(
            seen.shell().run(window).out().replaceAll("\\s+", " "),
            "takes # times \\(# to #\\) the dose",
            3);
    Printed.atLeast(answer, printed.get(1), number(shift.get("low")).doubleValue());
    Printed.atMost(answer, printed.get(2), number(shift.get("high")).doubleValue());
  }

  private static Map<String, Object> parsed(String text) {
    try {
      return JSON.std.with(JSON.Feature.USE_BIG_DECIMAL_FOR_FLOATS).mapFrom(text);
    } catch (IOException e) {
      throw new AssertionError(text, e);
    }
  }

  @SuppressWarnings("unchecked")
  private static List<Map<String, Object>> list(Map<String, Object> json, String key) {
    return (List<Map<String, Object>>) json.get(key);
  }

  private static BigDecimal number(Object value) {
    return new BigDecimal(value.toString());
  }
}
