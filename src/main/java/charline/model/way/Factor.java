package charline.model.way;

import java.util.List;
import java.util.OptionalDouble;

/** A trait as it enters a model: one column or several, with the prior of their weights. */
public sealed interface Factor {
  /**
   * Scale of the prior of two names: half of all differences within a third. With 0.2 the 90 %
   * intervals contained a true factor of 1.8 in 55 of 80 simulated shops, with 0.4 in nine of ten,
   * and hardly a window more was lost where nothing differs (reports/ways.md).
   */
  double ALIKE = 0.4;

  /** Name of a figure that was not noted. */
  String NOT_NOTED = "not noted";

  /** Name of all levels that are too rare to have a column of their own. */
  String OTHERS = "others";

  /** What it is about. */
  Trait trait();

  /** Number of its columns. */
  int width();

  /** Its values for a way of working; what is not known counts as the middle. */
  double[] row(Way way);

  /** Prior of each of its weights. */
  HeavyTailedNormal prior();

  /**
   * A trait that goes by name, in orthonormal contrasts (Helmert): the difference of any two names
   * has the prior of the trait.
   *
   * @param levels two names or more; others count as the last where that is {@link #OTHERS}
   */
  record Named(Trait trait, List<String> levels) implements Factor {
    public Named {
      levels = List.copyOf(levels);
    }

    @Override
    public int width() {
      return levels.size() - 1;
    }

    @Override
    public double[] row(Way way) {
      return row(trait.name(way));
    }

    /** Values of a name; one that was not tried counts as the middle of all. */
    public double[] row(String name) {
      int level = levels.indexOf(level(name));
      double[] row = new double[width()];
      if (level < 0) {
        return row;
      }
      for (int k = Math.max(0, level - 1); k < row.length; k++) {
        double length = Math.sqrt((k + 1.0) * (k + 2.0));
        row[k] = level == k + 1 ? -(k + 1) / length : 1 / length;
      }
      return row;
    }

    /** The level of a way of working. */
    public String level(Way way) {
      return level(trait.name(way));
    }

    /** All levels but that of a way of working. */
    public List<String> others(Way way) {
      String own = level(way);
      return levels.stream().filter(level -> !level.equals(own)).toList();
    }

    private String level(String name) {
      return levels.contains(name) ? name : OTHERS;
    }

    @Override
    public HeavyTailedNormal prior() {
      return new HeavyTailedNormal(0, trait.prior().scale() / Math.sqrt(2));
    }
  }

  /**
   * A trait that goes by number.
   *
   * @param reference the number that counts 0
   * @param low least number that was tried; what is asked below counts as this
   * @param high largest number that was tried
   */
  record Measured(Trait trait, double reference, double low, double high) implements Factor {
    @Override
    public int width() {
      return 1;
    }

    @Override
    public double[] row(Way way) {
      OptionalDouble value = trait.value(way);
      return new double[] {
        value.isPresent() ? Math.max(low, Math.min(high, value.getAsDouble())) - reference : 0
      };
    }

    @Override
    public HeavyTailedNormal prior() {
      return trait.prior();
    }
  }
}
