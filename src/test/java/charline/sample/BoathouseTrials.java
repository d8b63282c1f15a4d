package charline.sample;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;

/**
 * Makes the trial sheets of sample-trials from {@link BoathouseScenarios}: the same bytes every
 * time. Run {@code main} from the top of the project to write them anew.
 */
public final class BoathouseTrials {
  private static final String HEADINGS =
      "patch,burned_at,rig,board,wood,finish,family,tone,power_pct,power_w,rep_khz,pulse_ns,"
          + "spot_mm,scan_mm_s,spacing_mm,width_mm,hand_mm_s,area_cm2,seconds,passes,outcome,soot,"
          + "depth_um,by,note,patch_cm2,form,moisture_pct,job,coats";
  private static final int PER_RUNG = 4;
  private static final int CONTROL_EVERY = 8;
  private static final ZoneId ZONE = ZoneId.of("CET");
  private static final String[] PEOPLE = {"Runa", "Edvin"};

  private BoathouseTrials() {}

  /** Writes every sheet into a folder, sample-trials unless another is named. */
  public static void main(String[] args) throws IOException {
    Path folder = Path.of(args.length > 0 ? args[0] : "sample-trials");
    for (Map.Entry<String, String> sheet : sheets().entrySet()) {
      Files.writeString(folder.resolve(sheet.getKey()), sheet.getValue(), StandardCharsets.UTF_8);
    }
  }

  /** Every sheet by its file name. */
  static Map<String, String> sheets() {
    Map<String, String> sheets = new LinkedHashMap<>();
    BoathouseScenarios.all().forEach(s -> sheets.put(s.file(), new Bench(s).sheet()));
    return sheets;
  }

  private record Setting(double percent, double hand, double dose) {}

  /** One scenario being burned. */
  private static final class Bench {
    private final SampleScenario scenario;
    private final Random random;
    private final double[] charShift;
    private final double[] clearShift;
    private final StringBuilder text = new StringBuilder(HEADINGS).append('\n');

    Bench(SampleScenario scenario) {
      this.scenario = scenario;
      this.random = new Random(scenario.seed());
      this.charShift = shifts();
      this.clearShift = shifts();
    }

    private double[] shifts() {
      double[] shifts = new double[scenario.boards().size()];
      Arrays.setAll(shifts, i -> random.nextGaussian());
      return shifts;
    }

    String sheet() {
      List<Setting> order = order();
      Setting control = nearest(StrictMath.sqrt(scenario.lowest() * scenario.highest()));
      int days = scenario.days().size();
      int perDay = (order.size() + days - 1) / days;
      LocalDateTime clock = null;
      for (int i = 0; i < order.size(); i++) {
        if (i % perDay == 0) {
          clock = morning(scenario.days().get(i / perDay));
        }
        boolean isControl = scenario.patches() > CONTROL_EVERY && i % CONTROL_EVERY == 7;
        Setting setting = isControl ? control : order.get(i);
        clock = burn(i, setting, isControl, clock);
      }
      return text.toString();
    }

    private LocalDateTime morning(LocalDate day) {
      return day.atTime(8, 40).plusMinutes(random.nextInt(35));
    }

    /** Rungs from low to high; inside a rung any order, so that drift does not look like dose. */
    private List<Setting> order() {
      int rungs = (scenario.patches() + PER_RUNG - 1) / PER_RUNG;
      double step = StrictMath.log(scenario.highest() / scenario.lowest()) / rungs;
      List<Setting> order = new ArrayList<>();
      for (int rung = 0; rung < rungs; rung++) {
        List<Setting> inside = new ArrayList<>();
        for (int k = 0; k < PER_RUNG; k++) {
          double at = (rung + (k + random.nextDouble()) / PER_RUNG) * step;
          inside.add(drawNear(scenario.lowest() * StrictMath.exp(at), order, inside));
        }
        Collections.shuffle(inside, random);
        order.addAll(inside);
      }
      return order.subList(0, scenario.patches());
    }

    /** One of the settings closest in dose, one not used yet where there is one. */
    private Setting drawNear(double dose, List<Setting> used, List<Setting> inside) {
      List<Setting> close = byDistance(dose).subList(0, 5);
      List<Setting> fresh =
          close.stream().filter(s -> !used.contains(s) && !inside.contains(s)).toList();
      List<Setting> from = fresh.isEmpty() ? close : fresh;
      return from.get(random.nextInt(from.size()));
    }

    private Setting nearest(double dose) {
      return byDistance(dose).get(0);
    }

    private List<Setting> byDistance(double dose) {
      List<Setting> grid = new ArrayList<>();
      for (double percent : scenario.powers()) {
        for (double hand : scenario.hands()) {
          grid.add(new Setting(percent, hand, scenario.rig().dose(percent, hand)));
        }
      }
      grid.sort(Comparator.comparingDouble(s -> Math.abs(StrictMath.log(s.dose() / dose))));
      return grid;
    }

