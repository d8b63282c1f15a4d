package charline.cli.trials;

import charline.cli.command.TypedValues;
import charline.quantity.Invariant;
import charline.quantity.Measure.Quantity;
import java.util.OptionalDouble;
import picocli.CommandLine.Option;

/** The job whose risk is asked for beside that of a patch. */
final class JobAreaOption {
  @Option(
      names = "--job-area",
      paramLabel = "AREA",
      description = "Area of a job, in m2: adds the char risk over all of it.")
  private String area;

  /** Area of the job in m², if one was typed. */
  OptionalDouble squareMetres() {
    OptionalDouble squareMetres = TypedValues.ifGiven("--job-area", area, Quantity.SURFACE);
    squareMetres.ifPresent(m2 -> Invariant.positive("Area of the job", m2, "m2"));
    return squareMetres;
  }
}
