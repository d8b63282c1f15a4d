package charline.wording;

import charline.model.check.BoardCheck;
import charline.model.check.CalibrationBin;
import charline.model.check.CountCheck;
import charline.model.check.FitChecks;
import charline.model.check.FitFinding;
import charline.model.check.PatchCheck;

/** How well a model fits, as JSON. */
final class CheckJson {
  private CheckJson() {}

  static Json of(FitChecks checks) {
    return new Json()
        .put("worst", checks.worst().word())
        .put("findings", checks.findings().stream().map(CheckJson::finding).toList())
        .put("log_score", checks.logScore())
        .put("patches", checks.patches().stream().map(CheckJson::patch).toList())
        .put("dose_classes", checks.doses().stream().map(CheckJson::count).toList())
        .put("boards", checks.boards().stream().map(CheckJson::count).toList())
        .put("ways", checks.ways().stream().map(CheckJson::count).toList())
        .put("calibration", checks.calibration().stream().map(CheckJson::bin).toList())
        .put("board_shifts", checks.shifts().stream().map(CheckJson::shift).toList());
  }

  private static Json finding(FitFinding finding) {
    return new Json()
        .put("severity", finding.severity().word())
        .put("about", finding.topic().word())
        .put("words", FindingText.of(finding));
  }

  private static Json patch(PatchCheck patch) {
    return new Json()
        .put("patch", patch.code())
        .put("chance_sooner", patch.sooner())
        .put("chance_as_seen", patch.asSeen())
        .put("chance_later", patch.later())
        .put("tail", patch.tail())
        .put("tail_adjusted", patch.adjusted())
        .put("pareto_k", patch.kHat())
        .put("refitted", patch.refitted());
  }

  private static Json count(CountCheck count) {
    return new Json()
        .put("group", count.group())
        .put("patches", count.patches())
        .put("readings", count.readings())
        .put("seen", count.seen())
        .put("expected", count.expected())
        .put("low", count.low())
        .put("high", count.high())
        .put("tail", count.tail());
  }

  private static Json bin(CalibrationBin bin) {
    return new Json()
        .put("from", bin.from())
        .put("to", bin.to())
        .put("readings", bin.readings())
        .put("seen", bin.seen())
        .put("predicted", bin.predicted())
        .atLeast("low", bin.low())
        .atMost("high", bin.high())
        .put("tail", bin.tail());
  }

  private static Json shift(BoardCheck board) {
    return new Json()
        .put("board", board.board())
        .put("dose_factor", WindowJson.estimate(board.factor()))
        .put("stands_off", board.standsOff());
  }
}
