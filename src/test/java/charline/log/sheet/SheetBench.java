package charline.log.sheet;

import charline.exposure.Emission;
import charline.log.EmptyLog;
import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.trial.Rig;
import charline.trial.RigBuilder;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.OptionalDouble;

/** A log of the boathouse with its rigs, and sheets to bring into it. */
final class SheetBench implements AutoCloseable {
  static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-11-20T08:00:00Z"), ZoneOffset.ofHours(1));

  final Logbook log;

  SheetBench(Path folder, String name) {
    log = EmptyLog.open(folder.resolve(name), CLOCK);
    log.add(rig("heron", Emission.PULSED, 300, 0.5, 60.0, 100.0, 60.0), "Runa");
    log.add(rig("otter", Emission.CONTINUOUS, 1500, 1.2, null, null, 80.0), "Runa");
    log.add(rig("bare", Emission.PULSED, 200, null, null, null, null), "Runa");
  }

  private Rig rig(
      String name,
      Emission emission,
      double watts,
      Double spot,
      Double rate,
      Double pulse,
      Double width) {
    return RigBuilder.heron(log.newId())
        .named(name)
        .emission(emission)
        .ratedWatts(watts)
        .spotMillimetres(number(spot))
        .repetitionKilohertz(number(rate))
        .pulseNanoseconds(number(pulse))
        .scanWidthMillimetres(number(width))
        .build();
  }

  private static OptionalDouble number(Double value) {
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  static TrialSheet sheet(String text) {
    return TrialSheet.read(new StringReader(text));
  }

  ImportResult add(String text) {
    return new TrialSheetImporter(log, CLOCK).add(sheet(text), false);
  }

  ImportResult check(String text) {
    return new TrialSheetImporter(log, CLOCK).check(sheet(text), false);
  }

  List<PatchEntry> patches() {
    return log.patches(Filter.ALL);
  }

  String export() {
    StringWriter text = new StringWriter();
    TrialSheetExporter.write(patches(), log.ownWords(), text);
    return text.toString();
  }

  @Override
  public void close() {
    log.close();
  }
}
