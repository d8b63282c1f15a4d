package charline.web.pages;

import charline.web.security.Seat;
import java.util.List;
import java.util.Optional;

/**
 * What surrounds every page.
 *
 * @param title of the page
 * @param tab the tab it belongs to, blank for none
 * @param seat who looks at it, empty before pairing
 * @param shared whether other devices can be paired
 * @param scripts further scripts by file name
 */
public record Frame(
    String title, String tab, Optional<Seat> seat, boolean shared, List<String> scripts) {
  /** One of the tabs. */
  public record Tab(String path, String word) {}

  public List<Tab> tabs() {
    return List.of(
        new Tab("/record", "Record"),
        new Tab("/ask", "Ask"),
        new Tab("/window", "Window"),
        new Tab("/set-up", "Set up"));
  }

  public String token() {
    return seat.map(Seat::formToken).orElse("");
  }

  public boolean here() {
    return seat.filter(Seat::here).isPresent();
  }
}
