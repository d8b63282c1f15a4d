package charline.cli.render;

import charline.wording.Json;
import charline.wording.Table;
import java.io.PrintStream;
import java.util.List;
import java.util.function.Supplier;
import picocli.CommandLine.Option;

/** The choice of form for an answer about one thing: text or JSON. */
public final class JsonReply {
  @Option(names = "--json", description = "Print JSON, with units in the keys.")
  private boolean json;

  /** Whether a program is to read the answer. */
  public boolean json() {
    return json;
  }

  /** Prints what was recorded: the record, or a sentence that is folded to the width of a page. */
  public void say(PrintStream out, Supplier<Json> object, String sentence) {
    print(out, object, () -> Table.paragraph(sentence) + "\n");
  }

  /** The same of several records. */
  public void sayAll(PrintStream out, Supplier<List<Json>> objects, String sentence) {
    out.println(json ? Json.text(objects.get()) : Table.paragraph(sentence));
  }

  /** Prints the answer in the form that was chosen; the text is ended by a line feed. */
  public void print(PrintStream out, Supplier<Json> object, Supplier<String> person) {
    if (json) {
      out.println(Json.text(object.get()));
    } else {
      out.print(person.get());
    }
  }
}
