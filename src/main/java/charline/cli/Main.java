package charline.cli;

/** Start of the program. */
public final class Main {
  private Main() {}

  public static void main(String[] args) {
    System.exit(0);
  }
}
