package charline.model.way;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import charline.exposure.Figure;
import charline.refusal.Refusal;
import charline.shops.Scenario;
import charline.shops.Shop;
import charline.trial.Circumstances;
import charline.trial.Knob;
import charline.trial.Patch;
import charline.trial.Place;
import charline.trial.Stratum;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WayDesignTest {
  private static final List<Patch> BURNED = Shop.draw(Scenario.usual(), 1).patches();

  private static List<Patch> patches(IntFunction<Map<Knob, Object>> how) {
    return IntStream.range(0, BURNED.size())
        .mapToObj(i -> BURNED.get(i).with(Circumstances.of(how.apply(i))))
        .toList();
  }

  private static WayDesign design(IntFunction<Map<Knob, Object>> how) {
    return WayDesign.of(patches(how), Way.UNSAID, false);
  }

  @Test
  void patches_of_one_way_have_no_shift() {
    assertThat(design(i -> Map.of()).factors()).isEmpty();
    assertThat(design(i -> Map.of(Knob.FIGURE, "circle", Knob.REST, 30.0)).factors()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 3, 4})
  void contrasts_are_orthonormal_so_that_any_two_names_are_as_far_apart(int count) {
    List<String> names = List.of("a", "b", "c", "d").subList(0, count);
    Factor.Named factor = new Factor.Named(Trait.RIG, names);
    for (int i = 0; i < count; i++) {
      double sum = 0;
      for (int k = 0; k < factor.width(); k++) {
        sum += factor.row(names.get(i))[k];
        double column = 0;
        for (String name : names) {
          column += factor.row(name)[k];
        }
        assertThat(column).as("column " + k).isCloseTo(0, within(1e-12));
      }
      assertThat(sum).isFinite();
      for (int j = 0; j < i; j++) {
        double distance = 0;
        for (int k = 0; k < factor.width(); k++) {
          double step = factor.row(names.get(i))[k] - factor.row(names.get(j))[k];
          distance += step * step;
        }
        // So the prior of a difference has the scale of the trait: sqrt(2) times that of a weight.
        assertThat(Math.sqrt(distance) * factor.prior().scale())
            .isCloseTo(Trait.RIG.prior().scale(), within(1e-12));
      }
    }
  }

  @Test
  void figures_and_rests_that_differ_each_have_a_shift() {
    WayDesign design =
        design(
            i ->
                Map.of(
                    Knob.FIGURE,
                    i % 2 == 0 ? "line" : "circle",
                    Knob.REST,
                    i % 3 == 0 ? 5.0 : 60.0));
    assertThat(design.factors())
        .extracting(Factor::trait)
        .containsExactly(Trait.FIGURE, Trait.WARMTH);
    assertThat(design.leftOut()).isEmpty();
  }

  @Test
  void what_always_goes_together_is_one_shift() {
    WayDesign design =
        design(i -> Map.of(Knob.FIGURE, i % 2 == 0 ? "line" : "circle", Knob.WETTED, i % 2 == 0));
    assertThat(design.factors()).extracting(Factor::trait).containsExactly(Trait.FIGURE);
    assertThat(design.leftOut())
        .containsExactly(new WayDesign.LeftOut(Trait.WETTED, WayDesign.Why.GOES_WITH_OTHERS));
  }

  @Test
  void a_figure_that_was_not_noted_is_one_of_its_own() {
    WayDesign design = design(i -> i < 6 ? Map.of(Knob.FIGURE, "line") : Map.of());
    assertThat(design.factors().get(0))
        .isEqualTo(new Factor.Named(Trait.FIGURE, List.of(Factor.NOT_NOTED, "line")));
  }

  @Test
  void rare_names_are_pooled_and_what_does_not_fit_is_named() {
    List<String> figures = List.of("line", "circle", "spiral", "ring", "zigzag", "sine");
    List<String> places = List.of("face", "arris", "knot", "moulding");
    WayDesign design =
        design(
            i -> {
              Map<Knob, Object> how = new HashMap<>();
              how.put(Knob.FIGURE, figures.get(i < 10 ? 0 : Math.min(5, i - 9)));
              how.put(Knob.PLACE, places.get(i % 4));
              how.put(Knob.WETTED, i % 5 == 0);
              return how;
            });
    assertThat(design.width()).isEqualTo(6);
    assertThat(((Factor.Named) design.factors().get(0)).levels())
        .hasSize(4)
        .startsWith("line")
        .endsWith(Factor.OTHERS);
    assertThat(design.leftOut())
        .containsExactly(new WayDesign.LeftOut(Trait.WETTED, WayDesign.Why.TOO_MUCH_DIFFERS));
  }

  @Test
  void a_way_that_was_not_tried_is_refused_with_what_was() {
    List<Patch> patches = patches(i -> Map.of(Knob.FIGURE, i < 6 ? "circle" : "line"));
    Stratum stratum = Stratum.of(patches.get(0));
    Way spiral = Way.UNSAID.with(Optional.of(Figure.SPIRAL));
    assertThatThrownBy(() -> WaysTried.require(spiral, stratum, patches))
        .isInstanceOf(Refusal.class)
        .hasMessage(
            "latex on pine, pulsed 1064 nm was not tried with figure spiral, and other ways of"
                + " working need not do the same; the log has 6 patches with rig Heron, figure"
                + " circle; 12 patches with rig Heron, figure line.");
    Way arris = Way.UNSAID.with(Place.ARRIS);
    assertThatThrownBy(() -> WaysTried.require(arris, stratum, patches))
        .hasMessageContaining("was not tried with place arris");
    WaysTried.require(Way.UNSAID.with(Optional.of(Figure.CIRCLE)), stratum, patches);
  }

  @Test
  void a_rest_of_ten_seconds_lets_the_wood_cool() {
    List<Warmth> found = new ArrayList<>();
    for (double rest : new double[] {0, 9.9, 10, 60}) {
      found.add(Warmth.after(rest));
    }
    assertThat(found).containsExactly(Warmth.HOT, Warmth.HOT, Warmth.COOLED, Warmth.COOLED);
  }
}
