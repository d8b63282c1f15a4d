package charline.quote;

/** What takes time in a job. */
public enum Task {
  BEAM("beam", Per.WORK),
  COOLING("cooling", Per.REST),
  REWORK("rework", Per.SPOT),
  TEST_PATCHES("test_patches", Per.PATCH),
  MASKING("masking", Per.SQUARE_METRE),
  SANDING("sanding", Per.SQUARE_METRE),
  CONTAINMENT("containment", Per.JOB_WITH_LEAD),
  CLEARANCE("clearance", Per.JOB_WITH_LEAD),
  CONTINGENCY("contingency", Per.WORK),
  SET_UP("set_up", Per.DAY),
  WASTE("waste", Per.DAY),
  FIRE_WATCH("fire_watch", Per.DAY);

  /** What a time is for. */
  public enum Per {
    /** Worked out from the other parts. */
    WORK,
    /** Between two passes over the work. */
    REST,
    /** A charred spot. */
    SPOT,
    /** A test patch. */
    PATCH,
    SQUARE_METRE,
    /** Once, where lead was found or may be there. */
    JOB_WITH_LEAD,
    DAY
  }

  private final String key;
  private final Per per;

  Task(String key, Per per) {
    this.key = key;
    this.per = per;
  }

  /** Its name in files and addresses. */
  public String key() {
    return key;
  }

  public Per per() {
    return per;
  }

  /** Whether a person may say how long it takes. */
  public boolean timed() {
    return per != Per.WORK;
  }
}
