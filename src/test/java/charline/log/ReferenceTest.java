package charline.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import charline.exposure.Emission;
import charline.log.reference.WordKey;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Caution;
import charline.trial.Coat;
import charline.trial.FamilyFacts;
import charline.trial.Finish;
import charline.trial.WoodFacts;
import charline.trial.WoodForm;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ReferenceTest {
  private static final List<String> ALWAYS =
      List.of("Class 4 laser", "Eyewear", "Fire", "Room", "Dust collector", "Fume", "Local rules");

  @TempDir static Path folder;
  static Logbook log;

  @BeforeAll
  static void open() {
    log = Logbook.open(folder.resolve("boathouse.db"), Boathouse.CLOCK);
  }

  @AfterAll
  static void close() {
    log.close();
  }

  @Test
  void every_row_names_its_source() {
    assertThat(log.reference().woods()).extracting(WoodFacts::source).allMatch(s -> !s.isBlank());
    assertThat(log.reference().families())
        .extracting(FamilyFacts::source)
        .allMatch(s -> !s.isBlank());
    for (FamilyFacts family : log.reference().families()) {
      assertThat(log.reference().cautions(family.name(), "pine", Emission.PULSED))
          .extracting(Caution::source)
          .allMatch(s -> !s.isBlank());
    }
  }

  @Test
  void no_word_means_two_families_or_two_woods_or_a_family_and_a_wood() {
    Set<String> seen = new HashSet<>();
    log.reference().families().forEach(f -> once(seen, f.name(), f.aliases()));
    log.reference().woods().forEach(w -> once(seen, w.name(), w.aliases()));
  }

  private static void once(Set<String> seen, String name, List<String> aliases) {
    assertThat(seen.add(WordKey.key(name))).as(name).isTrue();
    aliases.forEach(a -> assertThat(seen.add(WordKey.key(a))).as(a).isTrue());
  }

  @Test
  void every_family_tells_how_to_know_it_and_how_it_behaves() {
    assertThat(log.reference().families())
        .extracting(FamilyFacts::name)
        .containsExactlyInAnyOrder(
            "latex",
            "alkyd",
            "primer",
            "stain",
            "varnish",
            "shellac",
            "lacquer",
            "clear coat",
            "milk paint",
            "wax/oil",
            "textured coat",
            "bed liner",
            "metal-flake paint",
            "laminate",
            "chlorinated film",
            "filler",
            "grime");
    assertThat(log.reference().families())
        .allSatisfy(
            f -> {
              assertThat(f.usualFilm()).isNotBlank();
              assertThat(f.clue()).endsWith(".");
              assertThat(f.behaviour()).endsWith(".");
              assertThat(f.aliases()).isNotEmpty();
            });
  }

  /** Names of EN 13556 and of the yard. */
  @ParameterizedTest
  @CsvSource({
    "Scots pine, scots pine",
    "European redwood, scots pine",
    "red deal, scots pine",
    "pitch pine, pitch pine",
    "yellow pine, yellow pine",
    "Southern yellow pine, southern pine",
    "European oak, european oak",
    "English oak, european oak",
    "Quercus robur, european oak",
    "iroko, iroko",
    "kambala, iroko",
    "sapele, sapele",
    "sapelli, sapele",
    "Norway spruce, norway spruce",
    "sweet chestnut, sweet chestnut",
    "Honduras mahogany, american mahogany",
    "okoume, okoume",
    "marine ply, plywood",
    "hardboard, hdf",
    "Columbian pine, douglas-fir"
  })
  void names_of_the_trade_are_known(String typed, String wood) {
    assertThat(log.reference().wood(typed)).isEqualTo(wood);
  }

  @ParameterizedTest
  @CsvSource({
    "parquet, 'Parquet is a floor, not a wood; name the wood that it is made of, such as oak or"
        + " beech.'",
    "floor-boards, 'Floorboards are a use, not a wood; name the wood, such as pine or oak.'",
    "Veneer, 'Veneer is a form, not a wood; name the wood of the face, and give veneer as the"
        + " form.'"
  })
  void a_word_that_names_no_wood_is_answered_with_what_to_say(String typed, String advice) {
    assertThatThrownBy(() -> log.reference().wood(typed))
        .isInstanceOf(Refusal.class)
        .hasMessage(advice);
  }

  @Test
  void paint_alone_names_no_family() {
    assertThatThrownBy(() -> log.reference().family("paint"))
        .hasMessage(
            "Paint may be latex, alkyd or milk paint, which differ under the beam; name one of"
                + " them.");
  }

  /** A trade name of several species has no number that holds for all of them. */
  @ParameterizedTest
  @ValueSource(strings = {"pitch pine", "yellow pine", "southern pine", "soft maple"})
  void a_name_of_several_species_has_no_specific_gravity(String wood) {
    assertThat(log.reference().woods())
        .filteredOn(w -> w.name().equals(wood))
        .singleElement()
        .satisfies(
            w -> {
              assertThat(w.specificGravity()).isEmpty();
              assertThat(w.source()).contains("species is open");
            });
  }

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          pine, alkyd, pulsed,             Lead; Pitch
          oak, varnish, pulsed,            Lead; Isocyanates; Hardwood dust
          mdf, latex, pulsed,              Older coats; Formaldehyde
          pine, textured coat, pulsed,     Older coats; Asbestos; Pitch
          pine, bed liner, pulsed,         Older coats; Isocyanates; Pitch
          pine, putty, pulsed,             Lead; Asbestos; Pitch
          scots pine, latex, pulsed,       Older coats; Pitch
          european larch, latex, pulsed,   Older coats; Pitch
          hdf, latex, pulsed,              Older coats; Formaldehyde
          iroko, latex, pulsed,            Older coats; Hardwood dust
          plywood, laminate, pulsed,       Older coats; Chlorinated film; Formaldehyde; Reflections
          western redcedar, lacquer, cw,   Older coats; Nitrocellulose; Continuous wave
          maple, wax/oil, pulsed,          Older coats; Wax flares; Hardwood dust
          maple, metal-flake paint, cw,    Older coats; Continuous wave; Reflections; Hardwood dust
          """)
  void cautions_fit_the_coat_the_wood_and_the_light(
      String wood, String family, String emission, String special) {
    List<Caution> cautions = log.reference().cautions(family, wood, Emission.ofWord(emission));
    assertThat(cautions).extracting(Caution::topic).containsAll(ALWAYS);
    assertThat(cautions)
        .extracting(Caution::topic)
        .filteredOn(t -> !ALWAYS.contains(t))
        .containsExactly(special.split("; "));
    assertThat(cautions.get(0).topic()).isEqualTo("Class 4 laser");
    assertThat(cautions.get(cautions.size() - 1).text())
        .isEqualTo(
            "Local codes, the insurer and licensed trades come first; this does not replace them.");
  }

  @Test
  void a_year_in_a_caution_is_that_of_a_country_and_paper_gets_a_shorter_text() {
    for (Caution caution : log.reference().everyCaution()) {
      assertThat(caution.source()).as(caution.topic()).isNotBlank();
      assertThat(caution.onPaper().length()).as(caution.topic()).isLessThanOrEqualTo(175);
      for (String sentence : caution.text().split("(?<=\\.) ")) {
        if (sentence.matches(".*\\b(18|19|20)\\d\\d\\b.*")) {
          assertThat(sentence).containsAnyOf("USA", "UK", "Canada", "Australia", "France");
        }
      }
    }
    assertThat(log.reference().substances())
        .allSatisfy(s -> assertThat(s.source()).as(s.name()).isNotBlank())
        .allSatisfy(s -> assertThat(s.foundMeans()).as(s.name()).endsWith("."));
  }

  private Finish finish(String name, String family, String called) {
    return new Finish(
        log.newId(),
        name,
        family,
        List.of(new Coat(family, Optional.empty(), OptionalDouble.empty(), Optional.of(called))));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          wall            | latex            | latex                | lead SAY
          hall            | textured coat    | textured paint       | lead SAY, asbestos FREE_FIRST
          sash            | filler           | window putty         | lead SAY, asbestos FREE_FIRST
          old putty, sash | alkyd            | alkyd                | lead SAY, asbestos FREE_FIRST
          shelf           | laminate         | foil                 | lead SAY, chlorinated film FREE_FIRST
          shelf           | laminate         | high-pressure laminate | lead SAY
          HPL worktop     | laminate         | laminate             | lead SAY
          shelf, no pvc   | laminate         | melamine             | lead SAY
          PVC-free shelf  | laminate         | laminate             | lead SAY, chlorinated film FREE_FIRST
          pvc door        | laminate         | melamine             | lead SAY, chlorinated film NEVER
          "Door (PVC)"    | latex            | latex                | lead SAY, chlorinated film NEVER
          hull            | alkyd            | Chlorinated-rubber paint | lead SAY, chlorinated film NEVER
          hall            | chlorinated film | vinyl wallpaper      | lead SAY, chlorinated film NEVER
          wall            | latex            | vinyl paint          | lead SAY
          hull            | alkyd            | anti-fouling         | lead SAY, organotin SAY
          stem            | primer           | zinc chromate        | lead SAY, chromate SAY
          """)
  void tests_are_demanded_by_family_and_by_what_a_person_calls_a_coat(
      String name, String family, String called, String demanded) {
    assertThat(log.reference().demands(finish(name, family, called)))
        .extracting(d -> d.substance() + " " + d.strictness())
        .containsExactlyInAnyOrder(demanded.split(", "));
  }

  @Test
  void a_word_for_a_substance_means_one_of_the_logs_or_is_the_persons_own() {
    assertThat(log.reference().substance("Pb")).contains("lead");
    assertThat(log.reference().substance("Hexavalent-Chromium")).contains("chromate");
    assertThat(log.reference().substance("barium")).isEmpty();
  }

  @Test
  void a_coat_under_the_outermost_brings_its_own_cautions_and_so_does_veneer() {
    Finish finish =
        new Finish(
            log.newId(),
            "latex over old enamel",
            "latex",
            List.of(
                new Coat("latex", Optional.empty(), OptionalDouble.empty()),
                new Coat("alkyd", Optional.empty(), OptionalDouble.empty())));
    Board veneer =
        new Board(
            log.newId(),
            "locker door",
            "maple",
            WoodForm.VENEER,
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.empty());
    assertThat(log.reference().cautions(finish, veneer, Emission.PULSED))
        .extracting(Caution::topic)
        .contains("Lead", "Formaldehyde");
  }
}
