package charline.log;

import java.nio.file.Path;
import java.time.Clock;

/** A bench that makes its log, sets it up and then records as {@link Recorder} does. */
final class FirstRecorder {
  private FirstRecorder() {}

  /** Takes the log and how many patches to burn. */
  public static void main(String[] args) {
    try (Logbook log = Logbook.open(Path.of(args[0]), Clock.systemUTC())) {
      new Boathouse(log);
    }
    Recorder.main(args);
  }
}
