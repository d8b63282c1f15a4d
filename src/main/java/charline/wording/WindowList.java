package charline.wording;

import static charline.quantity.Figures.plain;

import charline.answer.AllWindows;
import charline.quantity.Figures;
import charline.window.Box;
import charline.window.Recommendation;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** One line for each stratum of the log. */
public final class WindowList {
  private WindowList() {}

  /**
   * A line.
   *
   * @param found the answer
   * @param validity whether it may be used
   */
  record Line(Recommendation found, ApplicabilityText validity) {
    /**
     * A verdict that no window hangs on is not marked, and one that is not valid any more has no
     * standing.
     */
    private String verdict() {
      String mark = found.chosen().isPresent() ? validity.mark() : "";
      return VerdictText.of(found, validity.validity()) + (mark.isEmpty() ? "" : ", " + mark);
    }
  }

  /**
   * The list.
   *
   * @param record how this face records a sample
   * @param hints how what it suggests is done on this face
   */
  public static String of(AllWindows all, String record, FaceHints hints) {
    return text(
        all.barred(),
        record,
        hints,
        all.answers().stream()
            .map(answer -> new Line(answer.found(), ApplicabilityText.of(answer.applicability())))
            .toList());
  }

  private static String text(
      List<AllWindows.Barred> barred, String record, FaceHints hints, List<Line> all) {
    Table table =
        new Table("verdict", ">patches", ">power %", ">mm/s", ">passes", "coating, wood and light");
    for (Line line : all) {
      Recommendation found = line.found();
      Optional<Box> box = found.chosen();
      table.row(
          line.verdict(),
          String.valueOf(found.evidence().patches()),
          box.map(b -> plain(b.start().powerPercent())).orElse("-"),
          box.map(b -> Figures.three(b.start().speedMillimetresPerSecond())).orElse("-"),
          box.map(b -> String.valueOf(b.passes())).orElse("-"),
          found.stratum().words());
    }
    barred.forEach(b -> table.row(NoBeamText.VERDICT, "-", "-", "-", "-", b.stratum().words()));
    String marked =
        all.stream()
            .filter(line -> line.found().chosen().isPresent())
            .map(line -> line.validity().text(hints))
            .distinct()
            .collect(Collectors.joining());
    String refused =
        barred.stream()
            .map(
                b ->
                    Table.paragraph(
                            "%s: no beam. %s %s"
                                .formatted(
                                    b.stratum().words(),
                                    NoBeamText.reason(b.known().bars()),
                                    NoBeamText.nextStep(b.known().bars(), record)))
                        + "\n")
            .collect(Collectors.joining());
    return table.text()
        + refused
        + marked
        + Table.paragraph(
            "Power, speed and passes are start settings; ask about one coating and wood for the rest.")
        + "\n";
  }
}
