package charline.exposure;

import charline.quantity.Invariant;
import java.util.OptionalDouble;

/**
 * Pulse settings of a pulsed source.
 *
 * @param repetitionKilohertz repetition rate, above 0
 * @param durationNanoseconds pulse duration (FWHM), above 0; empty where the person does not know
 *     it
 */
public record Pulses(double repetitionKilohertz, OptionalDouble durationNanoseconds) {
  public Pulses {
    Invariant.positive("Repetition rate", repetitionKilohertz, "kHz");
    durationNanoseconds.ifPresent(ns -> Invariant.positive("Pulse duration", ns, "ns"));
  }
}
