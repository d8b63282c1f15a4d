package charline.model.check;

import charline.exposure.Emission;
import charline.model.Event;
import java.util.List;
import java.util.Optional;

/** One thing that a check found, with its numbers. */
public sealed interface FitFinding {
  /** How much it weighs. */
  Severity severity();

  /** What was checked. */
  Topic topic();

  /** What a check is about. */
  enum Topic {
    ORDER("order"),
    SAMPLING("sampling"),
    PATCH("patch"),
    DOSE("dose"),
    BOARD("board"),
    WAY("way of working"),
    CALIBRATION("calibration"),
    BOARD_SPREAD("board spread"),
    EVIDENCE("evidence");

    private final String word;

    Topic(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }

  /** A check that passed, or failed so badly that the answer must not be trusted. */
  private static Severity failsIf(boolean fails) {
    return fails ? Severity.FAILS : Severity.FINE;
  }

  /**
   * Pairs of which one patch was hotter in every respect.
   *
   * @param agreeing the hotter one met its event sooner
   * @param denying the cooler one did
   * @param decisive too many of these for chance
   */
  record Order(Event event, int agreeing, int denying, boolean decisive) implements FitFinding {
    @Override
    public Severity severity() {
      return failsIf(decisive);
    }

    @Override
    public Topic topic() {
      return Topic.ORDER;
    }
  }

  /**
   * Whether the posterior could be computed.
   *
   * @param paretoK diagnostic of the importance sampling, good up to 0.7
   */
  record Sampling(Event event, double paretoK, boolean reliable) implements FitFinding {
    @Override
    public Severity severity() {
      return failsIf(!reliable);
    }

    @Override
    public Topic topic() {
      return Topic.SAMPLING;
    }
  }

  /** What is surprising of a patch. */
  enum Surprise {
    /** It met its event within so many passes. */
    EARLY,
    /** It met its event only after so many passes. */
    LATE,
    /** It had not met it after so many passes. */
    NEVER
  }

  /**
   * A patch that the model fitted to the others did not expect.
   *
   * @param passes at its last reading
   * @param doseJoulesPerCm2 of one pass
   * @param chance that the others gave to this or anything further out
   */
  record SurprisingPatch(
      Severity severity,
      Event event,
      String code,
      Surprise surprise,
      int passes,
      double doseJoulesPerCm2,
      double chance)
      implements FitFinding {
    @Override
    public Topic topic() {
      return Topic.PATCH;
    }
  }

  /**
   * No patch surprises the model.
   *
   * @param leastExpected code of the least expected patch; empty where there is one patch only
   * @param tail tail probability of that patch
   * @param patches patches looked at
   */
  record NoSurprise(Optional<String> leastExpected, double tail, int patches)
      implements FitFinding {
    @Override
    public Severity severity() {
      return Severity.FINE;
    }

    @Override
    public Topic topic() {
      return Topic.PATCH;
    }
  }

  /** A count that the model did not expect. */
  record CountOff(Severity severity, Topic topic, Event event, CountCheck count)
      implements FitFinding {}

  /** Counts are as the model expects. */
  record CountsExpected(Topic topic) implements FitFinding {
    @Override
    public Severity severity() {
      return Severity.FINE;
    }
  }

  /** Chances given and what was seen part ways. */
  record CalibrationOff(Severity severity, CalibrationBin bin) implements FitFinding {
    @Override
    public Topic topic() {
      return Topic.CALIBRATION;
    }
  }

  /** Chances given and what was seen go together. */
  record Calibrated() implements FitFinding {
    @Override
    public Severity severity() {
      return Severity.FINE;
    }

    @Override
    public Topic topic() {
      return Topic.CALIBRATION;
    }
  }

  /**
   * How much boards differ.
   *
   * @param factor by which one board in three differs from the average, or more
   * @param usual factor that the prior allows for in 19 of 20 cases
   */
  record BoardSpread(double factor, double usual) implements FitFinding {
    /** Whether boards differ by more than the prior allows for. */
    public boolean wide() {
      return factor > usual;
    }

    @Override
    public Severity severity() {
      return wide() ? Severity.LOOK : Severity.FINE;
    }

    @Override
    public Topic topic() {
      return Topic.BOARD_SPREAD;
    }
  }

  /** A board further off than the prior expects of any of so many. */
  record BoardOff(BoardCheck board, int boards) implements FitFinding {
    @Override
    public Severity severity() {
      return Severity.LOOK;
    }

    @Override
    public Topic topic() {
      return Topic.BOARD;
    }
  }

  /** What the trials cannot say, so that the prior speaks in their place; or a likely slip. */
  sealed interface Caveat extends FitFinding {
    @Override
    default Severity severity() {
      return Severity.LOOK;
    }

    @Override
    default Topic topic() {
      return Topic.EVIDENCE;
    }
  }

  /** There is one patch only. */
  record OnePatch() implements Caveat {}

  /** No patch met the event. */
  record NoneSeen(Event event) implements Caveat {}

  /** Every patch had met the event at its first reading. */
  record AllSeenAtFirst(Event event) implements Caveat {}

  /** Every patch had the same dose. */
  record SameDose() implements Caveat {}

  /** Every patch had the same fluence or irradiance. */
  record SameIntensity(Emission emission) implements Caveat {}

  /** Every reading was after the same number of passes. */
  record SamePasses(int passes) implements Caveat {}

  /** Dose and intensity went up and down together. */
  record DoseWithIntensity(Emission emission) implements Caveat {}

  /** The dose of a patch lies so far off the others that a slip is likely. */
  record DoseFarOff(String code, double doseJoulesPerCm2, double medianJoulesPerCm2)
      implements Caveat {}

  /** Patches that agree in all that was recorded. */
  record EnteredTwice(List<String> codes) implements Caveat {
    public EnteredTwice {
      codes = List.copyOf(codes);
    }
  }
}
