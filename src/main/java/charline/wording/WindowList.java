package charline.wording;

import static charline.quantity.Figures.plain;

import charline.answer.AllWindows;
import charline.answer.WindowAnswer;
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
   * What the list shows of one answer.
   *
   * @param cells of its row, in the order of the columns
   * @param validity whether its window may be used; empty where there is none
   */
  public record Line(List<String> cells, Optional<ApplicabilityText> validity) {
    /** Of an answer, which is not kept. */
    public static Line of(WindowAnswer answer) {
      Recommendation found = answer.found();
      ApplicabilityText validity = ApplicabilityText.of(answer.applicability());
      Optional<Box> box = found.chosen();
      return new Line(
          List.of(
              verdict(found, validity),
              String.valueOf(found.evidence().patches()),
              box.map(b -> plain(b.start().powerPercent())).orElse("-"),
              box.map(b -> Figures.three(b.start().speedMillimetresPerSecond())).orElse("-"),
              box.map(b -> String.valueOf(b.passes())).orElse("-"),
              found.stratum().words()),
          box.map(b -> validity));
    }

    /**
     * A verdict that no window hangs on is not marked, and one that is not valid any more has no
     * standing.
     */
    private static String verdict(Recommendation found, ApplicabilityText validity) {
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
  public static String of(AllWindows<Line> all, String record, FaceHints hints) {
    Table table =
        new Table("verdict", ">patches", ">power %", ">mm/s", ">passes", "coating, wood and light");
    all.answers().forEach(line -> table.row(line.cells().toArray(String[]::new)));
    all.barred()
        .forEach(b -> table.row(NoBeamText.VERDICT, "-", "-", "-", "-", b.stratum().words()));
    String marked =
        all.answers().stream()
            .flatMap(line -> line.validity().stream())
            .map(validity -> validity.text(hints))
            .distinct()
            .collect(Collectors.joining());
    String refused =
        all.barred().stream()
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
