package charline.ask;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import charline.log.Boathouse;
import charline.log.Logbook;
import charline.log.search.Attribute;
import charline.log.search.Condition.Burned;
import charline.log.search.Condition.Named;
import charline.log.search.Condition.Seen;
import charline.log.search.Vocabulary;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Mark;
import charline.trial.WoodForm;
import java.nio.file.Path;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuestionTest {
  /** A Wednesday, in summer time. */
  private static final Clock CLOCK =
      Clock.fixed(
          OffsetDateTime.parse("2026-04-15T14:20:00+02:00").toInstant(),
          ZoneId.of("Europe/Zurich"));

  @TempDir static Path folder;
  static Logbook log;
  static Vocabulary vocabulary;

  @BeforeAll
  static void open() {
    log = Logbook.open(folder.resolve("boathouse.db"), CLOCK);
    new Boathouse(log).burn("clean");
    for (String name :
        List.of("offcut 3", "Bootshaus Süd", "Sill / left  2", "plank 7", "plank-7")) {
      log.add(
          new Board(
              log.newId(),
              name,
              "oak",
              WoodForm.SOLID,
              Optional.empty(),
              OptionalDouble.empty(),
              Optional.of("pine")),
          "Ada");
    }
    vocabulary = Vocabulary.of(log);
  }

  @AfterAll
  static void close() {
    log.close();
  }

  private static Question ask(String question) {
    return Question.parse(
        Arrays.asList(question.split(" ")), vocabulary, Optional.of("Ada"), CLOCK);
  }

  /** The words of an attribute that a question asks for. */
  private static Set<String> asked(String question, Attribute attribute) {
    return asked(ask(question), attribute);
  }

  private static Set<String> asked(Question question, Attribute attribute) {
    return question
        .condition()
        .leaves()
        .filter(c -> c instanceof Named n && n.attribute() == attribute)
        .flatMap(c -> ((Named) c).values().stream())
        .collect(Collectors.toSet());
  }

  private static Set<Mark> marks(String question) {
    return ask(question)
        .condition()
        .leaves()
        .filter(Seen.class::isInstance)
        .flatMap(c -> ((Seen) c).marks().with().stream())
        .collect(Collectors.toSet());
  }

  private static Burned burned(Question question) {
    return question
        .condition()
        .leaves()
        .filter(Burned.class::isInstance)
        .map(Burned.class::cast)
        .findFirst()
        .orElse(new Burned(Optional.empty(), Optional.empty()));
  }

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          latex,                         latex
          acrylic,                       latex
          Emulsion Paint,                latex
          oil paint,                     alkyd
          clear coat,                    clear coat
          clear-coat,                    clear coat
          'polyurethane, please',        varnish
          wax,                           wax/oil
          wax/oil,                       wax/oil
          bed liner,                     bed liner
          polyurea,                      bed liner
          textured paint,                textured coat
          putty,                         filler
          wood filler,                   filler
          settings for milk paint?,      milk paint
          """)
  void families_are_known_by_all_their_names(String question, String family) {
    assertThat(asked(question, Attribute.FAMILY)).containsExactly(family);
  }

  @Test
  void a_generic_wood_stands_for_its_species_and_a_species_for_itself() {
    assertThat(asked("pine", Attribute.WOOD))
        .contains("pine", "eastern white pine", "longleaf pine")
        .doesNotContain("oak");
    assertThat(asked("heart pine", Attribute.WOOD)).containsExactly("longleaf pine");
    assertThat(asked("white oak", Attribute.WOOD)).containsExactly("white oak");
    assertThat(asked("Douglas fir", Attribute.WOOD)).containsExactly("douglas-fir");
  }

  @Test
  void a_whole_question_narrows_by_every_part() {
    Question filter =
        ask("which settings worked for latex over mdf on the door stile by Ada last month");
    assertThat(asked(filter, Attribute.FAMILY)).containsExactly("latex");
    assertThat(asked(filter, Attribute.WOOD)).containsExactly("mdf");
    assertThat(asked(filter, Attribute.BOARD)).containsExactly("door stile");
    assertThat(asked(filter, Attribute.PERSON)).containsExactly("Ada");
    assertThat(burned(filter))
        .isEqualTo(
            new Burned(
                Optional.of(OffsetDateTime.parse("2026-03-01T00:00:00+01:00")),
                Optional.of(OffsetDateTime.parse("2026-04-01T00:00:00+02:00"))));
    assertThat(filter.condition().leaves()).hasSize(6);
  }

  @Test
  void names_of_the_log_are_known_however_they_are_split() {
    assertThat(asked("shop-200", Attribute.RIG)).containsExactly("shop-200");
    assertThat(asked("Shop 200", Attribute.RIG)).containsExactly("shop-200");
    assertThat(asked("white over grey", Attribute.FINISH)).containsExactly("white over grey");
    assertThat(asked("slip doors", Attribute.JOB)).containsExactly("slip doors");
    assertThat(
            asked(
                Question.parse(
                    List.of("offcut 3", "clear coat", "today"),
                    vocabulary,
                    Optional.empty(),
                    CLOCK),
                Attribute.BOARD))
        .containsExactly("offcut 3");
  }

  @ParameterizedTest
  @ValueSource(strings = {"Bootshaus Süd", "BOOTSHAUS SÜD", "char on bootshaus-süd last month"})
  void a_board_is_known_by_letters_that_only_some_alphabets_have(String question) {
    assertThat(asked(question, Attribute.BOARD)).containsExactly("Bootshaus Süd");
  }

  @ParameterizedTest
  @ValueSource(strings = {"Sill / left  2", "sill left 2", "char on SILL_LEFT-2", "sill-left 2"})
  void strokes_and_blanks_in_a_name_make_no_difference(String question) {
    assertThat(asked(question, Attribute.BOARD)).containsExactly("Sill / left  2");
  }

  @Test
  void boards_whose_names_differ_in_a_hyphen_alone_are_all_meant() {
    assertThat(asked("plank 7", Attribute.BOARD)).containsExactlyInAnyOrder("plank 7", "plank-7");
    assertThat(asked("plank-7", Attribute.BOARD)).containsExactlyInAnyOrder("plank 7", "plank-7");
  }

  @Test
  void a_wood_comes_before_a_job_of_the_same_name() {
    Question filter = ask("pine");
    assertThat(asked(filter, Attribute.JOB)).isEmpty();
    assertThat(asked(filter, Attribute.WOOD)).isNotEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          char,               CHAR
          charred,            CHAR
          burned,             CHAR
          tint and residue,   TINT+RESIDUE
          clean,              CLEAN
          what worked,        CLEAN
          """)
  void marks_must_all_be_there(String question, String marks) {
    assertThat(marks(question))
        .extracting(Mark::name)
        .containsExactlyInAnyOrder(marks.split("\\+"));
  }

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          today,                          2026-04-15T00:00+02:00, 2026-04-16T00:00+02:00
          yesterday,                      2026-04-14T00:00+02:00, 2026-04-15T00:00+02:00
          this week,                      2026-04-13T00:00+02:00, 2026-04-20T00:00+02:00
          last week,                      2026-04-06T00:00+02:00, 2026-04-13T00:00+02:00
          this month,                     2026-04-01T00:00+02:00, 2026-05-01T00:00+02:00
          last month,                     2026-03-01T00:00+01:00, 2026-04-01T00:00+02:00
          this year,                      2026-01-01T00:00+01:00, 2027-01-01T00:00+01:00
          last year,                      2025-01-01T00:00+01:00, 2026-01-01T00:00+01:00
          in the last 10 days,            2026-04-05T00:00+02:00, 2026-04-16T00:00+02:00
          past 2 weeks,                   2026-04-01T00:00+02:00, 2026-04-16T00:00+02:00
          past 2 years,                   2024-04-15T00:00+02:00, 2026-04-16T00:00+02:00
          last 365 days,                  2025-04-15T00:00+02:00, 2026-04-16T00:00+02:00
          within march,                   2026-03-01T00:00+01:00, 2026-04-01T00:00+02:00
          till march,                     ,                       2026-04-01T00:00+02:00
          last 1 month,                   2026-03-15T00:00+01:00, 2026-04-16T00:00+02:00
          since 2026-03-01,               2026-03-01T00:00+01:00,
          since last week,                2026-04-06T00:00+02:00,
          since march,                    2026-03-01T00:00+01:00,
          after 2026-03-01,               2026-03-02T00:00+01:00,
          until 2026-04,                  ,                       2026-05-01T00:00+02:00
          before 2026-04,                 ,                       2026-04-01T00:00+02:00
          before yesterday,               ,                       2026-04-14T00:00+02:00
          from 2026-03-03 to 2026-03-05,  2026-03-03T00:00+01:00, 2026-03-06T00:00+01:00
          since february until march,     2026-02-01T00:00+01:00, 2026-04-01T00:00+02:00
          on 2026-03-29,                  2026-03-29T00:00+01:00, 2026-03-30T00:00+02:00
          2026-03,                        2026-03-01T00:00+01:00, 2026-04-01T00:00+02:00
          in march,                       2026-03-01T00:00+01:00, 2026-04-01T00:00+02:00
          in april,                       2026-04-01T00:00+02:00, 2026-05-01T00:00+02:00
          in May,                         2025-05-01T00:00+02:00, 2025-06-01T00:00+02:00
          in march 2024,                  2024-03-01T00:00+01:00, 2024-04-01T00:00+02:00
          sept 2025,                      2025-09-01T00:00+02:00, 2025-10-01T00:00+02:00
          2025,                           2025-01-01T00:00+01:00, 2026-01-01T00:00+01:00
          during 2025,                    2025-01-01T00:00+01:00, 2026-01-01T00:00+01:00
          1 march,                        2026-03-01T00:00+01:00, 2026-03-02T00:00+01:00
          on the 1st of march,            2026-03-01T00:00+01:00, 2026-03-02T00:00+01:00
          march 1st,                      2026-03-01T00:00+01:00, 2026-03-02T00:00+01:00
          15 april,                       2026-04-15T00:00+02:00, 2026-04-16T00:00+02:00
          16 april,                       2025-04-16T00:00+02:00, 2025-04-17T00:00+02:00
          7 may,                          2025-05-07T00:00+02:00, 2025-05-08T00:00+02:00
          6 october 2024,                 2024-10-06T00:00+02:00, 2024-10-07T00:00+02:00
          'Oct 6, 2024',                  2024-10-06T00:00+02:00, 2024-10-07T00:00+02:00
          29 february,                    2024-02-29T00:00+01:00, 2024-03-01T00:00+01:00
          since the 6th of october 2025,  2025-10-06T00:00+02:00,
          from 1 march to 3 march,        2026-03-01T00:00+01:00, 2026-03-04T00:00+01:00
          before 1 march 2026,            ,                       2026-03-01T00:00+01:00
          offcut 3 march 2026,            2026-03-01T00:00+01:00, 2026-04-01T00:00+02:00
          latex,                          ,
          """)
  void times_follow_the_calendar_of_the_clock(
      String question, OffsetDateTime since, OffsetDateTime until) {
    Question filter = ask(question);
    assertThat(burned(filter).since()).isEqualTo(Optional.ofNullable(since));
    assertThat(burned(filter).until()).isEqualTo(Optional.ofNullable(until));
  }

  /** ISO 8601: a week begins on its Monday, that day included. */
  @Test
  void a_monday_belongs_to_the_week_that_it_begins() {
    Clock monday =
        Clock.fixed(OffsetDateTime.parse("2026-04-13T08:00:00+02:00").toInstant(), CLOCK.getZone());
    Question filter = Question.parse(List.of("this", "week"), vocabulary, Optional.empty(), monday);
    assertThat(burned(filter).since()).contains(OffsetDateTime.parse("2026-04-13T00:00+02:00"));
    assertThat(burned(filter).until()).contains(OffsetDateTime.parse("2026-04-20T00:00+02:00"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          latx                    | I do not know "latx"; nearest words in this log: latex.
          clean Latx over pine    | I do not know "Latx"; nearest words in this log: latex.
          chra                    | I do not know "chra"; nearest words: char.
          xylophone               | I do not know "xylophone"; ask with families, woods, outcomes, numbers with units, names in this log, or a time such as last month.
          since pine              | After "since" must come a time such as 2026-03-01, march or last week, not "pine".
          till pine               | After "till" must come a time such as 2026-03-01, march or last week, not "pine".
          since                   | After "since" must come a time such as 2026-03-01, march or last week, not "".
          since 2026-13-01        | "2026-13-01" is not a valid date; write a day as 2026-03-01 or 1 march 2026, or a month as 2026-03.
          on 2026-02-30           | "2026-02-30" is not a valid date; write a day as 2026-03-01 or 1 march 2026, or a month as 2026-03.
          on 31 june              | "31 june" is not a valid date; write a day as 2026-03-01 or 1 march 2026, or a month as 2026-03.
          29 february 2025        | "29 february 2025" is not a valid date; write a day as 2026-03-01 or 1 march 2026, or a month as 2026-03.
          clean on 6.10.2026      | A date in figures must begin with the year, because others may swap day and month; write 2026-03-01 or 1 march 2026, not "6.10.2026".
          on 10/6                 | A date in figures must begin with the year, because others may swap day and month; write 2026-03-01 or 1 march 2026, not "10/6".
          clean char              | No patch can match: clean must be the only mark of an outcome; ask for one or the other, as "clean or char".
          since march until feb   | No time is both on or after 2026-03-01 and before 2026-03-01; give one period.
          dark over pale          | I know "over" between coating families alone, as "latex over primer"; name both.
          0.5 mm                  | "0.5 mm" may be spot, scan width, line spacing, stand-off or defocus; say which.
          7                       | I do not know what "7" is a number of; add a unit or a name, such as 50 %, 30 mm/s, 5 J/cm2, 2 passes or spot 0.5 mm.
          by Zoe                  | I do not know "Zoe" after "by"; people in this log: Ada.
          P-0001                  | A question is about many patches, and "P-0001" is a single one; show patch P-0001 instead.
          what was p1?            | A question is about many patches, and "p1" is a single one; show patch P-0001 instead.
          P-0002                  | I do not know "P-0002"; ask with families, woods, outcomes, numbers with units, names in this log, or a time such as last month.
          """)
  void what_it_does_not_understand_is_refused_in_a_sentence(String question, String sentence) {
    assertThatThrownBy(() -> ask(question))
        .isInstanceOfSatisfying(
            Refusal.class, r -> assertThat(r.kind()).isEqualTo(Refusal.Kind.USAGE))
        .hasMessage(sentence);
  }

  /** What is done to a shop, or with money, is in no log of patches. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "who swept the shop on monday",
        "who bought the pine",
        "what was paid for latex in october",
        "who ate lunch on pine",
        "which pine boards were sold",
        "which rig was lent out in october"
      })
  void what_no_log_of_patches_knows_is_refused(String question) {
    assertThatThrownBy(() -> ask(question))
        .isInstanceOfSatisfying(
            Refusal.class, r -> assertThat(r.kind()).isEqualTo(Refusal.Kind.USAGE));
  }

  /** The program itself says of every patch when it was burned. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "patches burned on pine",
        "burned by Ada on pine",
        "pine, burned in march",
        "burned since 2026-03-01 on pine",
        "clean patches burned on pine"
      })
  void the_burning_of_patches_is_no_char(String question) {
    assertThat(marks(question)).doesNotContain(Mark.CHAR);
    assertThat(asked(question, Attribute.WOOD)).contains("pine");
  }

  @ParameterizedTest
  @ValueSource(strings = {"burned", "burned pine", "what burned on pine", "burnt last month"})
  void wood_that_burned_is_char(String question) {
    assertThat(marks(question)).containsExactly(Mark.CHAR);
  }

  @Test
  void a_name_may_follow_what_it_is_the_name_of() {
    assertThat(ask("board offcut 3")).isEqualTo(ask("offcut 3"));
    assertThat(ask("finish white over grey")).isEqualTo(ask("white over grey"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "show me all the patches", "what did we do", "what have we used and tried"})
  void connecting_words_do_not_narrow(String question) {
    assertThat(ask(question)).isEqualTo(Question.EVERYTHING);
  }

  @Test
  void a_question_finds_what_was_recorded() {
    assertThat(ask("clean acrylic over pine in march on shop-200").patches(log)).hasSize(1);
    assertThat(ask("clean acrylic over oak in march").patches(log)).isEmpty();
    assertThat(ask("charred acrylic over pine in march").patches(log)).isEmpty();
  }
}
