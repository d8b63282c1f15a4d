package charline.web;

import charline.paper.PatchSign;
import charline.trial.Knob;
import gg.jte.Content;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Every component of the page in every state, made from the page's own templates and styles. */
final class ComponentsPage {
  private static final TemplateEngine TEMPLATES =
      TemplateEngine.createPrecompiled(null, ContentType.Html, null, "charline.web.templates");

  private static final List<String> STYLES =
      List.of("tokens", "bench", "controls", "home", "live", "record", "window");

  private final StringBuilder html = new StringBuilder();

  private ComponentsPage() {}

  /** Writes the page; gives where it lies. */
  static Path write(Path folder) throws IOException {
    ComponentsPage page = new ComponentsPage();
    page.all();
    Path file = folder.resolve("components.html").toAbsolutePath();
    Files.writeString(file, page.html);
    return file;
  }

  private void all() throws IOException {
    html.append("<!DOCTYPE html><html lang=\"en\"><head><meta charset=\"utf-8\">");
    html.append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">");
    html.append("<title>Components</title><style>");
    for (String style : STYLES) {
      html.append(Files.readString(Path.of("src/main/resources/bench", style + ".css")));
    }
    html.append("</style></head><body><main id=\"main\"><h1>Components</h1>");
    html.append("<div class=\"columns\"><div>");
    states();
    buttons();
    choices();
    html.append("</div><div>");
    knobs();
    surfaces();
    notices();
    fields();
    html.append("</div></div>");
    html.append("</main></body></html>");
  }

  private void head(String title) {
    html.append("<h2>").append(title).append("</h2>");
  }

  private String filled(String template, Map<String, Object> values) {
    StringOutput output = new StringOutput();
    TEMPLATES.render(template + ".jte", values, output);
    return output.toString();
  }

  private void state(String state, String word, String line) {
    Content content = output -> output.writeContent("<p>" + line + "</p>");
    html.append(filled("state", Map.of("state", state, "word", word, "content", content)));
  }

  private void states() {
    head("States of a setting");
    state(
        "safe",
        "Safe for the wood: may char 1 in 230, clears 62 in 63",
        "At most 1 in 86 char, at least 21 in 22 clear.");
    state(
        "hot",
        "Hot: may char 1 in 8, clears 59 in 60",
        "At most 3 in 10 char, at least 19 in 20 clear. Find the limit on an offcut.");
    state(
        "cool",
        "May not clear: clears 2 in 10, may char under 1 in 1000",
        "At most 1 in 500 char, at least 1 in 10 clear.");
    state(
        "untried",
        "Not tried: no promise here",
        "Outside the patches: a hand speed of 60 mm/s (tried: 8 to 45 mm/s).");
    state("stop", "No beam on this finish yet", "Record the result of the lead sample first.");
    state("unknown", "Working out the risk", "The models are being fitted.");
    state("heed", "The window is out of date", "Burn the control patch.");
    html.append(
        filled("state", Map.of("state", "safe", "word", "Safe for the wood: may char 1 in 230"))
            .replace("is-safe", "is-safe old"));
    head("Outcomes");
    html.append("<div class=\"card\">");
    for (PatchSign sign : PatchSign.values()) {
      html.append("<p class=\"seen\">")
          .append(filled("sign", Map.of("sign", sign)))
          .append("<span><b>")
          .append(sign.word())
          .append("</b> after 1 pass</span></p>");
    }
    html.append("</div>");
  }

  private void buttons() {
    head("Buttons");
    html.append(
        """
        <p class="pair"><button class="main">What is done next</button><button>Another way</button></p>
        <p class="pair"><button class="main" disabled aria-busy="true">Keeping</button><button disabled>Not now</button></p>
        <p class="pair"><button aria-pressed="true">Pressed</button><button class="quiet">Quiet</button></p>
        <p><button class="main wide">Keep this patch</button></p>
        <p class="chips"><a href="#1" class="on">clean</a><a href="#2">char</a><a href="#3">residue</a></p>
        """);
  }

  private void choices() {
    head("Choices");
    html.append(
        """
        <fieldset class="ways"><legend>Speed by</legend>
        <label><input type="radio" name="w" checked><span>Hand speed</span></label>
        <label><input type="radio" name="w"><span>Stopwatch</span></label>
        <label><input type="radio" name="w" disabled><span>Scanner</span></label></fieldset>
        <fieldset class="taps"><legend>What you see, cooled and wiped</legend>
        """);
    Map<String, String> hints = new LinkedHashMap<>();
    hints.put("clean", "bare wood, unharmed");
    hints.put("tint", "colour in the grain");
    hints.put("char", "dark that stays");
    hints.put("residue", "finish left");
    hints.forEach(
        (word, hint) ->
            html.append("<label><input type=\"checkbox\"")
                .append(word.equals("residue") ? " checked" : "")
                .append("><span>")
                .append(filled("sign", Map.of("sign", sign(word))))
                .append("<b>%s</b><i>%s</i></span></label>".formatted(word, hint)));
    html.append(
        """
        </fieldset>
        <div class="chooser"><label>Board, one of 352<select><option>wall panel offcut 1 (pine)</option></select></label><input type="search" placeholder="Part of the name" aria-label="Find in the list: Board"><p class="small" role="status"></p><ul class="fits" hidden></ul></div>
        <div class="chooser"><label>Board, while it is looked for<select><option>wall panel offcut 1 (pine)</option></select></label><input type="search" value="door" aria-label="Find in the other list: Board"><p class="small" role="status">12 fit; the first 2 are shown.</p><ul class="fits"><li><button type="button">door rail offcut (oak)</button></li><li><button type="button">door stile offcut (oak)</button></li></ul></div>
        <details open><summary>A fold that is open <span>2 of 5</span></summary><p>What is in it.</p></details>
        <details><summary>A fold that is closed</summary><p>Not seen.</p></details>
        """);
  }

  private static PatchSign sign(String word) {
    return List.of(PatchSign.values()).stream()
        .filter(s -> s.word().equals(word))
        .findFirst()
        .orElseThrow();
  }

  private void knobs() {
    head("Knobs");
    html.append(knob(Knob.POWER_PCT, "80", "%"));
    html.append(
        knob(Knob.HAND, "30", "mm/s")
            .replace("</label>", "<span class=\"end\"> – the most</span></label>"));
    html.append(
        knob(Knob.SPOT, "quick", "mm")
            .replaceFirst(
                "</div>\\s*$",
                "<p class=\"unread\">The buttons step a number in mm, not \"quick\".</p></div>"));
    html.append(knob(Knob.RATE, "60", "kHz").replace("<button", "<button disabled"));
  }

  private String knob(Knob knob, String value, String unit) {
    return filled(
        "knob",
        Map.of("knob", knob, "value", value, "unit", unit, "className", "great", "shown", true));
  }

  private void surfaces() {
    head("Surfaces");
    html.append(
        """
        <section class="next"><span class="label">Burn next: latex on pine, new board 3</span><strong>50 % at 24 mm/s</strong><p>up to 8 passes; narrows the hot side; may char 2 in 10.</p><form><button type="button" class="button">Burn this</button></form></section>
        <section class="hero" aria-label="Start"><div><span>Power</span><b>93</b><span>%, stay in 88 to 98</span></div><div><span>Hand speed</span><b>37.8</b><span>mm/s, stay in 34.7 to 41.2</span></div><div><span>Passes</span><b>1</b><span>once, then look</span></div></section>
        <ul class="rows"><li><a class="row" href="#6">%s<span>LP-24: <b>clean</b> after 1<small>40 %, 18 mm/s, 10.7 J/cm²; door panel</small></span></a></li><li><a class="row" href="#7"><span>Set up<small>Rigs, boards, finishes</small></span></a></li></ul>
        <article class="card"><h3>A card</h3><p>With a line, <span class="tag is-safe">safe</span> <span class="tag is-hot">may char</span> <span class="tag is-cool">may not clear</span> <span class="tag is-untried">not tried</span> <span class="tag is-heed">out of date</span>.</p></article>
        <p class="code">P-0024</p><p class="code struck">P-0023</p>
        <div class="table" role="region" aria-label="Doses" tabindex="0"><table><caption>Outcome by dose</caption><thead><tr><th scope="col">Dose</th><th scope="col" class="number">Patches</th></tr></thead><tbody><tr><td>5 J/cm²</td><td class="number">12</td></tr><tr><td>10 J/cm²</td><td class="number">7</td></tr></tbody></table></div>
        <p class="empty">No patch was found. Take a word out of the question.</p>
        """
            .replace("%s<span>", filled("sign", Map.of("sign", PatchSign.CLEAN)) + "<span>"));
  }

  private void notices() {
    head("Notices");
    html.append(
        """
        <p class="trouble">Power must be between 0 and 100 %, not 140 %.</p>
        <p class="poison">BEFORE THE BEAM: lead: not tested.</p>
        <p class="note">P-0024 was residue after 1 pass. Its settings stay.</p>
        <p><span class="verdict">window, to confirm</span></p>
        """);
  }

  private void fields() {
    head("Fields");
    html.append(
        """
        <form class="fields"><label>Name<input value="door panel"></label><label>Wood<select><option>pine</option></select></label><label>Moisture, %<input placeholder="if metered"></label><label>Serial<input disabled value="H-12"></label><label class="check"><input type="checkbox" checked> I am sure of these values</label><button class="main">Add a board</button></form>
        """);
  }
}
