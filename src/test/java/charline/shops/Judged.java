package charline.shops;

import charline.window.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What one shop was told, beside what was true: one line of the results.
 *
 * @param scenario code of its scenario
 * @param number which shop
 * @param verdict of the window finder
 * @param window the window it gave
 * @param unwary the window it would have given without its caution about boards
 * @param classical the window by Firth's logistic regression
 * @param probes what the models said of settings chosen at random
 * @param seconds of one core
 */
record Judged(
    String scenario,
    int number,
    Verdict verdict,
    Optional<Kept> window,
    Optional<Kept> unwary,
    Optional<Kept> classical,
    List<Probe> probes,
    double seconds) {

  /**
   * What was true of a window.
   *
   * @param charRisk true char risk on a new board at its hottest corner
   * @param clearing true clearing chance on a new board at its coldest corner
   */
  record Kept(double charRisk, double clearing) {
    private String text() {
      return number(charRisk) + "," + number(clearing);
    }

    private static Optional<Kept> read(String risk, String clearing) {
      return risk.isEmpty()
          ? Optional.empty()
          : Optional.of(new Kept(Double.parseDouble(risk), Double.parseDouble(clearing)));
    }
  }

  /**
   * One event at one setting on a new board.
   *
   * @param charring char, else clearing
   * @param foretold posterior mean of its chance
   * @param rank share of the posterior at or below the true chance
   * @param happened to one more patch, burned there on a new board
   */
  record Probe(boolean charring, double foretold, double rank, boolean happened) {
    private String text() {
      return (charring ? "char" : "clear")
          + ","
          + number(foretold)
          + ","
          + number(rank)
          + ","
          + (happened ? 1 : 0);
    }

    private static Probe read(String[] cells, int from) {
      return new Probe(
          cells[from].equals("char"),
          Double.parseDouble(cells[from + 1]),
          Double.parseDouble(cells[from + 2]),
          cells[from + 3].equals("1"));
    }
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.5f", value);
  }

  /** One line of comma-separated cells. */
  String line() {
    return List.of(
                scenario,
                String.valueOf(number),
                verdict.name(),
                window.map(Kept::text).orElse(","),
                unwary.map(Kept::text).orElse(","),
                classical.map(Kept::text).orElse(","),
                number(seconds))
            .stream()
            .collect(Collectors.joining(","))
        + probes.stream().map(p -> "," + p.text()).collect(Collectors.joining())
        + ";"; // a line without its end was cut short
  }

  /** The shop of a {@link #line}; empty for a line cut short by an interruption. */
  static Optional<Judged> read(String line) {
    String[] cells = line.split(",", -1);
    if (!line.endsWith(";")) {
      return Optional.empty();
    }
    cells[cells.length - 1] = cells[cells.length - 1].replace(";", "");
    List<Probe> probes = new ArrayList<>();
    for (int c = 10; c < cells.length; c += 4) {
      probes.add(Probe.read(cells, c));
    }
    return Optional.of(
        new Judged(
            cells[0],
            Integer.parseInt(cells[1]),
            Verdict.valueOf(cells[2]),
            Kept.read(cells[3], cells[4]),
            Kept.read(cells[5], cells[6]),
            Kept.read(cells[7], cells[8]),
            probes,
            Double.parseDouble(cells[9])));
  }
}
