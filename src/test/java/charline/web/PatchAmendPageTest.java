package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import charline.log.PatchEntry;
import charline.trial.Knob;
import charline.trial.KnobValues;
import charline.web.entry.PatchForms;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A patch and its readings are put right on the page, and the old values stay in the history. */
class PatchAmendPageTest {
  @AutoClose private final ServedLog served;

  PatchAmendPageTest(@TempDir Path folder) {
    served = new ServedLog(folder, "latex-on-pine");
  }

  private PatchEntry patch() {
    return served.log().patch("LP-01");
  }

  /** What the form sends with some fields changed. */
  private String sent(String... changes) {
    Map<String, String> fields = new LinkedHashMap<>(PatchForms.shown(patch()));
    for (int i = 0; i < changes.length; i += 2) {
      fields.put(changes[i], changes[i + 1]);
    }
    return fields.entrySet().stream()
        .map(e -> e.getKey() + "=" + URLEncoder.encode(e.getValue(), StandardCharsets.UTF_8))
        .collect(Collectors.joining("&"));
  }

  @Test
  void a_form_that_was_not_changed_changes_nothing() throws Exception {
    PatchEntry before = patch();
    assertThat(served.post("patch/LP-01/amend", sent()))
        .contains("Nothing in LP-01 would change; say what to amend.");
    assertThat(patch()).isEqualTo(before);
    assertThat(served.page("patch/LP-01")).contains("/patch/LP-01/amend", "/board?of=");
  }

  @Test
  void a_setting_a_reading_and_a_time_are_put_right() throws Exception {
    PatchEntry before = patch();
    String answer =
        served.post(
            "patch/LP-01/amend",
            sent(
                "hand",
                "38",
                "outcome4",
                "char",
                "at4",
                "2026-09-03T09:18",
                "depth1",
                "",
                "note",
                "by the window",
                "burned_by",
                "Ansa",
                "why",
                "misread"));
    assertThat(answer).isEqualTo("Redirected");
    PatchEntry after = patch();
    assertThat(KnobValues.of(after.patch().settings())).containsEntry(Knob.HAND, 38.0);
    assertThat(after.typed())
        .containsEntry("hand", "38")
        .containsEntry("power", before.typed().get("power"));
    assertThat(after.patch().readings().get(4).outcome().text()).isEqualTo("char");
    assertThat(after.patch().readings().get(1).depthMicrometres()).isEmpty();
    assertThat(after.patch().readings().get(4).at()).hasToString("2026-09-03T09:18+02:00");
    assertThat(after.note()).contains("by the window");
    assertThat(after.by()).contains("Ansa");
    assertThat(after.patch().readings().get(0).by()).as("judged on burning").contains("Ansa");
    assertThat(served.page("patch/LP-01"))
        .contains("hand speed from 40 mm/s to 38 mm/s", "misread");
  }

  @Test
  void another_way_to_give_the_speed_needs_its_own_pair() throws Exception {
    assertThat(served.post("patch/LP-01/amend", sent("form", "timed"))).contains("Marked area");
    served.post("patch/LP-01/amend", sent("form", "timed", "area", "33", "seconds", "2.2"));
    assertThat(KnobValues.of(patch().patch().settings()))
        .containsEntry(Knob.AREA, 33.0)
        .containsEntry(Knob.SECONDS, 2.2);
  }

  @Test
  void what_is_unusual_is_asked_about_first() throws Exception {
    String refused = served.post("patch/LP-01/amend", sent("spot", "6"));
    assertThat(refused)
        .contains("Spot diameter of 6 mm", "I am sure of these values", "value=\"6\"");
    assertThat(KnobValues.of(patch().patch().settings())).containsEntry(Knob.SPOT, 0.5);
    served.post("patch/LP-01/amend", sent("spot", "6", "sure", "true"));
    assertThat(KnobValues.of(patch().patch().settings())).containsEntry(Knob.SPOT, 6.0);
  }

  @Test
  void a_reading_is_struck_for_a_reason_and_a_void_patch_comes_back() throws Exception {
    int readings = patch().patch().readings().size();
    served.post("patch/LP-01/amend", sent("strike1", "true", "why", "was soot"));
    assertThat(patch().patch().readings()).hasSize(readings - 1);
    served.post("patch/LP-01/void", "why=dropped");
    assertThat(served.page("patch/LP-01")).contains("Let LP-01 count again");
    served.post("patch/LP-01/bring-back", "");
    assertThat(patch().voided()).isEmpty();
  }

  @Test
  void a_time_that_cannot_be_is_refused() throws Exception {
    assertThat(served.post("patch/LP-01/amend", sent("burned_at", "yesterday")))
        .contains("A time must read like 2026-05-04 14:30");
    assertThat(served.post("patch/LP-01/amend", sent("at0", "2026-09-01T08:00"))).contains("LP-01");
    assertThat(patch().patch().readings().get(0).at()).isEqualTo(patch().patch().burnedAt());
  }
}
