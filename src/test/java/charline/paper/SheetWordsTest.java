package charline.paper;

import static org.assertj.core.api.Assertions.assertThat;

import charline.exposure.Emission;
import charline.trial.Caution;
import charline.trial.Patch;
import charline.trial.Stratum;
import charline.window.JobRisk;
import charline.window.Recommendation;
import charline.window.Verdict;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class SheetWordsTest {
  private static final Stratum PULSED = new Stratum("latex", "pine", Emission.PULSED, 1064);
  private static final Stratum CW = new Stratum("latex", "pine", Emission.CONTINUOUS, 1070);

  @Test
  void the_start_setting_is_in_the_rigs_own_knobs_with_its_ranges() {
    assertThat(page(Verdict.WINDOW).start().orElseThrow().knobs())
        .containsExactly(
            new SheetPage.Knob(
                "Power, start at", "42", "%", "stay in 38 to 46 %", "118 W on the work"),
            new SheetPage.Knob(
                "Hand speed, start at", "15", "mm/s", "stay in 14 to 16 mm/s", "300 mm in 20 s"),
            new SheetPage.Knob("Passes", "2", "", "cool in between", "270 cm²/min in all"));
  }

  @Test
  void raw_counts_come_before_any_probability() {
    for (Verdict verdict : Verdict.values()) {
      assertThat(page(verdict).sure().get(0))
          .matches(l -> l.label().equals("Counted"))
          .matches(l -> l.text().startsWith("23 patches on 4 boards, 46 readings: "));
    }
  }

  @Test
  void a_job_says_what_a_small_risk_adds_up_to() {
    Recommendation window = BoathousePapers.latexOnPine(Verdict.WINDOW);
    WindowSheet sheet =
        new WindowSheet(
            window,
            List.of(),
            BoathousePapers.STAMP,
            Optional.of(JobRisk.of(4.5, 25, 0.002, 0.01)),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());

    assertThat(sheet.page(Paper.ANY).sure())
        .contains(
            new SheetPage.Line(
                "Whole job",
                "4.5 m² is 1800 areas: any char 97 %, at most 100 %; charred areas about 4, at"
                    + " most 18."));
  }

  @Test
  void no_sheet_goes_without_beam_fire_lead_and_fume() {
    assertThat(StandingCautions.completing(List.of(), PULSED))
        .extracting(Caution::topic)
        .containsExactly("Class 4 beam", "Fire", "Lead", "Fume");
  }

  @Test
  void a_caution_that_is_brought_takes_the_place_of_ours() {
    Caution lead = new Caution("Lead paint", "Ask first.", "");
    Caution rules = new Caution("Local rules", "They come first.", "");

    assertThat(StandingCautions.completing(List.of(lead, rules), PULSED))
        .contains(lead)
        .doesNotContain(rules) // the page says so in its own line
        .extracting(Caution::topic)
        .containsExactly("Class 4 beam", "Fire", "Fume", "Lead paint");
  }

  @Test
  void a_continuous_beam_is_warned_of_in_the_words_brought_or_else_in_ours() {
    Caution brought = new Caution("Continuous wave", "Do not.", "");

    assertThat(StandingCautions.warning(List.of(brought), CW)).contains("Do not.");
    assertThat(StandingCautions.completing(List.of(brought), CW)).doesNotContain(brought);
    assertThat(StandingCautions.warning(List.of(), CW).orElseThrow())
        .startsWith("CW on wood is not recommended");
    assertThat(StandingCautions.warning(List.of(brought), PULSED)).isEmpty();
  }

  @Test
  void rules_are_named_by_number_once_each() {
    assertThat(
            StandingCautions.rulesOf(
                List.of(
                    new Caution("a", "", "IEC 60825-1; user guide IEC TR 60825-14; ANSI Z136.1"),
                    new Caution("b", "", "40 CFR 745 subpart E (US rule: 0.5 % by weight)"),
                    new Caution("c", "", "OSHA 29 CFR 1926.62; NFPA 51B (2019): one hour"),
                    new Caution("d", "", "ANSI Z136.1; formerly EN 207"),
                    new Caution("e", "", "common practice, no published source"))))
        .isEqualTo(
            "IEC 60825-1, IEC TR 60825-14, ANSI Z136.1, 40 CFR 745 subpart E, 29 CFR 1926.62,"
                + " NFPA 51B, EN 207");
  }

  @Test
  void codes_that_count_up_are_joined() {
    assertThat(codes("P-0003", "P-0001", "P-0002", "P-0007")).isEqualTo("P-0001 to P-0003, P-0007");
    assertThat(codes("P-0001", "P-0002", "door")).isEqualTo("P-0001, P-0002, door");
    assertThat(codes("a", "c", "e", "g", "i", "k", "m", "o", "q", "s"))
        .isEqualTo("a, c, e, g, i, k, m, o and 2 more");
  }

  @Test
  void long_cautions_take_height_from_the_map_and_never_the_counts() {
    WindowSheet lengthy =
        new WindowSheet(
            BoathousePapers.latexOnPine(Verdict.WINDOW),
            List.of(new Caution("Long", "Look, cool, wipe. ".repeat(150), "")),
            BoathousePapers.STAMP);
    SheetPage tight = lengthy.page(Paper.LETTER);
    SheetPage roomy = page(Verdict.WINDOW);

    assertThat(tight.tight()).isTrue();
    assertThat(roomy.tight()).isFalse();
    assertThat(tight.map().orElseThrow().height()).isLessThan(roomy.map().orElseThrow().height());
    assertThat(tight.sure())
        .extracting(SheetPage.Line::label)
        .startsWith("Counted", "At the start", "Inside the box", "Asked for");
  }

  private static String codes(String... codes) {
    Patch any = BoathousePapers.latexOnPine(Verdict.WINDOW).patches().get(0);
    return PatchCodes.words(
        Arrays.stream(codes)
            .map(
                code ->
                    new Patch(
                        any.id(),
                        code,
                        any.burnedAt(),
                        any.rig(),
                        any.board(),
                        any.finish(),
                        any.settings(),
                        any.areaSquareCentimetres(),
                        any.readings()))
            .toList());
  }

  private static SheetPage page(Verdict verdict) {
    return new WindowSheet(BoathousePapers.latexOnPine(verdict), List.of(), BoathousePapers.STAMP)
        .page(Paper.ANY);
  }
}
