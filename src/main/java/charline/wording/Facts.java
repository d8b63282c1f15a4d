package charline.wording;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What is known of one thing, a line each: the name of the fact, then its value. */
public final class Facts {
  private static final int VALUE_AT = 18;

  private final StringBuilder text = new StringBuilder();

  public Facts(String title) {
    text.append(title).append('\n');
  }

  public Facts add(String name, String value) {
    List<String> lines = new ArrayList<>(Table.fold(value, Table.WIDTH - VALUE_AT));
    String head = "  " + name;
    for (String line : lines) {
      text.append(head).append(" ".repeat(Math.max(1, VALUE_AT - head.length())));
      text.append(line).append('\n');
      head = "";
    }
    return this;
  }

  /** Leaves the line out where nothing is known. */
  public Facts add(String name, Optional<String> value) {
    value.ifPresent(known -> add(name, known));
    return this;
  }

  public String text() {
    return text.toString();
  }
}
