package charline.web.pages;

import charline.web.security.Client;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What surrounds every page.
 *
 * @param title of the page
 * @param tab the tab it belongs to, blank for none
 * @param seat who looks at it, empty before pairing
 * @param shared whether other devices can be paired
 * @param files further styles and scripts by file name
 */
public record Frame(
    String title, String tab, Optional<Client> seat, boolean shared, List<String> files) {
  /** One of the tabs. */
  public record Tab(String path, String word) {}

  public List<Tab> tabs() {
    return List.of(
        new Tab("/record", "Record"),
        new Tab("/ask", "Ask"),
        new Tab("/window", "Window"),
        new Tab("/set-up", "Set up"));
  }

  public String icon() {
    return Assets.address("icon.svg");
  }

  /** The addresses of the styles, in their order. */
  public List<String> styles() {
    return all(Stream.of("tokens.css", "bench.css", "controls.css"), ".css");
  }

  /** The addresses of the scripts, in their order: each a module that imports what it needs. */
  public List<String> scripts() {
    return all(Stream.of("bench.js"), ".js");
  }

  private List<String> all(Stream<String> everyPage, String kind) {
    return Stream.concat(everyPage, files.stream().filter(f -> f.endsWith(kind)))
        .map(Assets::address)
        .toList();
  }

  public String token() {
    return seat.map(Client::formToken).orElse("");
  }

  public boolean here() {
    return seat.filter(Client::here).isPresent();
  }
}
