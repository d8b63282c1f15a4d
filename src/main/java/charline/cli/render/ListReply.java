package charline.cli.render;

import charline.refusal.Refusal;
import charline.wording.Csv;
import charline.wording.Json;
import java.io.PrintStream;
import java.util.List;
import java.util.function.Supplier;
import picocli.CommandLine.Option;

/** The choice of form for an answer that lists: a table, JSON or CSV. */
public final class ListReply {
  @Option(names = "--json", description = "Print JSON, with units in the keys.")
  private boolean json;

  @Option(names = "--csv", description = "Print CSV, with units in the column heads.")
  private boolean csv;

  /** Refuses both at once; to be called before anything is done. */
  public void check() {
    if (json && csv) {
      throw Refusal.usage("Give --json or --csv, not both.");
    }
  }

  /** Whether the answer is to be CSV, one flat line each. */
  public boolean csv() {
    return csv;
  }

  /** Whether a person is to read the answer. */
  public boolean forPerson() {
    return !json && !csv;
  }

  /**
   * Prints the answer in the form that was chosen.
   *
   * @param rows one flat object each, for a program
   * @param person the answer for a person, ended by a line feed
   */
  public void print(PrintStream out, Supplier<List<Json>> rows, Supplier<String> person) {
    if (json) {
      out.println(Json.text(rows.get()));
    } else {
      out.print(csv ? Csv.text(rows.get()) : person.get());
    }
  }
}
