package charline.answer;

import charline.plan.NextPatches;
import charline.trial.Stratum;
import java.util.Optional;

/**
 * The patches to burn next.
 *
 * @param question what was asked
 * @param stratum what the patches are about
 * @param tried the trials so far; empty where nothing was burned yet
 * @param next the patches, none where nothing should be burned
 * @param precautions what must be known before the beam is on
 */
public record NextAnswer(
    TrialQuestion question,
    Stratum stratum,
    Optional<TrialCase> tried,
    NextPatches next,
    Precautions precautions) {}
