package charline.shops;

import charline.window.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What one shop was told, beside what was true: one line of the results.
 *
 * @param scenario code of its scenario
 * @param number which shop
 * @param verdict of the window finder, four other strata in the log
 * @param window the window it gave
 * @param alone the window it gives in a log without other strata
 * @param classical the window of the classical counterpart
 * @param piece what one piece of its was told, where one was looked at
 * @param probes what the models said of settings chosen at random
 * @param seconds of one core
 */
record Judged(
    String scenario,
    int number,
    Verdict verdict,
    Optional<Kept> window,
    Optional<Kept> alone,
    Optional<Kept> classical,
    Optional<Piece> piece,
    List<Probe> probes,
    double seconds) {
  private static final int SECONDS = 20;

  /**
   * What was true of a window.
   *
   * @param charRisk true char risk at its hottest corner
   * @param clearing true clearing chance at its coldest corner
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
   * One piece: windows held against what is true on that piece.
   *
   * @param general the window for any board
   * @param spare that for the piece where three patches at the start setting came out clean
   * @param placed that for the piece after the patches that place it
   * @param confirmed that for the piece once it was confirmed
   * @param browned how many patches browned until it was placed
   * @param placing how many it took until then
   * @param burned how many were burned in all
   */
  record Piece(
      Optional<Kept> general,
      Optional<Kept> spare,
      Optional<Kept> placed,
      Optional<Kept> confirmed,
      int browned,
      int placing,
      int burned) {
    private String text() {
      return Stream.of(general, spare, placed, confirmed)
              .map(kept -> kept.map(Kept::text).orElse(","))
              .collect(Collectors.joining(","))
          + ",%d,%d,%d".formatted(browned, placing, burned);
    }

    private static Optional<Piece> read(String[] cells, int from) {
      return cells[from + 8].isEmpty()
          ? Optional.empty()
          : Optional.of(
              new Piece(
                  Kept.read(cells[from], cells[from + 1]),
                  Kept.read(cells[from + 2], cells[from + 3]),
                  Kept.read(cells[from + 4], cells[from + 5]),
                  Kept.read(cells[from + 6], cells[from + 7]),
                  Integer.parseInt(cells[from + 8]),
                  Integer.parseInt(cells[from + 9]),
                  Integer.parseInt(cells[from + 10])));
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
    return String.join(
            ",",
            scenario,
            String.valueOf(number),
            verdict.name(),
            window.map(Kept::text).orElse(","),
            alone.map(Kept::text).orElse(","),
            classical.map(Kept::text).orElse(","),
            piece.map(Piece::text).orElse(",".repeat(10)),
            number(seconds))
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
    for (int c = SECONDS + 1; c < cells.length; c += 4) {
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
            Piece.read(cells, 9),
            probes,
            Double.parseDouble(cells[SECONDS])));
  }
}
