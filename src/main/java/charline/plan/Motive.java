package charline.plan;

/** Why a patch is to be burned, finer than its {@link Purpose}. */
public enum Motive {
  LOWEST_RUNG,
  NEXT_RUNG,
  HOT_SIDE,
  ONSET,
  COLD_SIDE,
  COOLER,
  CONTROL,
  CONFIRM,
  CLIMB_TO_START,
  PIECE_AT_START,
  PIECE_HOTTER
}
