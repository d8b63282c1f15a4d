package charline.model.classical;

import charline.model.Event;
import java.util.List;
import java.util.Optional;

/**
 * There is no fit.
 *
 * @param reason one sentence or two: what was found and what to do
 */
public record NoClassicalFit(
    Event event,
    Method method,
    String rows,
    List<String> notes,
    Optional<Separating> separation,
    String reason)
    implements ClassicalOutcome {}
