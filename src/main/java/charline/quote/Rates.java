package charline.quote;

import charline.quantity.Invariant;
import java.util.OptionalDouble;

/**
 * What things cost, each in the person's own money; none is ever assumed.
 *
 * @param hour an hour of work
 * @param secondHour an hour of the second person; as the first where only that is given
 * @param machineDay the machine for a day
 * @param waste filters, bags and the disposal of all waste, for the job
 * @param smallest the least that a job is charged
 */
public record Rates(
    OptionalDouble hour,
    OptionalDouble secondHour,
    OptionalDouble machineDay,
    OptionalDouble waste,
    OptionalDouble smallest) {
  /** No price at all. */
  public static final Rates NONE =
      new Rates(
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty());

  public Rates {
    hour.ifPresent(money -> Invariant.positive("The price of an hour", money, "an hour"));
    secondHour.ifPresent(
        money -> Invariant.positive("The price of the second person", money, "an hour"));
    machineDay.ifPresent(money -> Invariant.positive("The machine's price", money, "a day"));
    waste.ifPresent(money -> Invariant.positive("The cost of waste and filters", money, "a job"));
    smallest.ifPresent(money -> Invariant.positive("The smallest charge", money, "a job"));
  }
}
