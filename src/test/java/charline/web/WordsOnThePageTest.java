package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import charline.log.OwnWords;
import charline.trial.WoodForm;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Words that somebody adds, and near woods, on the bench page. */
class WordsOnThePageTest {
  private static final String POOLED = "window?family=latex&wood=pine%20%2B%20scots%20pine";

  @AutoClose private final ServedLog served;

  WordsOnThePageTest(@TempDir Path folder) throws IOException {
    served = new ServedLog(folder, "latex-on-pine");
    String sheet =
        Files.readString(Path.of("sample-trials/latex-on-pine.csv"))
            .replace("LP-", "SC-")
            .replace("wall panel offcut", "riga offcut")
            .replace(",pine,", ",scots pine,");
    served.charline("import " + Files.writeString(folder.resolve("scots.csv"), sheet));
  }

  @Test
  void the_window_names_near_woods_and_a_tap_pools_them() throws Exception {
    assertThat(served.page("window?family=latex&wood=pine"))
        .contains("Not counted: 24 patches on scots pine, which is a near wood.")
        .contains("href=\"/window?family=latex&amp;wood=pine%20%2B%20scots%20pine&amp;light=");

    assertThat(served.page(POOLED))
        .contains("<h1>latex on pine + scots pine, pulsed 1064 nm</h1>")
        .contains("Pooled: 24 patches on pine and 24 patches on scots pine, judged as one wood")
        .doesNotContain("Not counted");
    assertThat(served.page(POOLED.replace("window", "sheet"))).contains("pine + scots pine");
    assertThat(served.page(POOLED.replace("window", "quote") + "&area=4"))
        .contains("pine + scots pine");
  }

  @Test
  void words_of_ones_own_stand_in_the_lists_at_once() throws Exception {
    served.charline("wood add riga --like pine");
    served.charline("family add yachtcoat --like varnish");

    assertThat(served.page("set-up"))
        .contains("<option>riga</option>", "<option>yachtcoat</option>");
  }

  @Test
  void a_word_is_added_on_the_page_with_the_one_that_it_is_like() throws Exception {
    served.post("set-up/wood", "name=Bog+Oak&like=oak&also=morta,+fen+oak");
    served.post("set-up/family", "name=deck+varnish&like=varnish&also=");

    assertThat(served.log().reference().wood("fen oak")).isEqualTo("bog oak");
    assertThat(served.log().ownWords().find(OwnWords.Sort.FAMILY, "deck varnish")).isPresent();
    assertThat(served.post("set-up/wood", "name=pine&like=oak"))
        .contains("means the wood pine already; choose another.");
  }

  @Test
  void a_panel_is_its_own_form_unless_it_is_said() throws Exception {
    served.post("set-up/board", "name=shelf&wood=mdf&form=");
    served.post("set-up/board", "name=door&wood=mdf&form=veneer");

    assertThat(served.log().board("shelf").form()).isEqualTo(WoodForm.MDF);
    assertThat(served.log().board("door").form()).isEqualTo(WoodForm.VENEER);
  }
}
