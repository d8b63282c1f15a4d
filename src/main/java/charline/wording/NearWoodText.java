package charline.wording;

import charline.answer.NearWood;
import charline.quantity.Figures;
import charline.trial.Patch;
import charline.trial.Stratum;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Which woods an answer counts together, and which near ones it leaves out. */
public final class NearWoodText {
  private NearWoodText() {}

  /**
   * "Not counted: 5 patches on northern red oak, which is a near wood."; empty if there are none.
   */
  public static Optional<String> notCounted(List<NearWood> near) {
    return near.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "Not counted: %s, which %s."
                .formatted(
                    listed(near.stream().map(n -> counted(n.patches(), n.wood())).toList()),
                    near.size() == 1 ? "is a near wood" : "are near woods"));
  }

  /**
   * "Pooled: 3 patches on oak and 5 patches on white oak, ..."; empty where no woods are pooled.
   */
  public static Optional<String> pooled(Stratum stratum, List<Patch> patches) {
    if (!stratum.poolsWoods()) {
      return Optional.empty();
    }
    Map<String, Integer> byWood = new TreeMap<>();
    patches.forEach(patch -> byWood.merge(patch.board().wood(), 1, Integer::sum));
    List<String> woods = new ArrayList<>();
    byWood.forEach((wood, count) -> woods.add(counted(count, wood)));
    return Optional.of(
        "Pooled: %s, judged as one wood whose boards differ.".formatted(listed(woods)));
  }

  /** Woods and patches, as JSON. */
  public static List<Json> json(List<NearWood> near) {
    return near.stream()
        .map(n -> new Json().put("wood", n.wood()).put("patches", n.patches()))
        .toList();
  }

  private static String counted(int patches, String wood) {
    return Figures.count(patches, "patch", "patches") + " on " + wood;
  }

  private static String listed(List<String> words) {
    int last = words.size() - 1;
    return last == 0
        ? words.get(0)
        : String.join(", ", words.subList(0, last)) + " and " + words.get(last);
  }
}
