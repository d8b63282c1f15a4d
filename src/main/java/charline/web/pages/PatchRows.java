package charline.web.pages;

import charline.exposure.DoseForm;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.TimedArea;
import charline.log.PatchEntry;
import charline.paper.PatchSign;
import charline.quantity.Figures;
import charline.trial.Patch;
import charline.wording.SettingsText;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Patches as rows of a table, sorted and a page at a time.
 *
 * @param rows of this page
 * @param found of all pages
 * @param page the page shown, from 1
 * @param pages how many there are
 * @param sort what they are sorted by
 * @param falling whether the highest comes first
 */
public record PatchRows(
    List<Row> rows, int found, int page, int pages, String sort, boolean falling) {
  static final int OF_A_PAGE = 50;

  static final String NEWEST = "date";

  /** In the order that the question itself asks for. */
  static final String AS_ASKED = "asked";

  private static final Map<String, Order<?>> ORDERS = new LinkedHashMap<>();

  static {
    ORDERS.put("date", Order.by(e -> e.patch().burnedAt()));
    ORDERS.put("code", Order.by(e -> e.patch().code()));
    ORDERS.put("power", Order.by(e -> e.patch().settings().power().value()));
    ORDERS.put("speed", Order.by(e -> speed(e.patch().settings().form())));
    ORDERS.put("dose", Order.by(e -> e.patch().exposure().doseJoulesPerCm2()));
    ORDERS.put("passes", Order.by(e -> e.patch().lastReading().passes()));
    ORDERS.put("outcome", Order.by(e -> PatchSign.of(e.patch().lastReading().outcome())));
    ORDERS.put("board", new Order<>(e -> e.patch().board().name(), String.CASE_INSENSITIVE_ORDER));
  }

  /** Patches in the order of something that is computed once of each. */
  private record Order<K>(Function<PatchEntry, K> key, Comparator<? super K> order) {
    private record Keyed<K>(K key, PatchEntry entry) {}

    static <K extends Comparable<? super K>> Order<K> by(Function<PatchEntry, K> key) {
      return new Order<>(key, Comparator.naturalOrder());
    }

    List<PatchEntry> of(List<PatchEntry> found) {
      return found.stream()
          .map(entry -> new Keyed<>(key.apply(entry), entry))
          .sorted(Comparator.comparing(Keyed::key, order))
          .map(Keyed::entry)
          .collect(Collectors.toCollection(ArrayList::new));
    }
  }

  /** One patch. */
  public record Row(
      String code,
      String date,
      String power,
      String speed,
      String dose,
      String passes,
      PatchSign sign,
      String outcome,
      String board,
      String what) {
    static Row of(PatchEntry entry) {
      return of(entry.patch());
    }

    static Row of(Patch patch) {
      return new Row(
          patch.code(),
          patch.burnedAt().toLocalDate().toString(),
          SettingsText.power(patch.settings().power()),
          Figures.typeset(SettingsText.speed(patch.settings().form())),
          Figures.three(patch.exposure().doseJoulesPerCm2()),
          String.valueOf(patch.lastReading().passes()),
          PatchSign.of(patch.lastReading().outcome()),
          patch.lastReading().outcome().text(),
          patch.board().name(),
          "%s on %s, %s"
              .formatted(patch.finish().name(), patch.board().wood(), patch.rig().name()));
    }
  }

  private static double speed(DoseForm form) {
    if (form instanceof HandPass hand) {
      return hand.handSpeedMillimetresPerSecond();
    }
    if (form instanceof LineScan scan) {
      return scan.spotSpeedMillimetresPerSecond();
    }
    TimedArea timed = (TimedArea) form;
    return timed.areaSquareCentimetres() / timed.secondsPerPass();
  }

  /**
   * A page of patches.
   *
   * @param found as they were found
   * @param sort by what; unknown words sort by date
   * @param asked page, from 1; beyond the last it is the last
   */
  static PatchRows of(List<PatchEntry> found, String sort, boolean falling, int asked) {
    String by = ORDERS.containsKey(sort) || sort.equals(AS_ASKED) ? sort : NEWEST;
    List<PatchEntry> sorted = by.equals(AS_ASKED) ? found : ORDERS.get(by).of(found);
    if (falling && !by.equals(AS_ASKED)) {
      Collections.reverse(sorted);
    }
    int pages = Math.max(1, (sorted.size() + OF_A_PAGE - 1) / OF_A_PAGE);
    int page = Math.min(pages, Math.max(1, asked));
    return new PatchRows(
        sorted.stream().skip((long) (page - 1) * OF_A_PAGE).limit(OF_A_PAGE).map(Row::of).toList(),
        found.size(),
        page,
        pages,
        by,
        falling);
  }

  /** The number of the first row among all that were found. */
  public int first() {
    return (page - 1) * OF_A_PAGE + 1;
  }
}
