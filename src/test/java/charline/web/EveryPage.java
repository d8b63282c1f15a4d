package charline.web;

import charline.log.sheet.OwnHeadings;
import charline.trial.Rig;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/** Every page of a log in which everything happens that a page can show, in its states. */
final class EveryPage {
  static final String LATEX = "?family=latex&wood=pine&light=pulsed-1064";
  private static final Path TRIALS = Path.of("sample-trials");

  private final ServedLog served;
  private final Path folder;
  private final List<State> states = new ArrayList<>();

  /**
   * One page in one state.
   *
   * @param route the route that answers, such as "/patch/{code}"
   * @param name what it is called in a report
   * @param address of it, without host
   * @param status that it is sent with
   */
  record State(String route, String name, String address, int status) {}

  EveryPage(ServedLog served, Path folder) throws Exception {
    this.served = served;
    this.folder = folder;
    happen();
    list();
  }

  /** Trial sheets that the log must begin with. */
  static String[] sheets() {
    return new String[] {"latex-on-pine", "alkyd-on-pine-cw"};
  }

  List<State> states() {
    return states;
  }

  private void happen() throws Exception {
    String texture =
        Files.readString(TRIALS.resolve("latex-on-pine.csv"))
            .replace("LP-", "TX-")
            .replace("wall panel latex,latex,", "hall texture,textured coat,")
            .replace("latex:pale:50um + latex:pale:45um", "");
    served.charline("import " + Files.writeString(folder.resolve("texture.csv"), texture));
    served.charline("rig upkeep heron --what window-cleaned --at 2026-10-01");
    served.charline("rig amend heron --figure line --why usual");
    served.charline("patch add --like LP-01 --figure circle --passes 2 --outcome char");
    served.charline("patch add --like LP-12 --figure circle --passes 2 --outcome clean");
    served.charline("patch void LP-03 --why mistyped");
    served.charline("board add sill --wood oak");
    served.charline("board void sill --why lost");
    for (int i = 1; i <= 14; i++) {
      served.charline("board add slat-" + i + " --wood pine");
    }
    served.post(
        "finish/sample?name=wall%20panel%20latex", "substance=lead&result=free&on=2026-11-02");
    new Device(served.address(), 1).photo(served.log().patch("LP-02").patch().id());
    served.page("next" + LATEX);
    served.post("next/reserve" + LATEX, "by=Ansa");
  }

  private void add(String route, String name, String address) {
    add(route, name, address, 200);
  }

  private void add(String route, String name, String address, int status) {
    states.add(new State(route, name, address, status));
  }

  private void list() throws Exception {
    pagesOfWork();
    pagesOfAnswers();
    pagesOfTheLog();
    pagesToPutRight();
  }

  private void pagesOfWork() {
    String plan = served.log().planned().open().get(0).code();
    add("/", "home", "");
    add("/record", "record", "record?like=LP-01&power=80&pace=30");
    add("/record", "record a plan", "record?plan=" + plan);
    add("/record", "record a further reading", "record?reading=LP-02");
    add("/ask", "ask", "ask?q=clean%20latex");
    add("/ask", "ask, filtered and sorted", "ask?q=&family=latex&sort=dose&page=2");
    add("/ask", "ask, nothing found", "ask?q=&family=latex&outcome=tint");
    add("/ask", "ask, not understood", "ask?q=latez");
    add("/patch/{code}", "patch", "patch/LP-02");
    add("/patch/{code}", "patch, void", "patch/LP-03");
    add("/patch/{code}", "patch, unknown", "patch/LP-99", 404);
    add("/patch/{code}/amend", "amend", "patch/LP-02/amend");
    add("/patch/{code}/amend", "amend, void", "patch/LP-03/amend");
    add("/boards", "boards", "boards?q=panel");
    add("/boards", "boards, none", "boards?q=no+such+board");
    add("/board", "board", "board?of=wall%20panel%20offcut%201");
    add("/board", "board, void", "board?of=sill");
    add("/recent", "recent", "recent");
    add("/plans", "plans", "plans");
    add("/next", "next, choose", "next");
    add("/next", "next", "next" + LATEX);
    add("/next", "next, first of a coat", "next?family=shellac&wood=oak&rig=heron");
    add("/next", "next, no beam", "next?family=textured+coat&wood=pine");
  }

