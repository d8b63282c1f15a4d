package charline.web.entry;

import charline.log.Logbook;
import charline.record.SampleEntries;
import charline.refusal.Refusal;
import charline.trial.Finish;
import charline.trial.Sample;
import charline.trial.SampleResult;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import java.util.UUID;
import java.util.function.UnaryOperator;

/** Records results of samples from the named values of a form, and takes them out. */
public final class SampleForms {
  /** What is done with a form about a finish. */
  @FunctionalInterface
  public interface Work {
    void take(Finish finish, UnaryOperator<String> form, String by);
  }

  private final Logbook log;

  public SampleForms(Logbook log) {
    this.log = log;
  }

  /** Records a result for a finish, or for the whole job that the form names. */
  public void sample(Finish finish, UnaryOperator<String> form, String by) {
    Fields f = Fields.of(form);
    SampleEntries entries = new SampleEntries(log, Doubtful.unless(f.yes("sure")), by);
    entries.add(read(f, entries, log.newId(), "", finish));
  }

  /** Puts a result right; the old one stays in the history. */
  public void amend(Finish finish, UnaryOperator<String> form, String by) {
    Fields f = Fields.of(form);
    SampleEntries entries = new SampleEntries(log, Doubtful.unless(f.yes("sure")), by);
    Sample old = log.samples().byCode(f.need("sample", "The sample"));
    old.voided()
        .ifPresent(
            why -> {
              throw Refusal.usage(
                  "%s is void (%s); record the result anew.".formatted(old.code(), why));
            });
    entries.amend(
        old,
        read(f, entries, old.id(), old.code(), old.finish().orElse(finish)),
        f.need("why", "The reason"));
  }

  private static Sample read(Fields f, SampleEntries entries, UUID id, String code, Finish finish) {
    boolean wholeJob = f.yes("whole_job");
    if (wholeJob && f.line("job") == null) {
      throw Refusal.usage("A result for a whole job needs the name of the job.");
    }
    return new Sample(
        id,
        code,
        wholeJob ? Optional.empty() : Optional.of(finish),
        Optional.ofNullable(f.line("job")),
        entries.substance(f.need("substance", "What was tested for")),
        day(f.need("on", "The day of the sample")),
        Optional.ofNullable(f.line("tested_by")),
        Optional.ofNullable(f.line("reference")),
        SampleResult.ofWord(f.need("result", "The result")),
        Optional.ofNullable(f.line("value")),
        f.note("note"),
        Optional.empty());
  }

  private static LocalDate day(String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeParseException e) {
      throw Refusal.usage(
          "The day of a sample must read like 2026-05-04, not \"%s\".".formatted(text), e);
    }
  }

  /** Takes a result out of every answer; it stays in the log with the reason. */
  public void takeOut(Finish finish, UnaryOperator<String> form, String by) {
    Fields f = Fields.of(form);
    log.samples().voidSample(f.need("sample", "The sample"), by, f.need("why", "The reason"));
  }
}
