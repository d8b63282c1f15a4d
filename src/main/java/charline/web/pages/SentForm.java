package charline.web.pages;

import charline.refusal.Refusal;
import charline.web.entry.Doubtful;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Supplier;

/**
 * A form that a person sent.
 *
 * @param person who it is where the form does not say
 */
record SentForm(Context ctx, String person) {
  /** Shows the page again. */
  interface Again {
    /**
     * With the form as it was filled in.
     *
     * @param trouble why it was not taken
     * @param doubtful true if the person may say that they are sure
     */
    void show(String trouble, boolean doubtful);
  }

  /**
   * Does what the form asks for and goes on to another page, or shows this one again.
   *
   * @param work takes who it was
   */
  void take(Consumer<String> work, Again again, Supplier<String> next) {
    String by = ctx.formParam("by");
    try {
      work.accept(by == null || by.isBlank() ? person : by);
    } catch (Doubtful e) {
      ctx.status(409);
      again.show(e.getMessage(), true);
      return;
    } catch (Refusal e) {
      ctx.status(422);
      again.show(e.getMessage(), false);
      return;
    }
    ctx.redirect(next.get(), HttpStatus.SEE_OTHER);
  }

  /** The first value of every field. */
  static Map<String, String> given(Context ctx) {
    Map<String, String> given = new HashMap<>();
    ctx.formParamMap().forEach((name, values) -> given.put(name, values.get(0)));
    return given;
  }
}
