package charline.log.search;

import java.util.Set;

/**
 * What a word of the log means.
 *
 * @param attribute what it is the name of
 * @param values any of these
 */
public record Term(Attribute attribute, Set<String> values) {
  public Term {
    values = Set.copyOf(values);
  }
}
