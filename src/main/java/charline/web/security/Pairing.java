package charline.web.security;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Consumer;

/**
 * The pairing code. It serves one device and ten minutes; guessing is slowed per address, and over
 * all for addresses that have guessed wrong, so that nobody's guesses keep an honest device out. A
 * code that was guessed at too often is replaced: 200 guesses at one of 10^8 codes.
 */
public final class Pairing {
  private static final Duration LIFETIME = Duration.ofMinutes(10);
  private static final Duration MINUTE = Duration.ofMinutes(1);
  private static final int TRIES_PER_ADDRESS = 5;
  private static final int TRIES_IN_ALL = 20;
  private static final int WRONG_PER_ADDRESS = 10;
  private static final int WRONG_PER_CODE = 200;

  private final Secrets secrets;
  private final Clock clock;
  private final Consumer<String> announce;
  private final Map<String, Deque<Instant>> triesByAddress = new HashMap<>();
  private final Deque<Instant> tries = new ArrayDeque<>();
  private String code;
  private Instant expiresAt;
  private final Map<String, Integer> wrongByAddress = new HashMap<>();
  private int wrong;

  /**
   * @param announce is told every new code, for the screen of the serving machine
   */
  Pairing(Secrets secrets, Clock clock, Consumer<String> announce) {
    this.secrets = secrets;
    this.clock = clock;
    this.announce = announce;
    draw();
  }

  /** Announces the first code, once the page can be opened. */
  synchronized void opened() {
    announce.accept(spaced(code));
  }

  /** The code that holds now. */
  public synchronized String code() {
    if (!clock.instant().isBefore(expiresAt)) {
      renew();
    }
    return code;
  }

  /** Until when it holds. */
  public synchronized Instant expiresAt() {
    return expiresAt;
  }

  /**
   * Takes a code as typed, blanks and hyphens aside; a right one is used up.
   *
   * @throws HttpRefusal 429 if tried too often, 403 if wrong
   */
  synchronized void redeem(String typed, String address) {
    slow(address);
    String digits = typed.replaceAll("[\\s-]", "");
    if (!Secrets.same(digits, code())) {
      wrong++;
      if (wrongByAddress.merge(address, 1, Integer::sum) % WRONG_PER_ADDRESS == 0
          || wrong >= WRONG_PER_CODE) {
        renew();
      }
      throw new HttpRefusal(
          403,
          "The pairing code must be the one that the serving machine shows now; yours is"
              + " different.");
    }
    wrongByAddress.remove(address);
    renew();
  }

  private void slow(String address) {
    Instant since = clock.instant().minus(MINUTE);
    triesByAddress.values().forEach(d -> d.removeIf(t -> t.isBefore(since)));
    triesByAddress.values().removeIf(Deque::isEmpty);
    tries.removeIf(t -> t.isBefore(since));
    Deque<Instant> own = triesByAddress.computeIfAbsent(address, a -> new ArrayDeque<>());
    boolean guesser = wrongByAddress.containsKey(address);
    if (own.size() >= TRIES_PER_ADDRESS || guesser && tries.size() >= TRIES_IN_ALL) {
      throw new HttpRefusal(
          429, "Too many pairing codes were tried; wait a minute, then try again.");
    }
    own.add(clock.instant());
    tries.add(clock.instant());
  }

  private void draw() {
    code = secrets.code();
    expiresAt = clock.instant().plus(LIFETIME);
    wrong = 0;
  }

  private void renew() {
    draw();
    announce.accept(spaced(code));
  }

  /** In two halves, for reading aloud. */
  public static String spaced(String code) {
    return code.substring(0, 4) + " " + code.substring(4);
  }
}
