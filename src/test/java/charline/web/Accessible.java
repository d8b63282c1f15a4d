package charline.web;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** What keeps people from reading or using a page. */
final class Accessible {
  private static final int LEAST_TARGET = 48;

  private Accessible() {}

  /**
   * What axe-core finds against WCAG 2.0 to 2.2, levels A and AA, contrast included. Bars that stay
   * in sight lie in their place meanwhile: what they cover is a question of where a page is
   * scrolled to, and that the keyboard reaches nothing behind them is tested by itself.
   */
  static List<?> violations(Browser browser) throws IOException {
    try (InputStream axe = Accessible.class.getResourceAsStream("/axe.min.js")) {
      browser.script(new String(axe.readAllBytes(), StandardCharsets.UTF_8));
    }
    return (List<?>)
        browser.asyncScript(
            "const done = arguments[0], bars ="
                + " [...document.querySelectorAll('.keep')];bars.forEach(b => b.style.position ="
                + " 'static');axe.run({runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa',"
                + " 'wcag22aa', 'best-practice']}).then(r => bars.forEach(b => b.style.position ="
                + " '') || done(r.violations.map(v => v.id + ': ' + v.nodes.map(n => n.html + ' ' +"
                + " n.failureSummary).join(' | '))))");
  }

  /** Things to tap that are smaller than a gloved finger needs; links inside a sentence aside. */
  static List<?> small(Browser browser) {
    return (List<?>)
        browser.script(
            "return [...document.querySelectorAll('a[href], button, input:not([type=hidden]),"
                + " select, textarea, summary')].filter(e => !e.matches('.skip') &&"
                + " e.getClientRects().length).map(e => [e, (e.matches('input[type=checkbox]') ?"
                + " e.closest('label') : e).getBoundingClientRect()]).filter(([e, r]) => r.width <"
                + " arguments[0] - .5 || r.height < arguments[0] - .5).map(([e, r]) =>"
                + " e.outerHTML.slice(0, 90) + ' ' + r.width + 'x' + r.height)",
            LEAST_TARGET);
  }
}
