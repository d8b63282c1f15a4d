package charline.record;

import charline.log.Logbook;
import charline.log.reference.Nearest;
import charline.refusal.Refusal;
import charline.trial.Plausibility.Doubt;
import charline.trial.Sample;
import charline.trial.SubstanceFacts;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Records results of samples, puts them right and takes them out. */
public final class SampleEntries {
  private static final int LONGEST_WORD = 60;

  private final Logbook log;
  private final Assurance sure;
  private final String by;

  /**
   * @param by who records
   */
  public SampleEntries(Logbook log, Assurance sure, String by) {
    this.log = log;
    this.sure = sure;
    this.by = by;
  }

  /** The log's own word for what was tested for, or the person's own. */
  public String substance(String typed) {
    String word = typed.strip();
    if (word.isEmpty() || word.length() > LONGEST_WORD) {
      throw Refusal.usage(
          "What a sample is tested for must be 1 to %d characters, such as lead, not %d."
              .formatted(LONGEST_WORD, word.length()));
    }
    return log.reference().substance(word).orElse(word);
  }

  /** Records a result under the next code. */
  public Sample add(Sample sample) {
    sure.require(doubts(sample));
    return log.samples().add(sample, by);
  }

  /** Replaces a result. */
  public void amend(Sample old, Sample amended, String why) {
    if (amended.equals(old)) {
      throw Refusal.usage("Nothing in %s would change; say what to amend.".formatted(old.code()));
    }
    List<Doubt> doubts = new ArrayList<>(doubts(amended));
    doubts.removeAll(doubts(old));
    sure.require(doubts);
    log.samples().amend(amended, by, why);
  }

  private List<Doubt> doubts(Sample sample) {
    List<Doubt> doubts = new ArrayList<>();
    LocalDate today = log.now().toLocalDate();
    if (sample.takenOn().isAfter(today)) {
      throw Refusal.usage(
          "The day of a sample must not be in the future, and %s is; it is %s today."
              .formatted(sample.takenOn(), today));
    }
    if (log.reference().substance(sample.substance()).isEmpty()) {
      List<String> near =
          Nearest.to(
              sample.substance(),
              log.reference().substances().stream()
                  .flatMap(s -> Stream.concat(Stream.of(s.name()), s.aliases().stream()))
                  .toList());
      if (!near.isEmpty()) {
        doubts.add(
            new Doubt(
                null,
                "\"%s\" is none of the usual substances (nearest: %s)"
                    .formatted(sample.substance(), String.join(", ", near))));
      }
    }
    sample
        .job()
        .filter(job -> sample.finish().isEmpty())
        .filter(
            job ->
                log.boards().stream()
                    .flatMap(b -> b.job().stream())
                    .noneMatch(job::equalsIgnoreCase))
        .ifPresent(
            job -> doubts.add(new Doubt(null, "no board of this log belongs to job " + job)));
    return doubts;
  }

  /** The usual substances, as a person may name them. */
  public static List<String> usual(Logbook log) {
    return log.reference().substances().stream().map(SubstanceFacts::name).toList();
  }
}