  private void pagesOfAnswers() {
    add("/window", "windows", "window");
    add("/window", "window", "window" + LATEX);
    add("/window", "window, which light", "window?family=alkyd&wood=any");
    add("/window", "window, none", "window?family=alkyd&wood=pine");
    add("/window", "window, no beam", "window?family=textured+coat&wood=pine");
    add("/window", "window, of a piece", "window" + LATEX + "&piece=wall+panel+offcut+1");
    add("/window", "window, not tried", "window?family=latex&wood=oak", 404);
    add("/onset", "onset", "onset" + LATEX);
    add("/removal", "removal", "removal" + LATEX);
    add("/quote", "quote, asked", "quote" + LATEX);
    add("/quote", "quote", "quote" + LATEX + "&area=4");
    add("/compare", "compare, choose", "compare?family=latex&wood=pine");
    add("/compare", "compare", "compare?family=latex&wood=pine&a=passes:1&b=passes:2");
    add(
        "/compare",
        "compare, pairs",
        "compare?family=latex&wood=pine&a=figure:circle&b=figure:line");
    add("/sheet", "sheet", "sheet" + LATEX);
    add("/sheet/preview", "sheet, preview", "sheet/preview" + LATEX);
  }

  private void pagesOfTheLog() throws Exception {
    String sheet = "trials=" + served.file(TRIALS.resolve("varnish-on-ash.csv"));
    Path odd = folder.resolve("odd.csv");
    Files.writeString(
        odd, Files.readString(TRIALS.resolve("varnish-on-ash.csv")).replace(",0.5,", ",50,"));
    OwnHeadings.NONE.with("pace=hand_mm_s in/s").keepBeside(served.log().file());
    add("/log", "log", "log");
    add("/log/check", "check", "log/check");
    add("/log/import", "import", "log/import?" + sheet);
    add("/log/import", "import, refused", "log/import?trials=" + served.file(odd), 422);
    add(
        "/log/merge",
        "merge, conflicts",
        "log/merge?file=" + served.file(served.otherBench(folder)));
    add(
        "/log/merge",
        "merge, refused",
        "log/merge?file=" + served.file(TRIALS.resolve("rigs.csv")),
        422);
  }

  private void pagesToPutRight() {
    Rig rig = served.log().rig("heron");
    String sample = served.log().samples().all().get(0).code();
    add("/set-up", "set up", "set-up");
    add("/rig", "rig", "rig?of=heron");
    add("/rig", "rig, unknown", "rig?of=heroin", 404);
    add("/finish", "finish", "finish?name=wall%20panel%20latex");
    add("/finish", "finish, no beam", "finish?name=hall%20texture");
    add("/finish/sample", "sample", "finish/sample?name=wall%20panel%20latex&sample=" + sample);
    add("/put-right/{kind}", "put a rig right", "put-right/rig?of=heron");
    add("/put-right/{kind}", "put a board right", "put-right/board?of=slat-1");
    add("/put-right/{kind}", "put a void board right", "put-right/board?of=sill");
    add("/put-right/{kind}", "put a finish right", "put-right/finish?of=wall%20panel%20latex");
    add(
        "/put-right/{kind}",
        "put a check right",
        "put-right/check?rig=heron&of=" + rig.checks().get(0).id());
    add(
        "/put-right/{kind}",
        "put upkeep right",
        "put-right/upkeep?rig=heron&of=" + rig.upkeep().get(0).id());
  }

  /** Routes of pages that are shown on a shared bench alone. */
  static final List<String> SHARED = List.of("/pair", "/devices");

  /** Routes whose answers are no pages of their own: figures, files, and parts of pages. */
  static final Map<String, String> NO_PAGES =
      Map.of(
          "/live",
          "live?rig=heron&board=slat-1&finish=wall%20panel%20latex&power=40&form=hand&hand=40"
              + "&width=60&spot=0.5&rep=60&pulse=100&passes=1",
          "/window/at",
          "window/at" + LATEX + "&power=40&speed=30&passes=1",
          "/pulse",
          "pulse",
          "/home/next",
          "home/next",
          "/log/check/found",
          "log/check/found",
          "/log/export/{what}",
          "log/export/patches",
          "/log/backup",
          "log/backup");

  /** The photo's address holds an identity; its answer is a picture. */
  static final String PHOTO = "/photo/{code}/{id}";

  /** Files of styles and scripts lie in a folder named after their content. */
  static Predicate<String> asset() {
    return route -> route.matches("/[0-9a-f]{8}/.*");
  }
}
