package charline.cache;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * Records, strings, ids and classes in the order in which they came by first, so that each is
 * written once and then by its number. Records are the same where they are one object.
 */
final class Seen {
  private final Numbered<Object> records;
  private final Numbered<String> strings;
  private final Numbered<Class<?>> classes;
  private final Numbered<UUID> ids;

  /** Nothing yet. */
  Seen() {
    records = new Numbered<>(new IdentityHashMap<>(), null);
    strings = new Numbered<>(new HashMap<>(), null);
    classes = new Numbered<>(new HashMap<>(), null);
    ids = new Numbered<>(new HashMap<>(), null);
  }

  /** What came by before, and what is to come. */
  Seen(Seen before) {
    records = new Numbered<>(new IdentityHashMap<>(), before.records);
    strings = new Numbered<>(new HashMap<>(), before.strings);
    classes = new Numbered<>(new HashMap<>(), before.classes);
    ids = new Numbered<>(new HashMap<>(), before.ids);
  }

  Numbered<Object> records() {
    return records;
  }

  Numbered<String> strings() {
    return strings;
  }

  Numbered<Class<?>> classes() {
    return classes;
  }

  Numbered<UUID> ids() {
    return ids;
  }

  /** Things with a number each. */
  static final class Numbered<T> {
    private final Numbered<T> before;
    private final int first;
    private final Map<T, Integer> numbers;
    private final List<T> things = new ArrayList<>();

    Numbered(Map<T, Integer> numbers, Numbered<T> before) {
      this.numbers = numbers;
      this.before = before;
      first = before == null ? 0 : before.size();
    }

    private int size() {
      return first + things.size();
    }

    Optional<Integer> number(T thing) {
      Integer number = numbers.get(thing);
      if (number != null) {
        return Optional.of(number);
      }
      return before == null ? Optional.empty() : before.number(thing);
    }

    void add(T thing) {
      numbers.put(thing, size());
      things.add(thing);
    }

    T at(int number) {
      if (number >= first) {
        return things.get(number - first);
      }
      if (before == null) {
        throw new IndexOutOfBoundsException(number);
      }
      return before.at(number);
    }
  }
}
