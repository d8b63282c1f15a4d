package charline.web;

import org.junit.jupiter.api.BeforeEach;

/** The same served to a tablet. */
abstract class TabletVisit extends BenchVisit {
  @BeforeEach
  void take_a_tablet() {
    browser.size(820, 1180);
  }
}
