package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import charline.log.Filter;
import charline.log.PatchEntry;
import charline.log.PlannedPatch;
import charline.trial.Patch;
import charline.wording.PlanText;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What to burn next is chosen on the page, planned in the log, and recorded under its code. */
class NextPageTest {
  private static final String LATEX = "?family=latex&wood=pine&light=pulsed-1064";

  @AutoClose private final ServedLog served;

  NextPageTest(@TempDir Path folder) {
    served = new ServedLog(folder, "latex-on-pine");
  }

  private static List<String> all(String regex, String page) {
    return Pattern.compile(regex).matcher(page).results().map(m -> m.group(1)).toList();
  }

  private static String said(String page) {
    Matcher m = Pattern.compile("name=\"said\" value=\"([^\"]+)\"").matcher(page);
    assertThat(m.find()).as(page).isTrue();
    return m.group(1);
  }

  private List<PlannedPatch> open() {
    return served.log().planned().open();
  }

  @Test
  void the_page_lists_what_the_command_line_lists() throws Exception {
    String page = served.page("next" + LATEX);
    List<String> cards = all("<span class=\"nth\">\\d</span> ([^<]+)</h3>", page);
    assertThat(cards).hasSize(6);
    String cli = ServedLog.flat(served.charline("next latex pine"));
    cards.forEach(settings -> assertThat(cli).contains(settings + " on "));
    assertThat(page)
        .contains("Burn this", "Why:", "char risk", "BEFORE THE BEAM: lead: not tested.")
        .doesNotContain("Planned already");
    assertThat(served.page("next" + LATEX + "&count=3"))
        .contains("<span class=\"nth\">3</span>")
        .doesNotContain("<span class=\"nth\">4</span>");
  }

  @Test
  void a_card_plans_its_patch_and_fills_the_form_with_it() throws Exception {
    String page = served.page("next" + LATEX);
    served.post("next/burn" + LATEX, "said=" + said(page).replace("%", "%25").replace(" ", "+"));
    assertThat(open()).hasSize(1);
    PlannedPatch plan = open().get(0);
    assertThat(plan.by()).contains("Runa");
    String form = served.page("record?plan=" + plan.code());
    assertThat(form)
        .contains("data-plan=\"" + plan.code() + "\"", "Plan " + plan.code() + ": ")
        .contains(plan.reasonInFull())
        .containsPattern("name=\"passes\" value=\"1\"")
        .contains(
            "name=\"power\" value=\""
                + charline.quantity.Figures.plain(plan.settings().power().value())
                + "\"");
    assertThat(served.page("next" + LATEX)).contains("Planned already", plan.code());
    assertThat(served.page("plans")).contains(plan.code(), "/record?plan=" + plan.code());
  }

  private static String form(String page) {
    return "said=" + said(page).replace("%", "%25").replace(" ", "+");
  }

  @Test
  void home_plans_its_card_too_and_the_same_card_is_planned_once() throws Exception {
    String part = served.page("home/next");
    assertThat(part)
        .contains(
            "Burn this", "action=\"/home/burn?family=latex&amp;wood=pine&amp;light=pulsed-1064\"")
        .doesNotContain("/record?like=");
    served.post("home/burn" + LATEX, form(part));
    assertThat(open()).hasSize(1);
    assertThat(said(part))
        .startsWith(PlanText.settings(open().get(0)).replaceFirst(", figure.*", ""));
    String code = open().get(0).code();
    assertThat(served.page("")).contains("One patch is planned", "href=\"/plans\"");
    assertThat(served.led("home/burn" + LATEX, form(part))).as("again").contains("Plan " + code);
    served.page("next" + LATEX);
    served.post("next/burn" + LATEX, form(part));
    assertThat(open()).extracting(PlannedPatch::code).containsExactly(code);
    assertThat(served.post("home/burn" + LATEX, "said=99+%25+on+the+moon"))
        .contains("The list has changed since, and 99 % on the moon is not on it; choose again.");
  }

