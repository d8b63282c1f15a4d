package charline.web.entry;

import charline.exposure.SpotDefinition;
import charline.log.Joins;
import charline.log.Logbook;
import charline.log.VoidCheck;
import charline.log.VoidUpkeep;
import charline.quantity.Measure;
import charline.quantity.Measure.Quantity;
import charline.record.Setup;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Coat;
import charline.trial.Finish;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import charline.trial.Upkeep;
import charline.trial.WoodForm;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/**
 * Puts right what was set up, from the named values of a form. A form holds every value, so that a
 * blank one takes it out.
 */
public final class PutRightForms {
  private final Logbook log;

  public PutRightForms(Logbook log) {
    this.log = log;
  }

  /** Amends the rig named {@code of}. */
  public void rig(UnaryOperator<String> form, String by) {
    Fields f = Fields.of(form);
    Rig old = log.rig(of(f));
    Rig amended =
        new Rig(
            old.id(),
            f.need("name", "A name"),
            old.emission(),
            Measure.parse(f.need("rated", "The rated power"), Quantity.POWER).value(),
            Measure.parse(f.need("wavelength", "The wavelength"), Quantity.WAVELENGTH).value(),
            SpotDefinition.ofWord(f.need("spot_means", "What the spot diameter means")),
            given(f, "spot", Quantity.LENGTH),
            given(f, "rep", Quantity.RATE),
            given(f, "pulse", Quantity.PULSE_DURATION),
            given(f, "width", Quantity.LENGTH),
            given(f, "max_pulse", Quantity.PULSE_ENERGY),
            Optional.ofNullable(f.line("lens")),
            SetupForms.usual(f),
            SetupForms.optics(f),
            old.checks(),
            old.upkeep());
    setup(f, by).amend(old, amended, f.line("why"));
  }

  /** Amends the power check of identity {@code of} of the rig named {@code rig}. */
  public void check(UnaryOperator<String> form, String by) {
    Fields f = Fields.of(form);
    Rig rig = log.rig(f.need("rig", "The rig"));
    PowerCheck old = check(rig, of(f));
    PowerCheck amended =
        new PowerCheck(
            old.id(),
            old.at(),
            Measure.parse(f.need("percent", "The power setting"), Quantity.SHARE).value(),
            Measure.parse(f.need("metered", "The metered power"), Quantity.POWER).value(),
            given(f, "rep", Quantity.RATE),
            given(f, "pulse", Quantity.PULSE_DURATION));
    setup(f, by).amend(rig, old, amended, f.line("why"));
  }

  /** A power check of a rig, void or not. */
  public PowerCheck check(Rig rig, String id) {
    return Stream.concat(
            rig.checks().stream(), log.rigEntries().voidChecks(rig).stream().map(VoidCheck::check))
        .filter(c -> c.id().toString().equals(id))
        .findFirst()
        .orElseThrow(() -> Refusal.usage("Rig %s has no such power check.".formatted(rig.name())));
  }

  /** Amends the upkeep of identity {@code of} of the rig named {@code rig}. */
  public void upkeep(UnaryOperator<String> form, String by) {
    Fields f = Fields.of(form);
    Rig rig = log.rig(f.need("rig", "The rig"));
    Upkeep old = upkeep(rig, of(f));
    setup(f, by).amend(rig, old, SetupForms.upkeep(f, old.id(), old.at()), f.line("why"));
  }

  /** Upkeep of a rig, void or not. */
  public Upkeep upkeep(Rig rig, String id) {
    return Stream.concat(
            rig.upkeep().stream(),
            log.rigEntries().voidUpkeep(rig).stream().map(VoidUpkeep::upkeep))
        .filter(u -> u.id().toString().equals(id))
        .findFirst()
        .orElseThrow(() -> Refusal.usage("Rig %s has no such upkeep.".formatted(rig.name())));
  }

