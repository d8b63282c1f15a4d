package charline.paper;

import charline.window.Verdict;
import java.util.List;

/** What the sheet says where there is no window, as carefully as where there is one. */
final class NoWindowWords {
  private NoWindowWords() {}

  static String headline(Verdict verdict) {
    return switch (verdict) {
      case WINDOW -> "";
      case NOT_YET -> "No start setting yet. Burn test patches only.";
      case NONE -> "No safe setting. Use another method.";
      case UNRELIABLE -> "Do not work from these trials.";
    };
  }

  static List<String> rules(Verdict verdict) {
    return switch (verdict) {
      case WINDOW -> List.of();
      case NOT_YET ->
          List.of(
              "Burn nothing on the client’s piece. Patches go on an offcut with the same wood and"
                  + " coats.",
              "Low dose first, one knob at a time, on three boards or more. Stop climbing at the"
                  + " first brown that stays.",
              "A patch that came out clean is one patch, not a setting. Print this sheet again"
                  + " after the next ones.");
      case NONE ->
          List.of(
              "Do not remove this finish with this rig as it is, at any speed or power.",
              "One clean patch does not overrule this page: the next board can char at the same"
                  + " setting.",
              "Another lens, spot, pulse or rig, or a finish thinned by other means, is a new case."
                  + " Burn new patches for it.");
      case UNRELIABLE ->
          List.of(
              "Use none of these settings, not even one that came out clean.",
              "Check the log for slips: power, speed, width, passes, a wrong board or finish, soot"
                  + " mistaken for char.",
              "Meter the power, clean the protective window, burn a control patch. Then print"
                  + " again.");
    };
  }

  static String mapTitle(Verdict verdict, String passes) {
    return "Power against speed, "
        + passes
        + switch (verdict) {
          case WINDOW -> "";
          case NOT_YET -> ": no window yet";
          case NONE -> ": no window";
          case UNRELIABLE -> ": trials only";
        };
  }
}