  private Patch lastBurned() {
    return served.log().patches(Filter.ALL).stream()
        .map(PatchEntry::patch)
        .max(Comparator.comparing(Patch::burnedAt))
        .orElseThrow();
  }

  @Test
  void boards_at_hand_are_ticked_and_others_typed() throws Exception {
    for (int door = 1; door <= 3; door++) {
      served.charline("board add door-%d --wood pine".formatted(door));
    }
    List<String> offered = all("name=\"board\" value=\"([^\"]+)\"", served.page("next" + LATEX));
    assertThat(offered).startsWith("door-1", "door-2", "door-3").hasSize(7);
    assertThat(offered.get(3)).isEqualTo(lastBurned().board().name());

    String ticked = served.page("next" + LATEX + "&board=door-2&board=door-3&boards=door-1");
    assertThat(all("name=\"board\" value=\"([^\"]+)\" checked", ticked))
        .containsExactly("door-2", "door-3");
    assertThat(all("</h3>\\s*<p>1 pass on ([^,]+),", ticked))
        .contains("door-1", "door-2", "door-3");
    assertThat(ticked).contains("&amp;boards=door-1&amp;board=door-2&amp;board=door-3");
  }

  @Test
  void a_patch_kept_for_a_plan_has_its_code_and_fulfils_it() throws Exception {
    served.post(
        "next/burn" + LATEX,
        "said=" + said(served.page("next" + LATEX)).replace("%", "%25").replace(" ", "+"));
    String code = open().get(0).code();
    served.entry(
        "entries/patch",
        """
        {"id":"0198f0a0-0000-7000-8000-000000000001","rig":"heron","board":"%s",
         "finish":"wall panel latex","form":"hand","power":"40","hand":"20","width":"60",
         "spot":"0.5","rep":"60","pulse":"100","passes":"1","outcome":"residue","plan":"%s"}\
        """
            .formatted(served.log().boards().get(0).name(), code));
    assertThat(served.log().hasPatch(code)).isTrue();
    assertThat(open()).isEmpty();
  }

  @Test
  void all_are_planned_together_and_one_is_given_up_for_a_reason() throws Exception {
    served.page("next" + LATEX);
    served.post("next/reserve" + LATEX, "by=Ansa");
    assertThat(open()).hasSize(6);
    String code = open().get(5).code();
    assertThat(served.post("plans/give-up", "code=" + code + "&why="))
        .contains("A change to a record needs a reason");
    served.post("plans/give-up", "code=" + code + "&why=board+is+gone");
    assertThat(open()).hasSize(5);
    assertThat(served.page("plans")).doesNotContain(code + "<");
    assertThat(served.post("next/reserve" + LATEX, "print=yes"))
        .contains("<!DOCTYPE html>", open().get(0).code().substring(0, 2));
  }

  @Test
  void what_the_list_no_longer_holds_is_refused_in_a_sentence() throws Exception {
    assertThat(served.post("next/burn" + LATEX, "said=99+%25,+hand+1+mm/s+on+the+moon,+1+pass"))
        .contains("The list has changed since, and 99 %, hand 1 mm/s on the moon, 1 pass is not");
    assertThat(open()).isEmpty();
    assertThat(served.refusal("next" + LATEX + "&count=7"))
        .contains("Ask for 3, 6, 12 or 24 patches, not");
    assertThat(served.refusal("next" + LATEX + "&on=spare")).contains("choose the piece");
  }

  @Test
  void a_coat_that_was_never_burned_begins_with_a_ladder() throws Exception {
    assertThat(served.page("next")).contains("latex on pine, pulsed 1064 nm", "Begin with another");
    assertThat(served.page("next?family=shellac&wood=oak&rig=heron"))
        .contains("Burn next: shellac on oak", "lowest rung", "the ladder begins");
  }
}
