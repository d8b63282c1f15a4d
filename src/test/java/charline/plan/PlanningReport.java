package charline.plan;

import charline.quantity.Figures;
import charline.shops.MarkdownTable;
import charline.shops.Scenario;
import charline.shops.Share;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * {@code planning.md}. What people wrote comes from {@code src/test/resources/planning}; every
 * number is counted here.
 *
 * @param campaigns all of them
 * @param few shops of each scenario beyond the goal
 * @param cores that ran them
 */
record PlanningReport(Campaigns campaigns, int few, int cores) {
  private static final double SQUARE_CENTIMETRES = 25;

  /** Of the ladder's median. */
  private static final double GOAL = 0.7;

  /** Promises that 90 % confidence lets break. */
  private static final double ALLOWED = 0.1;

  String text() throws IOException {
    List<Campaign> all =
        PlanningStudy.all().stream()
            .flatMap(s -> Stream.of(Manner.values()).flatMap(m -> of(s, m).stream()))
            .toList();
    double minutes = all.stream().mapToDouble(Campaign::seconds).sum() / 60 / cores;
    StringBuilder text = new StringBuilder();
    text.append(
        said("opening.md")
            .replace("{campaigns}", String.valueOf(all.size()))
            .replace("{shops}", String.valueOf(all.size() / Manner.values().length))
            .replace("{kinds}", String.valueOf(PlanningStudy.all().size()))
            .replace("{run}", number("%.0f minutes on %d shared cores", minutes, cores))
            .replace("{few}", String.valueOf(few))
            .replace("{first}", String.valueOf(PlanningStudy.FIRST_SHOP))
            .replace("{most}", String.valueOf(Campaign.MOST))
            .replace("{next medians}", medians(Manner.NEXT))
            .replace("{ladder medians}", medians(Manner.LADDER))
            .replace("{log medians}", medians(Manner.LOG))
            .replace("{borrow medians}", medians(Manner.BORROW))
            .replace("{next broken}", eitherBroken(PlanningStudy.goal()))
            .replace("{others broken}", eitherBroken(PlanningStudy.others()))
            .replace("{next against ladder}", saved(Manner.NEXT, Manner.LADDER).words())
            .replace("{log saves}", saved(Manner.LOG, Manner.NEXT).words())
            .replace("{borrow saves}", saved(Manner.BORROW, Manner.LOG).words())
            .replace("{next in others}", found(PlanningStudy.others(), Manner.NEXT))
            .replace("{ladder in others}", found(PlanningStudy.others(), Manner.LADDER)));
    section(text, "What came out otherwise", said("surprises.md"));
    section(text, "What a log and `--borrow` buy", bought());
    section(text, "The goal", goal());
    for (Scenario scenario : PlanningStudy.goal()) {
      section(text, title(scenario), table(List.of(scenario)));
    }
    section(
        text,
        "Where something differs from what the planner assumes",
        "%d shops of each kind, so single rows say little.\n\n".formatted(few)
            + table(PlanningStudy.others()));
    section(text, "All shops together", pooled());
    section(text, "What was tried", said("tried.md"));
    return text.toString();
  }

  private static void section(StringBuilder text, String title, String body) {
    text.append("\n## ").append(title).append("\n\n").append(body.strip()).append('\n');
  }

