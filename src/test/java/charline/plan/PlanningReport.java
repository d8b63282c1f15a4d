package charline.plan;

import charline.exposure.Invariant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.commons.math3.distribution.BinomialDistribution;

/**
 * The planning report.
 *
 * @param campaigns by gap, number and manner
 * @param shops how many of each kind
 */
record PlanningReport(Map<String, Campaign> campaigns, int shops) {
  static final double[] GAPS = {0.6, 1.0};
  private static final double SQUARE_CENTIMETRES = 25;

  private static final String HEAD =
      """
      # Which patches to burn next: simulated shops

      Regenerate with `mvn -Pplanning test-compile exec:java`. Every number here is a simulation of
      invented shops; none was measured. Same shops, same numbers.

      Each shop has true laws of char and clearing that the planner does not know: even-chance doses
      about the middle of a dial of 200 W, weights of intensity and passes, transition widths and board
      shifts (sd 0.15 in ln dose) drawn per shop. The gap is ln of the dose that chars 5 % over the
      dose that clears 90 %, after two passes at 60 % power on an average board. A window is looked for after
      every patch (char risk 5 %, clearing 90 %, confidence 90 %) and the shop stops at the first one, after
      40 patches, or when told after at least 12 that there is none. All manners read a patch after each of up to
      four passes and stop at the first brown.

      - **next**: what `charline next` says, control patches included.
      - **ladder**: from the same first setting up by a quarter until the first brown, then on the next of three
        boards from three rungs below.
      - **grid** and **random**: five powers by five hand speeds laid about the true window, which no shop can
        know beforehand, cool first or in random order, from board to board. Neither keeps the ladder rule.

      "No window" counts as more than 40 patches in the median and quartiles. Wood is 25 cm2 a patch. A
      promise is kept if, by the true laws, the hot corner chars at most 5 % and the cold corner clears at least 90 % on
      a new board; two promises of 90 % each, taken at the first moment that the trials allow, leave room for up to
      two in ten broken.
      """;

  private static final String TAIL =
      """

      ## What was tried

      On other shops than those above:

      - Spread of the two dose limits over all powers as candidates: it wandered from power to power, since every
        intensity has more to teach, and needed about twice the patches at a gap of e^0.6. One power, that of most
        patches, is now kept as long as a hand can keep to the speeds it asks for.
      - The same score from the first patch on: it burned half rungs and went back for repeats while the onset was
        far above. As long as nothing has charred and the promises collide, the next whole rung is taken instead.
      """;

  String text() {
    StringBuilder text = new StringBuilder(HEAD);
    for (double gap : GAPS) {
      text.append("\n## Gap e^%s, %d shops\n\n".formatted(Invariant.plain(gap), shops));
      text.append(
          "| manner | patches, median | quartiles | window found | promises kept | wood, median cm2 | charred, mean | ladder broken |\n");
      text.append("| --- | --- | --- | --- | --- | --- | --- | --- |\n");
      for (Manner manner : Manner.values()) {
        text.append(row(gap, manner));
      }
      text.append('\n').append(verdict(gap)).append(' ').append(promises(gap)).append('\n');
    }
    return text.append(TAIL).toString();
  }

  private List<Campaign> of(double gap, Manner manner) {
    List<Campaign> all = new ArrayList<>();
    for (int number = PlanningStudy.FIRST_SHOP;
        number < PlanningStudy.FIRST_SHOP + shops;
        number++) {
      all.add(campaigns.get(new PlanningStudy.Task(gap, number, manner).key()));
    }
    return all;
  }

  private String row(double gap, Manner manner) {
    List<Campaign> all = of(gap, manner);
    long found = all.stream().filter(Campaign::found).count();
    long kept = all.stream().filter(c -> c.found() && c.kept()).count();
    double median = quantile(all, 0.5);
    return "| %s | %s | %s to %s | %d of %d | %d of %d | %s | %s | %d of %d |\n"
        .formatted(
            manner.name().toLowerCase(Locale.ROOT),
            shown(median),
            shown(quantile(all, 0.25)),
            shown(quantile(all, 0.75)),
            found,
            shops,
            kept,
            found,
            median > Campaign.MOST
                ? "above " + Invariant.plain(Campaign.MOST * SQUARE_CENTIMETRES)
                : Invariant.plain(median * SQUARE_CENTIMETRES),
            String.format(
                Locale.ROOT, "%.1f", all.stream().mapToInt(Campaign::charred).average().orElse(0)),
            all.stream().filter(Campaign::broken).count(),
            shops);
  }

  private String verdict(double gap) {
    double next = quantile(of(gap, Manner.NEXT), 0.5);
    double ladder = quantile(of(gap, Manner.LADDER), 0.5);
    if (next > Campaign.MOST) {
      return "Goal (at most 70 % of the ladder's median): not reached; half of the shops found no window.";
    }
    boolean censored = ladder > Campaign.MOST;
    double share = next / Math.min(ladder, Campaign.MOST);
    return "Goal (at most 70 %% of the ladder's median): %s, %s%.0f %%."
        .formatted(
            share <= 0.7 ? "reached" : "not reached", censored ? "at most " : "", 100 * share);
  }

  /** Whether the broken promises of the planner are more than two in ten may well bring. */
  private String promises(double gap) {
    List<Campaign> found = of(gap, Manner.NEXT).stream().filter(Campaign::found).toList();
    int broken = (int) found.stream().filter(c -> !c.kept()).count();
    double chance =
        1 - new BinomialDistribution(null, found.size(), 0.2).cumulativeProbability(broken - 1);
    return "Of the windows found by next %d of %d broke a promise; if two in ten may, so many or more come with a chance of %s."
        .formatted(broken, found.size(), String.format(Locale.ROOT, "%.0f %%", 100 * chance));
  }

  private static double quantile(List<Campaign> all, double share) {
    List<Integer> counts =
        all.stream().map(c -> c.found() ? c.patches() : Campaign.MOST + 1).sorted().toList();
    double at = share * (counts.size() - 1);
    int low = (int) Math.floor(at);
    int high = (int) Math.ceil(at);
    return at > low && counts.get(high) > Campaign.MOST
        ? Campaign.MOST + 1 // not known how far above
        : counts.get(low) + (at - low) * (counts.get(high) - counts.get(low));
  }

  private static String shown(double patches) {
    return patches > Campaign.MOST ? "above 40" : Invariant.plain(patches);
  }
}
