package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.Test;

/** What can be done on the command line can be done on the page, or the page says why not. */
class CommandsOnThePageTest {
  private static final Path TEMPLATES = Path.of("src/main/jte-bench");
  private static final Path SCRIPTS = Path.of("src/main/resources/bench");

  /** Where the page does what a command does: an address that its templates or scripts hold. */
  private static final Map<String, String> PLACES = new LinkedHashMap<>();

  static {
    for (String[] place :
        new String[][] {
          {"rig add", "/set-up"},
          {"rig list", "/set-up"},
          {"rig show", "/rig?of="},
          {"rig amend", "/put-right/rig"},
          {"rig join", "/put-right/${view.kind()}/join"},
          {"rig check", "/set-up"},
          {"rig check amend", "/put-right/check"},
          {"rig check void", "/put-right/${view.kind()}/void"},
          {"rig upkeep", "/set-up"},
          {"rig upkeep list", "/rig?of="},
          {"rig upkeep amend", "/put-right/upkeep"},
          {"rig upkeep void", "/put-right/${view.kind()}/void"},
          {"rig drift", "/rig?of="},
          {"board add", "/set-up#boards"},
          {"board list", "/boards"},
          {"board show", "/board?of="},
          {"board amend", "/put-right/board"},
          {"board void", "/put-right/${view.kind()}/void"},
          {"board join", "/put-right/${view.kind()}/join"},
          {"finish add", "/set-up"},
          {"finish list", "/set-up"},
          {"finish show", "/finish?name="},
          {"finish amend", "/put-right/finish"},
          {"finish join", "/put-right/${view.kind()}/join"},
          {"wood add", "/set-up"},
          {"family add", "/set-up"},
          {"sample add", "/finish/sample"},
          {"sample list", "/finish?name="},
          {"sample show", "/finish/sample"},
          {"sample amend", "/finish/amend"},
          {"sample void", "/finish/void"},
          {"patch add", "/entries/patch"},
          {"patch read", "/entries/reading"},
          {"patch show", "Links.patch("},
          {"patch amend", "/amend"},
          {"patch void", "/void"},
          {"plan list", "/plans"},
          {"plan void", "/plans/give-up"},
          {"find", "/ask"},
          {"window", "/window?"},
          {"risk", "/window/at?"},
          {"compare", "/compare?"},
          {"next", "/next"},
          {"quote", "/quote?"},
          {"onset", "/onset?"},
          {"removal", "/removal?"},
          {"sheet", "/sheet/preview?"},
          {"import", "/log/import"},
          {"export", "/log/export/patches"},
          {"merge", "/log/merge"},
          {"backup", "/log/backup"},
          {"check", "/log/check"}
        }) {
      PLACES.put(place[0], place[1]);
    }
  }

  private static String all(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files
          .filter(Files::isRegularFile)
          .map(
              file -> {
                try {
                  return Files.readString(file);
                } catch (IOException e) {
                  throw new UncheckedIOException(e);
                }
              })
          .collect(Collectors.joining("\n"));
    }
  }

  @Test
  void every_command_has_its_place_on_the_page_or_is_listed_with_a_reason() throws IOException {
    List<String> alone =
        Pattern.compile("<li><b>charline ([a-z, ]+)</b><br><span class=\"small\">[^<]{20,}</span>")
            .matcher(Files.readString(TEMPLATES.resolve("log.jte")))
            .results()
            .flatMap(m -> Arrays.stream(m.group(1).split(", ")))
            .toList();
    String pages = all(TEMPLATES) + all(SCRIPTS);
    SoftAssertions every = new SoftAssertions();
    for (String command : Commands.all()) {
      every
          .assertThat(PLACES.containsKey(command) ^ alone.contains(command))
          .as("%s is done on the page, or listed as done on the command line alone", command)
          .isTrue();
    }
    PLACES.forEach((command, place) -> every.assertThat(pages).as(command).contains(place));
    every.assertThat(Commands.all()).containsAll(alone).containsAll(PLACES.keySet());
    every.assertAll();
    assertThat(alone).contains("demo", "bench", "prior").doesNotHaveDuplicates();
  }
}
