package charline.log.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import charline.refusal.Refusal;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;

/**
 * Times of a sheet whose clock was changed. Berlin's went from 02:00 to 03:00 on 2026-03-29 and
 * from 03:00 back to 02:00 on 2026-10-25. Source: the IANA time zone database, which Java brings.
 */
class SheetTimesTest {
  private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

  private static OffsetDateTime read(String text) {
    return SheetTimes.parse(text, BERLIN, DateOrder.UNKNOWN);
  }

  @Test
  void a_time_that_the_clock_never_showed_is_refused() {
    assertThatThrownBy(() -> read("2026-03-29 02:30"))
        .isInstanceOf(Refusal.class)
        .hasMessage(
            "Clocks were put forward from 02:00 to 03:00 on 2026-03-29, so there was no 02:30;"
                + " give the time that the clock showed.");
  }

  @Test
  void of_a_time_that_the_clock_showed_twice_the_offset_must_be_given() {
    assertThatThrownBy(() -> read("2026-10-25 02:30"))
        .isInstanceOf(Refusal.class)
        .hasMessage(
            "Clocks were put back from 03:00 to 02:00 on 2026-10-25, so 02:30 came twice; give"
                + " 2026-10-25T02:30+02:00 or 2026-10-25T02:30+01:00.");
    assertThat(read("2026-10-25 02:30+01:00"))
        .isEqualTo(OffsetDateTime.parse("2026-10-25T02:30+01:00"));
  }

  @Test
  void the_minutes_before_and_after_are_plain() {
    assertThat(read("2026-03-29 01:59")).isEqualTo(OffsetDateTime.parse("2026-03-29T01:59+01:00"));
    assertThat(read("2026-03-29 03:00")).isEqualTo(OffsetDateTime.parse("2026-03-29T03:00+02:00"));
    assertThat(read("2026-10-25 01:59")).isEqualTo(OffsetDateTime.parse("2026-10-25T01:59+02:00"));
    assertThat(read("2026-10-25 03:00")).isEqualTo(OffsetDateTime.parse("2026-10-25T03:00+01:00"));
    assertThat(read("2026-10-25")).isEqualTo(OffsetDateTime.parse("2026-10-25T12:00+01:00"));
  }
}
