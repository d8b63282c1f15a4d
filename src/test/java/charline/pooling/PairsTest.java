package charline.pooling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Worlds are compared with themselves, and each counts once. */
class PairsTest {
  private static Told told(int world, int patches, String way, boolean window) {
    return new Told("ALIKE", world, patches, way, window, false, false);
  }

  private static List<Told> world(int number, boolean[] alone, boolean[] borrowed) {
    List<Told> told = new ArrayList<>();
    for (int k = 0; k < alone.length; k++) {
      int patches = PoolingTrial.COUNTS.get(k);
      told.add(told(number, patches, PoolingTrial.ALONE, alone[k]));
      told.add(told(number, patches, PoolingTrial.BORROWED, borrowed[k]));
    }
    return told;
  }

  @Test
  void six_twelve_and_eighteen_patches_of_a_world_are_one_world() {
    List<Told> told = new ArrayList<>();
    told.addAll(world(1, new boolean[] {false, false, false}, new boolean[] {true, true, true}));
    told.addAll(world(2, new boolean[] {false, true, true}, new boolean[] {false, false, true}));
    told.addAll(world(3, new boolean[] {false, true, false}, new boolean[] {false, false, true}));

    assertThat(Pairs.of(told, Told::window)).isEqualTo(new Pairs(1, 1, 1));
  }

  /** A split of 9 and 1 has the chance 2 (1 + 10) / 2^10. */
  @Test
  void chance_is_that_of_a_fair_coin() {
    assertThat(new Pairs(9, 1, 5).byChance()).isCloseTo(22.0 / 1024, within(1e-12));
    assertThat(new Pairs(1, 9, 5).byChance()).isCloseTo(22.0 / 1024, within(1e-12));
    assertThat(new Pairs(3, 3, 0).byChance()).isEqualTo(1);
    assertThat(new Pairs(0, 0, 8).byChance()).isEqualTo(1);
    assertThat(new Pairs(9, 1, 5).beyondChance()).isTrue();
    assertThat(new Pairs(4, 1, 5).beyondChance()).isFalse();
    assertThat(new Pairs(9, 1, 5).words()).isEqualTo("9 more, 1 fewer (p 0.021)");
  }
}
