package charline.answer;

import charline.window.JobRisk;
import charline.window.Proviso;
import java.util.List;
import java.util.Optional;

/**
 * The risk of one setting with all that goes with it.
 *
 * @param subject the question and the trials that answer it
 * @param risk what the setting does
 * @param applicability whether the trials describe the rig as it is now
 * @param precautions of every finish, board and kind of light behind it
 * @param job risk over the job that was asked about
 * @param boards what was likely of the spread between boards before these trials
 * @param provisos what has to be known beside it, the weightiest first
 */
public record AskedRisk(
    TrialCase subject,
    RiskAnswer risk,
    Applicability applicability,
    Precautions precautions,
    Optional<JobRisk> job,
    BoardPriors boards,
    List<Proviso> provisos) {}
