package charline.shops;

import java.nio.file.Path;
import java.util.List;

record ValidationReport(List<Tally> t, int n) {
  void write(Path p) {
    for (Tally x : t)
      System.out.println(
          x.scenario().code()
              + " "
              + x.windows().share().words()
              + " "
              + x.windows().charBroken().words()
              + " | "
              + x.unwary().share().words()
              + " | "
              + x.classical().share().words()
              + " "
              + x.classical().charBroken().words()
              + " "
              + x.shops().stream().mapToDouble(Judged::seconds).average());
  }
}
