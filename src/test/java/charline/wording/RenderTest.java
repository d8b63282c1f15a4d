package charline.wording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RenderTest {
  @ParameterizedTest
  @CsvSource({
    "80, 80",
    "79.99999999999997, 80",
    "100.00000000000001, 100",
    "1199999.9999999998, 1200000",
    "-20.000000000000004, -20",
    "12345678912, 12345678912",
    "12345678912.4, 12345678900",
    "0.29999999999999999, 0.3",
    "91.65151389911681, 91.6515139",
    "-0.0, 0"
  })
  void json_has_nine_digits_and_writes_whole_numbers_out(double value, String text) {
    assertThat(Json.text(new Json().put("coat_um", value)))
        .contains("\"coat_um\" : " + text + "\n");
  }

  @Test
  void json_rounds_a_bound_to_the_side_on_which_it_stays_true() {
    Json json = new Json().atMost("upper", 0.94727665142).atLeast("lower", 0.94727665188);

    assertThat(Json.text(json))
        .contains("\"upper\" : 0.947276652", "\"lower\" : 0.947276651")
        .doesNotContain("NaN");
    assertThat(Json.text(new Json().put("range", Json.inward(18.23456789123, 40))))
        .contains("18.2345679", "40");
  }

  @Test
  void a_table_is_never_wider_than_eighty_columns() {
    Table table = new Table("patch", ">dose", "note");
    table.row("P-0001", "9.09", "the grain was wild here and the resin bled ".repeat(4));

    assertThat(table.text().lines()).allMatch(line -> line.length() <= 80).hasSizeGreaterThan(2);
  }

  /** A long name in front gives way at its blanks before the last column breaks its words. */
  @Test
  void words_are_not_broken_where_another_column_can_give_way() {
    Table table = new Table("board", ">moisture", "note");
    table.row(
        "gallery stair tread under the boathouse window, second from the left, upper side",
        "12 %",
        "weathered");

    assertThat(table.text())
        .isEqualTo(
            """
              board                                                      moisture  note
              gallery stair tread under the boathouse window, second         12 %  weathered
              from the left, upper side
            """);
  }

  @Test
  void a_name_without_blanks_breaks_after_a_hyphen() {
    assertThat(Table.fold("boathouse-gallery-stair-tread-under-window", 20))
        .containsExactly("boathouse-gallery-", "stair-tread-under-", "window");
    assertThat(Table.fold("boathousegallerystairtread", 20))
        .containsExactly("boathousegallerystai", "rtread");
    assertThat(Table.fold("-5 to -20 degrees", 9)).containsExactly("-5 to -20", "degrees");
  }

  @Test
  void numbers_stand_flush_right() {
    assertThat(new Table("what", ">J/cm2").row("a", "9.09").row("b", "11.1").text())
        .isEqualTo(
            """
              what  J/cm2
              a      9.09
              b      11.1
            """);
  }

  @Test
  void a_note_cannot_move_the_cursor_or_break_a_row() {
    assertThat(new Table("note").row("red\u001b[2Jboat\nhouse").text())
        .isEqualTo("  note\n  red [2Jboat house\n");
  }

  @Test
  void a_row_must_fill_its_columns() {
    assertThatThrownBy(() -> new Table("a", "b").row("1"))
        .hasMessage("A row must have 2 cells, not 1.");
  }

  @Test
  void a_missing_part_is_null_and_a_number_has_no_binary_noise() {
    Json json =
        new Json()
            .put("hand_mm_s", 25.4 * 1.2)
            .put("passes", 3)
            .put("rep_khz", OptionalDouble.empty())
            .put("note", Optional.empty())
            .put("risk", Double.NaN)
            .put("range", List.of(1.0, 2.5));

    assertThat(Json.text(json))
        .isEqualToNormalizingWhitespace(
            """
            { "hand_mm_s" : 30.48, "passes" : 3, "rep_khz" : null, "note" : null,
              "risk" : null, "range" : [ 1, 2.5 ] }
            """
                .replace("\n  ", "\n"));
  }

  @Test
  void csv_quotes_what_needs_quotes() {
    assertThat(Csv.text(List.of(new Json().put("note", "a \"soft\", pale\ncoat").put("um", 90.0))))
        .isEqualTo("note,um\n\"a \"\"soft\"\", pale\ncoat\",90\n");
    assertThat(Csv.text(List.of())).isEmpty();
  }
}