  private static String said(String name) throws IOException {
    try (InputStream in = PlanningReport.class.getResourceAsStream("/planning/" + name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private List<Campaign> of(Scenario scenario, Manner manner) {
    return campaigns.of(scenario, manner, PlanningStudy.shops(scenario, few));
  }

  private String title(Scenario scenario) {
    return "%s, %d shops"
        .formatted(
            Character.toUpperCase(scenario.title().charAt(0)) + scenario.title().substring(1),
            PlanningStudy.shops(scenario, few));
  }

  /** Medians in the shops of the goal, the widest gap first: "12, 15 and above 30". */
  private String medians(Manner manner) {
    List<String> all =
        PlanningStudy.goal().stream()
            .sorted(Comparator.comparingDouble(Scenario::gap).reversed())
            .map(s -> shown(quantile(of(s, manner), 0.5)))
            .toList();
    int last = all.size() - 1;
    return String.join(", ", all.subList(0, last)) + " and " + all.get(last);
  }

  private String eitherBroken(List<Scenario> scenarios) {
    return broken(scenarios, Manner.NEXT, c -> c.charBroken() || c.clearingBroken()).words();
  }

  private String found(List<Scenario> scenarios, Manner manner) {
    List<Campaign> all = scenarios.stream().flatMap(s -> of(s, manner).stream()).toList();
    return all.stream().filter(Campaign::found).count() + " of " + all.size();
  }

  /** Shops of the goal in which one manner took fewer patches than another, and more. */
  private Saving saved(Manner one, Manner than) {
    return saved(PlanningStudy.goal(), one, than);
  }

  private Saving saved(List<Scenario> scenarios, Manner one, Manner than) {
    return Saving.of(
        scenarios.stream().flatMap(s -> of(s, one).stream()).toList(),
        scenarios.stream().flatMap(s -> of(s, than).stream()).toList());
  }

  private String bought() throws IOException {
    MarkdownTable table =
        new MarkdownTable(
            "shops",
            "manner",
            "instead of",
            ">fewer patches",
            ">more",
            ">same",
            ">p",
            ">saved, mean");
    for (boolean ofGoal : new boolean[] {true, false}) {
      List<Scenario> scenarios = ofGoal ? PlanningStudy.goal() : PlanningStudy.others();
      String shops = ofGoal ? "as the planner assumes" : "something differs";
      for (Manner[] pair :
          new Manner[][] {
            {Manner.LOG, Manner.NEXT}, {Manner.BORROW, Manner.LOG}, {Manner.NEXT, Manner.LADDER}
          }) {
        Saving saving = saved(scenarios, pair[0], pair[1]);
        table.row(
            shops,
            name(pair[0]),
            name(pair[1]),
            String.valueOf(saving.shops().more()),
            String.valueOf(saving.shops().fewer()),
            String.valueOf(saving.shops().same()),
            number("%.2g", saving.shops().byChance()),
            number("%.1f", saving.meanPatches()));
      }
    }
    return said("bought.md") + "\n" + table.text();
  }

  private String goal() {
    MarkdownTable table =
        new MarkdownTable(
            "gap",
            ">median, next",
            ">median, ladder",
            ">next of ladder",
            ">windows, next",
            ">windows, ladder",
            "goal");
    for (Scenario scenario : PlanningStudy.goal()) {
      double next = quantile(of(scenario, Manner.NEXT), 0.5);
      double ladder = quantile(of(scenario, Manner.LADDER), 0.5);
      boolean open = ladder > Campaign.MOST;
      double share = next / Math.min(ladder, Campaign.MOST);
      boolean found = next <= Campaign.MOST;
      table.row(
          "e^" + Figures.plain(scenario.gap()),
          shown(next),
          shown(ladder),
          found ? number("%s%.0f %%", open ? "at most " : "", 100 * share) : "unknown",
          found(scenario, Manner.NEXT),
          found(scenario, Manner.LADDER),
          found && share <= GOAL ? "reached" : "**not reached**");
    }
    return """
    At most 70 %% of the ladder's median patches, and no more broken promises than the confidence allows.

    %s
    Of the windows that `next` found in these shops, %s break the char promise and %s the clearing promise: %s.
    """
        .formatted(
            table.text(),
            broken(PlanningStudy.goal(), Manner.NEXT, Campaign::charBroken).words(),
            broken(PlanningStudy.goal(), Manner.NEXT, Campaign::clearingBroken).words(),
            Stream.<Predicate<Campaign>>of(Campaign::charBroken, Campaign::clearingBroken)
                    .anyMatch(
                        how -> broken(PlanningStudy.goal(), Manner.NEXT, how).surelyAbove(ALLOWED))
                ? "**more than one in ten**"
                : "not clearly more than one in ten");
  }

  private String table(List<Scenario> scenarios) {
    MarkdownTable table =
        new MarkdownTable(
            "true conditions",
            "manner",
            ">patches, median",
            ">quartiles",
            ">windows",
            ">char promise broken",
            ">clearing promise broken",
            ">wood, median cm2",
            ">readings, median",
            ">charred, mean",
            ">off the ladder");
    for (Scenario scenario : scenarios) {
      for (Manner manner : Manner.values()) {
        table.row(cells(scenario, manner));
      }
    }
    return table.text();
  }

  private String[] cells(Scenario scenario, Manner manner) {
    List<Campaign> all = of(scenario, manner);
    double median = quantile(all, 0.5);
    return new String[] {
      manner == Manner.NEXT ? scenario.title() : "",
      name(manner),
      shown(median),
      shown(quantile(all, 0.25)) + " to " + shown(quantile(all, 0.75)),
      found(scenario, manner),
      flagged(broken(List.of(scenario), manner, Campaign::charBroken)),
      flagged(broken(List.of(scenario), manner, Campaign::clearingBroken)),
      median > Campaign.MOST
          ? "above " + Figures.plain(Campaign.MOST * SQUARE_CENTIMETRES)
          : Figures.plain(median * SQUARE_CENTIMETRES),
      Figures.plain(
          middle(all.stream().mapToDouble(Campaign::readings).sorted().boxed().toList(), 0.5)),
      number("%.1f", all.stream().mapToInt(Campaign::charred).average().orElse(0)),
      all.stream().filter(Campaign::offLadder).count() + " of " + all.size()
    };
  }

  private String found(Scenario scenario, Manner manner) {
    List<Campaign> all = of(scenario, manner);
    return all.stream().filter(Campaign::found).count() + " of " + all.size();
  }

  private String pooled() {
    MarkdownTable table =
        new MarkdownTable(
            "manner",
            ">windows",
            ">char promise broken",
            ">clearing promise broken",
            ">patches a window",
            ">charred patches a window");
    List<Scenario> all = PlanningStudy.all();
    for (Manner manner : Manner.values()) {
      List<Campaign> run = all.stream().flatMap(s -> of(s, manner).stream()).toList();
      double found = run.stream().filter(Campaign::found).count();
      table.row(
          name(manner),
          number("%.0f of %d", found, run.size()),
          flagged(broken(all, manner, Campaign::charBroken)),
          flagged(broken(all, manner, Campaign::clearingBroken)),
          number("%.1f", run.stream().mapToInt(Campaign::patches).sum() / found),
          number("%.1f", run.stream().mapToInt(Campaign::charred).sum() / found));
    }
    return table.text();
  }

  private Share broken(List<Scenario> scenarios, Manner manner, Predicate<Campaign> how) {
    List<Campaign> found =
        scenarios.stream().flatMap(s -> of(s, manner).stream()).filter(Campaign::found).toList();
    return new Share((int) found.stream().filter(how).count(), found.size());
  }

  private static String flagged(Share share) {
    return share.surelyAbove(ALLOWED) ? "**" + share.words() + "**" : share.words();
  }

  private static String name(Manner manner) {
    return manner.name().toLowerCase(Locale.ROOT);
  }

  /** Of the patches until a window; above {@link Campaign#MOST} where it is not known how far. */
  static double quantile(List<Campaign> all, double share) {
    return middle(
        all.stream()
            .mapToDouble(c -> c.found() ? c.patches() : Double.POSITIVE_INFINITY)
            .sorted()
            .boxed()
            .toList(),
        share);
  }

  private static double middle(List<Double> rising, double share) {
    double at = share * (rising.size() - 1);
    double low = rising.get((int) Math.floor(at));
    double high = rising.get((int) Math.ceil(at));
    return low == high ? low : low + (at - Math.floor(at)) * (high - low);
  }

  private static String shown(double patches) {
    return patches > Campaign.MOST ? "above " + Campaign.MOST : Figures.plain(patches);
  }

  private static String number(String form, Object... values) {
    return String.format(Locale.ROOT, form, values);
  }
}
