package charline.log.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import charline.refusal.Refusal;
import java.io.StringReader;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import tech.tablesaw.api.ColumnType;
import tech.tablesaw.api.Table;
import tech.tablesaw.io.csv.CsvReadOptions;

/** What the reader of CSV cannot say, and {@link SheetText} therefore finds out beforehand. */
class TablesawLimitsTest {
  private static final String NAMES = "rig,board,note\n";

  private static Table plainly(String text) {
    ColumnType[] types = new ColumnType[3];
    Arrays.fill(types, ColumnType.STRING);
    return Table.read()
        .usingOptions(
            CsvReadOptions.builder(new StringReader(text))
                .header(false)
                .columnTypes(types)
                .separator(',')
                .lineEnding("\n")
                .build());
  }

  private static SheetText cut(String text) {
    return SheetText.of("the sheet", text);
  }

  @Test
  void it_counts_rows_and_a_person_counts_lines() {
    String ragged = NAMES + "\nheron,b1,\"two\nlines\"\nheron,b1,x,y\n";
    assertThatThrownBy(() -> plainly(ragged))
        .as("which is on line 5")
        .hasMessage("Row number 2 contains 4 columns. 3 expected.");
    assertThat(cut(ragged).records()).last().matches(r -> r.line() == 5 && r.cells() == 4);
  }

  @Test
  void it_stops_at_the_first_ragged_row() {
    String ragged = NAMES + "heron,b1\nheron,b1,x\nheron,b1,x,y\n";
    assertThatThrownBy(() -> plainly(ragged))
        .hasMessageContaining("Row number 1")
        .message()
        .doesNotContain("Row number 3");
    assertThat(cut(ragged).records())
        .extracting(SheetText.Record::cells)
        .containsExactly(3, 2, 3, 4);
  }

  @Test
  void a_quote_that_never_closes_swallows_the_rest_without_a_word() {
    String open = NAMES + "heron,b1,\"x\nheron,b2,y\n";
    Table read = plainly(open);
    assertThat(read.rowCount()).isEqualTo(2);
    assertThat(read.stringColumn(2).get(1)).contains("heron,b2,y");
    assertThatThrownBy(() -> cut(open))
        .isInstanceOf(Refusal.class)
        .hasMessageStartingWith("A quote that opens on line 2");
  }
}
