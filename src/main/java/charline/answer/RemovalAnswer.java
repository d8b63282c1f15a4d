package charline.answer;

import charline.model.CoatContradiction;
import charline.model.classical.AblationOutcome;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The removal model and what it makes of the work.
 *
 * @param model the model
 * @param coatMicrometres thickness of the coat that the rates are for, if every finish has one
 * @param rates at some of the settings that were tried, from the least dose to the most
 * @param ablation the ablation law; empty where no depth was noted
 * @param contradictions what the trials say of the coat that cannot all be true
 */
public record RemovalAnswer(
    ModelAnswer model,
    OptionalDouble coatMicrometres,
    List<RemovalRate> rates,
    Optional<AblationOutcome> ablation,
    List<CoatContradiction> contradictions) {
  public RemovalAnswer {
    contradictions = List.copyOf(contradictions);
    rates = List.copyOf(rates);
  }
}
