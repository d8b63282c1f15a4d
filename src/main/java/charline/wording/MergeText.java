package charline.wording;

import charline.log.merge.Merged;
import charline.log.merge.SetUpTwice;
import charline.quantity.Figures;
import java.util.ArrayList;
import java.util.List;

/** What joining another log brought in, in words. */
public final class MergeText {
  private MergeText() {}

  /** "2 new patches (1 void), 5 new readings", or "nothing new". */
  public static String broughtIn(Merged merged) {
    List<String> parts = new ArrayList<>();
    count(parts, merged.patches(), "new patch", "new patches", merged.newVoid(), "void");
    count(parts, merged.readings(), "new reading", "new readings");
    count(parts, merged.plans().added(), "new planned patch", "new planned patches");
    count(
        parts,
        merged.plans().burned(),
        "planned patch burned there",
        "planned patches burned there");
    count(
        parts,
        merged.plans().givenUp(),
        "planned patch given up there",
        "planned patches given up there");
    count(parts, merged.photos(), "new photo", "new photos");
    count(parts, merged.woods(), "new wood", "new woods");
    count(parts, merged.families(), "new coating family", "new coating families");
    count(parts, merged.rigs(), "new rig", "new rigs");
    merged
        .powers()
        .checks()
        .forEach(
            (rig, checks) ->
                count(
                    parts,
                    checks,
                    "new power check of rig " + rig,
                    "new power checks of rig " + rig));
    merged
        .upkeep()
        .forEach(
            (rig, entries) ->
                count(
                    parts,
                    entries,
                    "new upkeep entry of rig " + rig,
                    "new upkeep entries of rig " + rig));
    count(parts, merged.boards(), "new board", "new boards");
    count(parts, merged.finishes(), "new finish", "new finishes");
    count(parts, merged.samples(), "new sample result", "new sample results");
    count(
        parts,
        merged.amended(),
        "amended as there",
        "amended as there",
        merged.voided(),
        "void now");
    int powers = merged.powers().patches();
    return (parts.isEmpty() ? "nothing new" : String.join(", ", parts))
        + (powers == 0
            ? ""
            : "; "
                + Figures.count(powers, "patch counts", "patches count")
                + " with another power from now on");
  }

  private static void count(List<String> parts, int number, String one, String many) {
    if (number > 0) {
      parts.add(Figures.count(number, one, many));
    }
  }

  /** A count, and in brackets how many of those are what has to be said of them. */
  private static void count(
      List<String> parts, int number, String one, String many, int some, String what) {
    String aside = some == 0 ? "" : " (%d %s)".formatted(some, what);
    count(parts, number, one + aside, many + aside);
  }

  /** That two records are one now. */
  public static String joined(SetUpTwice pair) {
    return "%s %s is joined into %s; both names find it."
        .formatted(capital(pair.kind().word()), pair.name(), pair.known());
  }

  /** A word that begins a sentence. */
  public static String capital(String word) {
    return Character.toUpperCase(word.charAt(0)) + word.substring(1);
  }
}
