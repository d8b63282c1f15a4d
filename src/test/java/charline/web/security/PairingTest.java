package charline.web.security;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import charline.log.Boathouse;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class PairingTest {
  private final List<String> announced = new ArrayList<>();
  private final Pairing pairing =
      new Pairing(new Secrets(), Boathouse.CLOCK, code -> announced.add(code.replace(" ", "")));

  private static String other(String code) {
    return code.startsWith("0") ? "1" + code.substring(1) : "0" + code.substring(1);
  }

  @Test
  void the_first_code_is_announced_when_the_page_can_be_opened() {
    assertThat(announced).isEmpty();
    pairing.opened();
    assertThat(announced).containsExactly(pairing.code());
  }

  @Test
  void the_wrong_guesses_of_others_keep_no_honest_device_out() {
    for (int i = 0; i < 30; i++) {
      String address = "192.0.2." + (i % 6);
      assertThatThrownBy(() -> pairing.redeem(other(pairing.code()), address))
          .isInstanceOf(HttpRefusal.class);
    }
    pairing.redeem(pairing.code(), "192.0.2.77");
    assertThat(announced).as("used up").hasSize(1);
  }

  @Test
  void addresses_that_guessed_wrong_are_slowed_together() {
    for (int i = 0; i < 20; i++) {
      String address = "192.0.2." + (i % 10);
      assertThatThrownBy(() -> pairing.redeem(other(pairing.code()), address))
          .hasMessageContaining("yours is different");
    }
    assertThatThrownBy(() -> pairing.redeem(pairing.code(), "192.0.2.3"))
        .hasMessageContaining("Too many pairing codes");
  }

  @Test
  void a_code_is_replaced_after_two_hundred_guesses_from_wherever() {
    String first = pairing.code();
    for (int i = 0; i < 200; i++) {
      String address = "192.0.2." + i;
      assertThatThrownBy(() -> pairing.redeem(other(first), address))
          .isInstanceOf(HttpRefusal.class);
    }
    assertThat(pairing.code()).isNotEqualTo(first);
  }
}
