package charline.trial;

import charline.refusal.Refusal;
import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;

/**
 * The answer of a laboratory or a swab about one substance, for a finish or for a whole job.
 *
 * @param id permanent identity
 * @param code short code, such as S-0001
 * @param finish the finish that was sampled, if one was
 * @param job the job, where the result is for all of its finishes, or as a note beside the finish
 * @param substance what was tested for: a word of the log, or the person's own
 * @param takenOn day of the sample or the test
 * @param testedBy laboratory or person, if noted
 * @param reference number of the report or the sample, if noted
 * @param result what was found
 * @param value as typed, with its unit, if noted
 * @param note further words, if any
 * @param voided why it does not count any more, if so
 */
public record Sample(
    UUID id,
    String code,
    Optional<Finish> finish,
    Optional<String> job,
    String substance,
    LocalDate takenOn,
    Optional<String> testedBy,
    Optional<String> reference,
    SampleResult result,
    Optional<String> value,
    Optional<String> note,
    Optional<String> voided) {
  public Sample {
    job = PlainText.answer(job);
    substance =
        PlainText.answer(Optional.of(substance))
            .orElseThrow(() -> Refusal.usage("A sample is tested for something; say for what."));
    testedBy = PlainText.answer(testedBy);
    reference = PlainText.answer(reference);
    value = PlainText.answer(value);
    note = PlainText.prose(note);
    voided = voided.map(PlainText::of);
    if (finish.isEmpty() && job.isEmpty()) {
      throw Refusal.usage("A sample result belongs to a finish or to a job; name one of them.");
    }
  }

  /** The same under another code. */
  public Sample coded(String other) {
    return new Sample(
        id, other, finish, job, substance, takenOn, testedBy, reference, result, value, note,
        voided);
  }

  /** The same, void for a reason. */
  public Sample voidedFor(String why) {
    return new Sample(
        id,
        code,
        finish,
        job,
        substance,
        takenOn,
        testedBy,
        reference,
        result,
        value,
        note,
        Optional.of(why));
  }
}
