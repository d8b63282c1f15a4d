package charline.web;

import java.io.IOException;

/** A bench page being served, in the test's own process or in another. */
interface ServedBench extends AutoCloseable {
  /** Where this machine finds the page, with the last slash. */
  default String address() {
    return "http://127.0.0.1:" + port() + "/";
  }

  int port();

  /** The pairing code that it showed at its start; empty where it is not shared. */
  String code();

  /** The same log on the same port again, after this one has ended. */
  ServedBench again() throws IOException;

  @Override
  void close();
}
