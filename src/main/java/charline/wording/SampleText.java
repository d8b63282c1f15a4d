package charline.wording;

import charline.trial.Finish;
import charline.trial.Sample;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Results of samples in words and as JSON. */
public final class SampleText {
  private SampleText() {}

  /** "S-0003: asbestos in finish hall-texture: not found (2026-05-04, B-17)". */
  public static String line(Sample sample) {
    return "%s: %s in %s: %s"
        .formatted(
            sample.code(),
            sample.substance(),
            of(sample),
            PrecautionText.result(Optional.of(sample)));
  }

  /** What the result is about. */
  public static String of(Sample sample) {
    return sample
        .finish()
        .map(finish -> "finish " + finish.name())
        .orElseGet(() -> "job " + sample.job().orElseThrow());
  }

  /** One flat object. */
  public static Json json(Sample sample) {
    return new Json()
        .put("sample", sample.code())
        .put("substance", sample.substance())
        .put("finish", sample.finish().map(Finish::name))
        .put("job", sample.job())
        .put("result", sample.result().word())
        .put("value", sample.value())
        .put("taken_on", sample.takenOn().toString())
        .put("tested_by", sample.testedBy())
        .put("reference", sample.reference())
        .put("note", sample.note())
        .put("void_because", sample.voided());
  }

  /** A table of results. */
  public static String table(List<Sample> samples) {
    Table table = new Table("sample", "day", "of", "tested for, result, by whom");
    samples.forEach(
        s ->
            table.row(
                s.code(),
                s.takenOn().toString(),
                of(s),
                s.substance()
                    + ": "
                    + Stream.of(
                            Optional.of(PrecautionText.result(s.result())),
                            s.value(),
                            s.testedBy(),
                            s.reference(),
                            s.note(),
                            s.voided().map("void: "::concat))
                        .flatMap(Optional::stream)
                        .collect(Collectors.joining("; "))));
    return table.text();
  }

  /** Everything about one result. */
  public static String text(Sample sample) {
    return new Facts("Sample " + sample.code())
        .add("tested for", sample.substance())
        .add("result", PrecautionText.result(sample.result()))
        .add("value", sample.value())
        .add("finish", sample.finish().map(Finish::name))
        .add("job", sample.job())
        .add("day", sample.takenOn().toString())
        .add("tested by", sample.testedBy())
        .add("reference", sample.reference())
        .add("note", sample.note())
        .add("void", sample.voided())
        .text();
  }
}
