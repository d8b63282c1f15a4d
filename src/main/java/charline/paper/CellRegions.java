package charline.paper;

import charline.window.WindowMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToIntFunction;

/** The cells of a map by state, in rows of powers (rising) and columns of speeds (rising). */
final class CellRegions {
  private final CellState[][] states;

  private CellRegions(CellState[][] states) {
    this.states = states;
  }

  static CellRegions of(WindowMap map) {
    return new CellRegions(
        map.rows().stream()
            .map(row -> row.stream().map(CellState::of).toArray(CellState[]::new))
            .toArray(CellState[][]::new));
  }

  /**
   * A block of cells.
   *
   * @param row first row
   * @param column first column
   * @param endRow row after the last
   * @param endColumn column after the last
   */
  record Block(int row, int column, int endRow, int endColumn) {}

  /**
   * The cells of a state as few blocks: equal neighbours in a row are one, and so are equal runs in
   * rows that follow each other.
   */
  List<Block> blocks(CellState state) {
    List<Block> done = new ArrayList<>();
    List<Block> open = new ArrayList<>();
    for (int row = 0; row < states.length; row++) {
      List<Block> next = new ArrayList<>();
      for (Block run : runs(state, row)) {
        next.add(
            open.stream()
                .filter(b -> b.column == run.column && b.endColumn == run.endColumn)
                .findFirst()
                .map(b -> new Block(b.row, b.column, run.endRow, b.endColumn))
                .orElse(run));
      }
      done.addAll(
          open.stream()
              .filter(b -> next.stream().noneMatch(n -> n.row == b.row && n.column == b.column))
              .toList());
      open = next;
    }
    done.addAll(open);
    return done;
  }

  private List<Block> runs(CellState state, int row) {
    List<Block> runs = new ArrayList<>();
    int start = -1;
    for (int column = 0; column <= states[row].length; column++) {
      boolean inside = column < states[row].length && states[row][column] == state;
      if (inside && start < 0) {
        start = column;
      } else if (!inside && start >= 0) {
        runs.add(new Block(row, start, row + 1, column));
        start = -1;
      }
    }
    return runs;
  }

  /**
   * A block of the given size that lies wholly in a state: the one that covers least of what else
   * is drawn, and then the one nearest to the state's middle.
   *
   * @param covers how many other things a block would cover
   */
  Optional<Block> roomFor(CellState state, int rows, int columns, ToIntFunction<Block> covers) {
    double[] middle = middle(state);
    Block best = null;
    double bestCost = Double.POSITIVE_INFINITY;
    for (int row = 0; row + rows <= states.length; row++) {
      for (int column = 0; column + columns <= states[row].length; column++) {
        Block block = new Block(row, column, row + rows, column + columns);
        if (!wholly(state, block)) {
          continue;
        }
        double fromMiddle =
            Math.hypot(row + rows / 2.0 - middle[0], column + columns / 2.0 - middle[1]);
        double cost = 1000.0 * covers.applyAsInt(block) + fromMiddle;
        if (cost < bestCost) {
          best = block;
          bestCost = cost;
        }
      }
    }
    return Optional.ofNullable(best);
  }

  private boolean wholly(CellState state, Block block) {
    for (int row = block.row; row < block.endRow; row++) {
      for (int column = block.column; column < block.endColumn; column++) {
        if (states[row][column] != state) {
          return false;
        }
      }
    }
    return true;
  }

  private double[] middle(CellState state) {
    double rowSum = 0;
    double columnSum = 0;
    int cells = 0;
    for (int row = 0; row < states.length; row++) {
      for (int column = 0; column < states[row].length; column++) {
        if (states[row][column] == state) {
          rowSum += row + 0.5;
          columnSum += column + 0.5;
          cells++;
        }
      }
    }
    return cells == 0 ? new double[2] : new double[] {rowSum / cells, columnSum / cells};
  }
}
