package charline.cli.desk;

/** Which charline this is. */
public final class Release {
  private Release() {}

  /** The version that the jar was built as. */
  public static String version() {
    String built = Release.class.getPackage().getImplementationVersion();
    return built == null ? "(not packaged)" : built;
  }
}
