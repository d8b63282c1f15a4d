package charline.window;

/** In what a setting lies outside the trials. */
public enum Beyond {
  HIGHER_DOSE,
  LOWER_DOSE,
  HIGHER_INTENSITY,
  LOWER_INTENSITY,
  MORE_PASSES,
  FEWER_PASSES,
  /** Each lies inside what was tried, but no trial mixed them so. */
  UNLIKE_MIX
}
