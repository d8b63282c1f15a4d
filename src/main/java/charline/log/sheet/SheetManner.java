package charline.log.sheet;

/**
 * How a sheet is to be read where it is not as charline writes them.
 *
 * @param extra what becomes of columns that charline does not know
 * @param dates how days in figures are meant
 */
public record SheetManner(Extra extra, Dates dates) {
  /** As charline writes sheets: anything else is refused or asked about. */
  public static final SheetManner STRICT = new SheetManner(Extra.REFUSE, Dates.ASK);

  /** Unknown columns. */
  public enum Extra {
    REFUSE,
    /** Their cells become notes, each after its heading. */
    NOTE,
    /** They are left out. */
    SKIP
  }

  /** Days such as 05/11/2026. */
  public enum Dates {
    /** Refused where a sheet does not tell by a day above 12. */
    ASK,
    DAY_FIRST,
    MONTH_FIRST
  }
}
