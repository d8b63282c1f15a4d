package charline.log;

import static charline.log.Boathouse.MORNING;

import java.nio.file.Path;
import java.time.Clock;
import java.util.stream.IntStream;

/**
 * A bench in a process of its own: records patches and readings one by one, and says each on its
 * standard output only after the log has taken it.
 */
final class Recorder {
  private Recorder() {}

  /** Takes the log and how many patches to burn. */
  public static void main(String[] args) {
    try (Logbook log = Logbook.open(Path.of(args[0]), Clock.systemUTC())) {
      int patches = Integer.parseInt(args[1]);
      say("ready");
      if (patches > 0) {
        Boathouse there = Boathouse.alreadySetUp(log);
        IntStream.range(0, patches).forEach(i -> burn(log, there));
      }
    }
  }

  private static void burn(Logbook log, Boathouse there) {
    PatchEntry burned =
        log.inTransaction(
            () -> {
              PatchEntry entry =
                  Boathouse.entry(
                      there.patch(log.nextPatchCode(), MORNING, there.reading(1, "residue")));
              log.add(entry);
              return entry;
            });
    String code = burned.patch().code();
    say(code + " 1");
    log.addReading(code, there.reading(2, "tint"));
    say(code + " 2");
    log.voidPatch(code, "Ada", "on a knot");
    say(code + " void");
  }

  private static void say(String line) {
    System.out.println(line);
    System.out.flush();
  }
}
