package charline.timing;

/** The least that a Java program can do: the price of Java itself. */
final class Hello {
  private Hello() {}

  public static void main(String[] args) {
    System.out.println("hello");
  }
}
