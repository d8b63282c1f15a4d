package charline.paper;

import charline.trial.Patch;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Patch codes in few words: codes that count up are joined into runs. */
final class PatchCodes {
  private static final Pattern NUMBERED = Pattern.compile("(.*?)(\\d{1,15})");
  private static final int MOST_RUNS = 8;

  private PatchCodes() {}

  /** "P-0001 to P-0024, P-0031", at most eight runs, then how many more codes there are. */
  static String words(List<Patch> patches) {
    List<List<String>> runs = new ArrayList<>();
    String last = null;
    for (String code : patches.stream().map(Patch::code).sorted().toList()) {
      if (last == null || !follows(last, code)) {
        runs.add(new ArrayList<>());
      }
      runs.get(runs.size() - 1).add(code);
      last = code;
    }
    List<String> words = new ArrayList<>();
    runs.stream().limit(MOST_RUNS).forEach(run -> words.add(runWords(run)));
    int more = runs.stream().skip(MOST_RUNS).mapToInt(List::size).sum();
    return String.join(", ", words) + (more == 0 ? "" : " and " + more + " more");
  }

  private static String runWords(List<String> run) {
    String low = run.get(0);
    String high = run.get(run.size() - 1);
    return switch (run.size()) {
      case 1 -> low;
      case 2 -> low + ", " + high;
      default -> low + " to " + high;
    };
  }

  private static boolean follows(String earlier, String later) {
    Matcher a = NUMBERED.matcher(earlier);
    Matcher b = NUMBERED.matcher(later);
    return a.matches()
        && b.matches()
        && a.group(1).equals(b.group(1))
        && Long.parseLong(b.group(2)) == Long.parseLong(a.group(2)) + 1;
  }
}
