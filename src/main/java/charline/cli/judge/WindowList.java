package charline.cli.judge;

import static charline.exposure.Invariant.plain;

import charline.cli.render.Figures;
import charline.cli.render.Table;
import charline.window.Box;
import charline.window.Recommendation;
import java.util.List;
import java.util.Optional;

/** One line for each stratum of the log. */
final class WindowList {
  private WindowList() {}

  static String text(List<Recommendation> all) {
    Table table =
        new Table("verdict", ">patches", ">power %", ">mm/s", ">passes", "coating, wood and light");
    for (Recommendation found : all) {
      Optional<Box> box = found.chosen();
      table.row(
          found.verdict().word(),
          String.valueOf(found.evidence().patches()),
          box.map(b -> plain(b.start().powerPercent())).orElse("-"),
          box.map(b -> Figures.three(b.start().speedMillimetresPerSecond())).orElse("-"),
          box.map(b -> String.valueOf(b.passes())).orElse("-"),
          found.stratum().words());
    }
    return table.text()
        + Table.paragraph(
            "Power, speed and passes are start settings; `charline window FAMILY WOOD` has the"
                + " rest.")
        + "\n";
  }
}
