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
  private static final List<Tab> TABS =
      List.of(
          new Tab("/", "Home", "M3.5 11.5 12 4.5l8.5 7M6 10v9.5h12V10"),
          new Tab(
              "/record", "Record", "M12 3.5a8.5 8.5 0 1 0 0 17a8.5 8.5 0 0 0 0-17M12 8v8M8 12h8"),
          new Tab("/ask", "Ask", "M10.5 4a6.5 6.5 0 1 0 0 13a6.5 6.5 0 0 0 0-13M15.5 15.5 20 20"),
          new Tab("/window", "Window", "M4 4v16h16M9 7.5h7.5V15H9z"));

  /**
   * One of the tabs.
   *
   * @param sign outline in a square of 24
   */
  public record Tab(String path, String word, String sign) {}

  public List<Tab> tabs() {
    return TABS;
  }

  /** Whether the page belongs to a tab; what has none of its own is reached from Home. */
  public boolean isOn(Tab one) {
    return one.path().equals(tab)
        || one.path().equals("/") && TABS.stream().noneMatch(t -> t.path().equals(tab));
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