  /** Amends the board named {@code of}. */
  public void board(UnaryOperator<String> form, String by) {
    Fields f = Fields.of(form);
    Board old = log.board(of(f));
    Board amended =
        new Board(
            old.id(),
            f.need("name", "A name"),
            log.reference().wood(f.need("wood", "The wood")),
            WoodForm.ofWord(f.need("form", "The form of the board")),
            Optional.ofNullable(f.line("condition")),
            given(f, "moisture", Quantity.SHARE),
            Optional.ofNullable(f.line("job")));
    setup(f, by).amend(old, amended, f.line("why"));
  }

  /** Amends the finish named {@code of}. */
  public void finish(UnaryOperator<String> form, String by) {
    Fields f = Fields.of(form);
    Finish old = log.finish(of(f));
    Finish amended =
        new Finish(
            old.id(),
            f.need("name", "A name"),
            log.reference().family(f.need("family", "The family that it counts as")),
            withWords(SetupForms.coats(log, f), old.coats()));
    setup(f, by).amend(old, amended, f.line("why"));
  }

  /** A form shows the family of a coat; what the person called it stays while the family does. */
  private static List<Coat> withWords(List<Coat> coats, List<Coat> old) {
    List<Coat> worded = new ArrayList<>();
    for (int i = 0; i < coats.size(); i++) {
      Coat coat = coats.get(i);
      Optional<String> called =
          i < old.size() && old.get(i).family().equals(coat.family())
              ? coat.called().or(old.get(i)::called)
              : coat.called();
      worded.add(new Coat(coat.family(), coat.tone(), coat.thicknessMicrometres(), called));
    }
    return worded;
  }

  /** Takes a power check, upkeep or a board out, for a reason. */
  public void takeOut(String kind, UnaryOperator<String> form, String by) {
    Fields f = Fields.of(form);
    String why = f.need("why", "The reason");
    if (kind.equals("check")) {
      Rig rig = log.rig(f.need("rig", "The rig"));
      log.rigEntries().voidCheck(rig, check(rig, of(f)), by, why);
    } else if (kind.equals("upkeep")) {
      Rig rig = log.rig(f.need("rig", "The rig"));
      log.rigEntries().voidUpkeep(rig, upkeep(rig, of(f)), by, why);
    } else {
      setup(f, by).takeOut(log.board(of(f)), why);
    }
  }

  /** Lets a void power check, upkeep or board count again. */
  public void bringBack(String kind, UnaryOperator<String> form, String by) {
    Fields f = Fields.of(form);
    if (kind.equals("check")) {
      Rig rig = log.rig(f.need("rig", "The rig"));
      setup(f, by).bringBack(rig, check(rig, of(f)), f.line("why"));
    } else if (kind.equals("upkeep")) {
      Rig rig = log.rig(f.need("rig", "The rig"));
      log.rigEntries().bringBack(rig, upkeep(rig, of(f)), by, f.line("why"));
    } else {
      setup(f, by).bringBack(log.board(of(f)), f.line("why"));
    }
  }

  /** Joins what is named {@code of} into what is named {@code into}. */
  public void join(Joins.Kind kind, UnaryOperator<String> form, String by) {
    Fields f = Fields.of(form);
    String into = f.need("into", "The record that stays");
    Setup setup = setup(f, by);
    switch (kind) {
      case RIG -> setup.join(log.rig(of(f)), log.rig(into), f.line("why"));
      case BOARD -> setup.join(log.board(of(f)), log.board(into), f.line("why"));
      case FINISH -> setup.join(log.finish(of(f)), log.finish(into), f.line("why"));
    }
  }

  private static String of(Fields f) {
    return f.need("of", "What is to be put right");
  }

  private Setup setup(Fields f, String by) {
    return new Setup(log, Doubtful.unless(f.yes("sure")), by);
  }

  private static OptionalDouble given(Fields f, String name, Quantity quantity) {
    String text = f.line(name);
    return text == null
        ? OptionalDouble.empty()
        : OptionalDouble.of(Measure.parse(text, quantity).value());
  }
}
