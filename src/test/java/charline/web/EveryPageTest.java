package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every page that the bench serves is among those that are looked at, and needs no script. */
class EveryPageTest {
  private static final Pattern FORM = Pattern.compile("(?s)<form\\b([^>]*)>(.*?)</form>");
  private static final Pattern BUTTON = Pattern.compile("<button\\b([^>]*)>");

  @AutoClose private final ServedLog served;
  private final EveryPage pages;
  private final HttpClient client = HttpClient.newHttpClient();

  EveryPageTest(@TempDir Path folder) throws Exception {
    served = new ServedLog(folder, EveryPage.sheets());
    pages = new EveryPage(served, folder);
  }

  private HttpResponse<String> get(String address) throws Exception {
    return client.send(
        HttpRequest.newBuilder(URI.create(served.address() + address)).build(),
        BodyHandlers.ofString());
  }

  @Test
  void every_route_of_the_server_is_a_page_that_is_looked_at_or_no_page() throws Exception {
    Set<String> looked =
        pages.states().stream().map(EveryPage.State::route).collect(Collectors.toSet());
    List<String> routes =
        served.routes().stream().filter(EveryPage.asset().negate()).distinct().toList();
    assertThat(routes).hasSizeGreaterThan(30);
    assertThat(routes)
        .allSatisfy(
            route ->
                assertThat(
                        looked.contains(route)
                            ^ (EveryPage.SHARED.contains(route)
                                || EveryPage.NO_PAGES.containsKey(route)
                                || route.equals(EveryPage.PHOTO)))
                    .as(route)
                    .isTrue());
    assertThat(routes).containsAll(looked);
    for (String address : EveryPage.NO_PAGES.values()) {
      HttpResponse<String> answer = get(address);
      assertThat(answer.statusCode()).as(address).isEqualTo(200);
      assertThat(answer.body()).as(address).doesNotContain("<h1");
    }
  }

  @Test
  void without_scripts_every_form_can_be_sent_or_the_page_says_what_is_needed() throws Exception {
    SoftAssertions all = new SoftAssertions();
    for (EveryPage.State state : pages.states()) {
      HttpResponse<String> answer = get(state.address());
      String page = answer.body();
      all.assertThat(answer.statusCode()).as(state.name()).isEqualTo(state.status());
      boolean says = page.contains("<noscript>") && page.contains("JavaScript");
      if (says) {
        continue;
      }
      Matcher forms = FORM.matcher(page);
      while (forms.find()) {
        all.assertThat(forms.group(1)).as(state.name()).contains("action=\"/", "method=");
        all.assertThat(forms.group(2)).as("a button of " + state.name()).contains("<button");
      }
      Matcher buttons = BUTTON.matcher(FORM.matcher(page).replaceAll(""));
      while (buttons.find()) {
        String tag = buttons.group(1);
        boolean ofTheMap = page.contains("id=\"m-power\"") && tag.contains("data-step");
        all.assertThat(tag.contains(" hidden") || ofTheMap)
            .as("a button without a form on %s: %s", state.name(), tag)
            .isTrue();
      }
      if (page.contains("data-renewing") || page.contains("data-part=\"/log")) {
        all.assertThat(page).as(state.name()).containsPattern("Look again|<noscript>");
      }
    }
    all.assertAll();
  }
}
