package charline.trial;

import static charline.trial.Pieces.board;
import static charline.trial.Pieces.finish;
import static charline.trial.Pieces.patch;
import static charline.trial.Pieces.reading;
import static charline.trial.Pieces.rig;
import static org.assertj.core.api.Assertions.assertThat;

import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.PowerSetting;
import charline.exposure.Settings;
import charline.exposure.TimedArea;
import charline.quantity.Measure;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What typed knobs become, whichever way they came in. */
class KnobReaderTest {
  private static final KnobDialect COLUMNS =
      new KnobDialect() {
        @Override
        public String name(Knob knob) {
          return knob.column();
        }

        @Override
        public String powerName() {
          return "power";
        }

        @Override
        public double number(Knob knob, String text) {
          return knob.checked(Measure.parse(text, knob.quantity()).value());
        }
      };

  private static final Rig HERON = rig(1, "Heron", 200);

  /** {@code POWER_PCT=60 HAND=20mm/s}. */
  private static Map<Knob, String> typed(String line) {
    Map<Knob, String> given = new EnumMap<>(Knob.class);
    for (String part : line.split(" ")) {
      if (!part.isEmpty()) {
        given.put(Knob.valueOf(part.split("=")[0]), part.split("=")[1]);
      }
    }
    return given;
  }

  private static KnobReader.Result read(String line, Optional<KnobReader.Copied> copied) {
    return KnobReader.read(COLUMNS, typed(line), HERON, copied);
  }

  private static Settings settings(String line) {
    return read(line, Optional.empty()).orRefuse();
  }

  @Test
  void the_knobs_given_choose_the_dose_form_and_the_rig_fills_in() {
    String rest = "POWER_PCT=60 SPOT=0.6 RATE=40 ";
    assertThat(settings(rest + "HAND=2cm/s WIDTH=60").form()).isEqualTo(new HandPass(60, 20));
    assertThat(settings(rest + "SCAN=5m/s SPACING=60um").form())
        .isEqualTo(new LineScan(5000, 0.06));
    assertThat(settings(rest + "SECONDS=4 AREA=25").form()).isEqualTo(new TimedArea(25, 4));
    assertThat(settings("POWER_W=120 SPOT=0.6 RATE=40 HAND=20 WIDTH=60").power())
        .isEqualTo(PowerSetting.watts(120));
    Settings usual = settings("POWER_PCT=60 SCAN=5000 SPACING=0.06");
    assertThat(usual.spot().diameterMillimetres()).isEqualTo(HERON.spotMillimetres().orElseThrow());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          HAND=20 WIDTH=60                     | POWER_PCT | power is not set; give it in % or W.
          POWER_PCT=60 POWER_W=9 HAND=2 WIDTH=6 | POWER_W  | Give power_pct or power_w, not both; leave one of them out.
          POWER_PCT=60                         | HAND      | The speed is missing: give hand_mm_s with width_mm, scan_mm_s with spacing_mm, or area_cm2 with seconds.
          POWER_PCT=60 HAND=20 SCAN=5000       | SCAN      | The dose must be given in one form: hand_mm_s with width_mm, scan_mm_s with spacing_mm, or area_cm2 with seconds; hand_mm_s and scan_mm_s are of different forms.
          POWER_PCT=60 AREA=25                 | SECONDS   | seconds is not set; give it in s.
          POWER_PCT=60 HAND=-1 WIDTH=60        | HAND      | Hand speed must be above 0 mm/s, not -1 mm/s.
          POWER_PCT=140 HAND=20 WIDTH=60       | POWER_PCT | Power must be between 0 and 100 %, not 140 %.
          """)
  void what_is_missing_or_contradictory_is_one_sentence(String line, Knob knob, String sentence) {
    assertThat(read(line, Optional.empty()).problems())
        .containsExactly(new KnobReader.Problem(knob, sentence));
  }

  @Test
  void a_copied_patch_stands_in_with_what_was_typed_for_it() {
    Patch old =
        patch(
            1,
            HERON,
            board(1, "pine"),
            finish(1, "latex"),
            settings("POWER_PCT=60 SPOT=0.6 RATE=40 HAND=20 WIDTH=60"),
            reading(1, "clean"));
    KnobReader.Result read =
        read(
            "HAND=18mm/s",
            Optional.of(new KnobReader.Copied(old, Map.of("hand", "20", "power", "60%"), false)));
    assertThat(read.orRefuse().form()).isEqualTo(new HandPass(60, 18));
    assertThat(read.typed()).isEqualTo(Map.of("hand", "18mm/s", "power", "60%"));
  }
}
