package charline.log;

import static org.assertj.core.api.Assertions.assertThat;

import charline.trial.WoodFacts;
import java.nio.file.Path;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Published: USDA Forest Products Laboratory, Wood Handbook, FPL-GTR-190 (2010), Table 5-3a,
 * specific gravity at 12 % moisture (read in row-by-row transcriptions). The table prints two
 * decimals and the log keeps exactly those.
 */
class WoodHandbookReferenceTest {
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

  private static WoodFacts facts(String word) {
    String name = log.reference().wood(word);
    return log.reference().woods().stream()
        .filter(w -> w.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      textBlock =
          """
          # Table 5-3a, hardwoods at 12 % moisture
          white oak, 0.68
          northern red oak, 0.63
          white ash, 0.60
          shagbark hickory, 0.72
          American elm, 0.50
          American chestnut, 0.43
          black walnut, 0.55
          butternut, 0.38
          black cherry, 0.50
          sugar maple, 0.63
          red maple, 0.54
          yellow birch, 0.62
          paper birch, 0.55
          American beech, 0.64
          sweetgum, 0.52
          American sycamore, 0.49
          yellow-poplar, 0.42
          red alder, 0.41
          quaking aspen, 0.38
          American basswood, 0.37
          # Table 5-3a, softwoods at 12 % moisture
          longleaf pine, 0.59
          loblolly pine, 0.51
          shortleaf pine, 0.51
          Douglas-fir, 0.48
          baldcypress, 0.46
          western hemlock, 0.45
          lodgepole pine, 0.41
          ponderosa pine, 0.40
          Sitka spruce, 0.40
          red spruce, 0.40
          redwood, 0.40
          sugar pine, 0.36
          eastern white pine, 0.35
          western redcedar, 0.32
          # Table 5-3a, woods of later versions; eastern cottonwood stands as cottonwood
          slash pine, 0.59
          virginia pine, 0.48
          red pine, 0.46
          jack pine, 0.43
          white spruce, 0.36
          engelmann spruce, 0.35
          white fir, 0.39
          balsam fir, 0.35
          noble fir, 0.39
          western larch, 0.52
          tamarack, 0.53
          eastern hemlock, 0.40
          yellow cedar, 0.44
          port orford cedar, 0.43
          atlantic white cedar, 0.32
          northern white cedar, 0.31
          eastern redcedar, 0.47
          incense cedar, 0.37
          southern red oak, 0.59
          black oak, 0.61
          bur oak, 0.64
          chestnut oak, 0.66
          post oak, 0.67
          black ash, 0.49
          green ash, 0.56
          oregon ash, 0.55
          rock elm, 0.63
          slippery elm, 0.53
          pecan, 0.66
          mockernut hickory, 0.72
          black locust, 0.69
          hackberry, 0.53
          sweet birch, 0.65
          silver maple, 0.47
          black maple, 0.57
          bigleaf maple, 0.48
          cottonwood, 0.40
          black willow, 0.39
          southern magnolia, 0.50
          black tupelo, 0.50
          sassafras, 0.46
          """)
  void specific_gravity_is_that_of_the_handbook(String wood, double printed) {
    WoodFacts facts = facts(wood);
    assertThat(facts.specificGravity()).hasValue(printed);
    assertThat(facts.source()).contains("FPL-GTR-190 (2010), Table 5-3a");
  }

  /** Worked by hand from the same handbook, chapter 4: 0.68 x 1120 = 761.6 kg/m3. */
  @Test
  void white_oak_weighs_761_6_kilograms_per_cubic_metre() {
    assertThat(facts("white oak").densityKilogramsPerCubicMetre().orElseThrow())
        .isCloseTo(761.6, Offset.offset(1e-9));
  }

  @Test
  void no_wood_has_a_specific_gravity_that_was_not_checked_here() {
    assertThat(log.reference().woods().stream().filter(w -> w.specificGravity().isPresent()))
        .hasSize(75);
  }

  @ParameterizedTest
  @CsvSource({"pine", "oak", "maple", "mahogany", "teak", "mdf", "plywood"})
  void a_generic_wood_carries_no_specific_gravity(String wood) {
    assertThat(facts(wood).specificGravity()).isEmpty();
  }
}
