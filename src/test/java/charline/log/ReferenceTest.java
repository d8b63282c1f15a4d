package charline.log;

import static org.assertj.core.api.Assertions.assertThat;

import charline.exposure.Emission;
import charline.log.reference.WordKey;
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
    assertThat(log.woods()).extracting(WoodFacts::source).allMatch(s -> !s.isBlank());
    assertThat(log.families()).extracting(FamilyFacts::source).allMatch(s -> !s.isBlank());
    for (FamilyFacts family : log.families()) {
      assertThat(log.cautions(family.name(), "pine", Emission.PULSED))
          .extracting(Caution::source)
          .allMatch(s -> !s.isBlank());
    }
  }

  @Test
  void no_word_means_two_families_or_two_woods_or_a_family_and_a_wood() {
    Set<String> seen = new HashSet<>();
    log.families().forEach(f -> once(seen, f.name(), f.aliases()));
    log.woods().forEach(w -> once(seen, w.name(), w.aliases()));
  }

  private static void once(Set<String> seen, String name, List<String> aliases) {
    assertThat(seen.add(WordKey.key(name))).as(name).isTrue();
    aliases.forEach(a -> assertThat(seen.add(WordKey.key(a))).as(a).isTrue());
  }

  @Test
  void every_family_tells_how_to_know_it_and_how_it_behaves() {
    assertThat(log.families())
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
            "metal-flake paint",
            "laminate",
            "chlorinated film",
            "filler",
            "grime");
    assertThat(log.families())
        .allSatisfy(
            f -> {
              assertThat(f.usualFilm()).isNotBlank();
              assertThat(f.clue()).endsWith(".");
              assertThat(f.behaviour()).endsWith(".");
              assertThat(f.aliases()).isNotEmpty();
            });
  }

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          pine, alkyd, pulsed,             Lead; Pitch
          oak, varnish, pulsed,            Lead; Isocyanates; Hardwood dust
          mdf, latex, pulsed,              Older coats; Formaldehyde
          pine, textured coat, pulsed,     Older coats; Asbestos; Isocyanates; Pitch
          plywood, laminate, pulsed,       Older coats; Chlorinated film; Formaldehyde; Reflections
          western redcedar, lacquer, cw,   Older coats; Nitrocellulose; Continuous wave
          maple, wax/oil, pulsed,          Older coats; Wax flares; Hardwood dust
          maple, metal-flake paint, cw,    Older coats; Continuous wave; Reflections; Hardwood dust
          """)
  void cautions_fit_the_coat_the_wood_and_the_light(
      String wood, String family, String emission, String special) {
    List<Caution> cautions = log.cautions(family, wood, Emission.ofWord(emission));
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
    assertThat(log.cautions(finish, veneer, Emission.PULSED))
        .extracting(Caution::topic)
        .contains("Lead", "Formaldehyde");
  }
}
