package charline.log.database;

/**
 * Which patches are read: a condition on {@code patch p}.
 *
 * @param condition in SQL
 * @param values of ?1, ?2, ... in it
 */
public record Where(String condition, Object... values) {
  public Where {
    values = values.clone();
  }

  @Override
  public Object[] values() {
    return values.clone();
  }
}