    private LocalDateTime burn(int index, Setting setting, boolean control, LocalDateTime start) {
      int board = index % scenario.boards().size();
      double intensity =
          scenario.rig().intensity(setting.percent(), scenario.repetitionKilohertz());
      double lnRelative = StrictMath.log(intensity / scenario.intensity());
      double lnDose = StrictMath.log(setting.dose());
      int charAt =
          (int) scenario.charring().firstPass(lnDose, lnRelative, charShift[board], logistic());
      int clearAt =
          (int) scenario.clearing().firstPass(lnDose, lnRelative, clearShift[board], logistic());
      int last = Math.min(scenario.mostPasses(), charAt);
      String person = PEOPLE[(index / 6) % 2];
      boolean tinted = random.nextDouble() < scenario.tint();
      boolean noted = random.nextInt(4) == 0;
      int length = 45 + 5 * random.nextInt(3);
      LocalDateTime clock = start;
      for (int pass = 1; pass <= last; pass++) {
        boolean charred = pass >= charAt;
        boolean cleared = pass >= clearAt;
        boolean tint = !cleared && tinted && pass >= clearAt - 1;
        String outcome = outcome(charred, cleared, tint);
        Map<String, String> cells = new LinkedHashMap<>();
        Arrays.stream(HEADINGS.split(",")).forEach(h -> cells.put(h, ""));
        cells.put("patch", "%s-%02d".formatted(scenario.prefix(), index + 1));
        cells.put("burned_at", moment(clock));
        cells.put("rig", scenario.rig().name());
        cells.put("board", scenario.boards().get(board).name());
        cells.put("wood", scenario.wood());
        cells.put("finish", scenario.finish());
        cells.put("family", scenario.family());
        cells.put("tone", scenario.tone());
        cells.put("power_pct", number(setting.percent()));
        if (scenario.repetitionKilohertz() > 0) {
          cells.put("rep_khz", number(scenario.repetitionKilohertz()));
          cells.put("pulse_ns", "100");
        }
        cells.put("spot_mm", number(scenario.rig().spotMillimetres()));
        cells.put("width_mm", number(scenario.rig().widthMillimetres()));
        cells.put("hand_mm_s", number(setting.hand()));
        cells.put("passes", Integer.toString(pass));
        cells.put("outcome", outcome);
        cells.put("soot", soot(charred));
        cells.put("depth_um", depth(setting, intensity, pass, cleared || charred || tint));
        cells.put("by", person);
        cells.put(
            "note", note(control && pass == 1, noted && pass == last, charred, cleared, tint));
        cells.put("patch_cm2", number(scenario.rig().widthMillimetres() * length / 100));
        cells.put("form", scenario.form());
        cells.put("moisture_pct", number(scenario.boards().get(board).moisture()));
        cells.put("job", "boathouse");
        cells.put("coats", scenario.coats());
        text.append(String.join(",", cells.values())).append('\n');
        clock = clock.plusMinutes(5 + random.nextInt(4));
      }
      return clock.plusMinutes(2 + random.nextInt(5));
    }

    private static String outcome(boolean charred, boolean cleared, boolean tint) {
      if (cleared) {
        return charred ? "char" : "clean";
      }
      if (tint) {
        return charred ? "tint+char" : "tint";
      }
      return charred ? "char+residue" : "residue";
    }

    /** Soot is looked for now and then, and mostly found beside char. */
    private String soot(boolean charred) {
      int draw = random.nextInt(10);
      if (charred) {
        return draw < 5 ? "yes" : "";
      }
      return draw == 0 ? "yes" : draw == 1 ? "no" : "";
    }

    /**
     * Depth by gauge on patches that still have finish on them, not a tint alone, with a twentieth
     * of reading error.
     */
    private String depth(Setting setting, double intensity, int pass, boolean gone) {
      double error = 1 + 0.05 * random.nextGaussian();
      SampleScenario.DepthLaw law = scenario.depthLaw();
      if (law == null || gone) {
        return "";
      }
      double pulses = pass * setting.dose() / intensity;
      double depth =
          pulses
              * law.slopeMicrometres()
              * Math.max(0, StrictMath.log(intensity / law.thresholdJoulesPerCm2()))
              * error;
      return depth < 1 || depth > law.filmMicrometres() - 3 ? "" : number(Math.rint(depth));
    }

    private String note(
        boolean control, boolean noted, boolean charred, boolean cleared, boolean tint) {
      if (control) {
        return "control";
      }
      if (!noted) {
        return "";
      }
      String[] words =
          charred
              ? new String[] {
                "first brown at the far end", "browned along the late wood", "stopped here"
              }
              : cleared
                  ? new String[] {
                    "bare and bright", "wiped twice and nothing on the cloth", "good all over"
                  }
                  : tint
                      ? new String[] {"colour left in the grain", "pores still show"}
                      : new String[] {
                        "ghost of the last coat", "hardly touched it", "patchy near the edge"
                      };
      return words[random.nextInt(words.length)];
    }

    private double logistic() {
      double u = random.nextDouble();
      return StrictMath.log(u / (1 - u));
    }
  }

  private static String moment(LocalDateTime local) {
    return DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mmxxx", Locale.ROOT)
        .format(local.atZone(ZONE));
  }

  private static String number(double value) {
    return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
  }
}
