package charline;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.library.dependencies.SliceAssignment;
import com.tngtech.archunit.library.dependencies.SliceIdentifier;

/** The diagram of DEVELOPERS.md, kept. */
@AnalyzeClasses(packages = "charline", importOptions = ImportOption.DoNotIncludeTests.class)
class LayersTest {
  @ArchTest
  static final ArchRule dependencies_run_one_way =
      layeredArchitecture()
          .consideringOnlyDependenciesInLayers()
          .withOptionalLayers(true)
          .layer("cli")
          .definedBy("charline.cli..")
          .layer("web")
          .definedBy("charline.web..")
          .layer("paper")
          .definedBy("charline.paper..")
          .layer("wording")
          .definedBy("charline.wording..")
          .layer("answer")
          .definedBy("charline.answer..")
          .layer("record")
          .definedBy("charline.record..")
          .layer("ask")
          .definedBy("charline.ask..")
          .layer("log")
          .definedBy("charline.log..")
          .layer("cache")
          .definedBy("charline.cache..")
          .layer("quote")
          .definedBy("charline.quote..")
          .layer("drift")
          .definedBy("charline.drift..")
          .layer("compare")
          .definedBy("charline.compare..")
          .layer("plan")
          .definedBy("charline.plan..")
          .layer("window")
          .definedBy("charline.window..")
          .layer("model")
          .definedBy("charline.model..")
          .layer("stat")
          .definedBy("charline.stat..")
          .layer("trial")
          .definedBy("charline.trial..")
          .whereLayer("cli")
          .mayNotBeAccessedByAnyLayer()
          .whereLayer("web")
          .mayOnlyBeAccessedByLayers("cli")
          .whereLayer("paper")
          .mayOnlyBeAccessedByLayers("web", "cli")
          .whereLayer("wording")
          .mayOnlyBeAccessedByLayers("paper", "web", "cli")
          .whereLayer("answer")
          .mayOnlyBeAccessedByLayers("wording", "paper", "web", "cli")
          .whereLayer("record")
          .mayOnlyBeAccessedByLayers("wording", "paper", "web", "cli")
          .whereLayer("ask")
          .mayOnlyBeAccessedByLayers("wording", "paper", "web", "cli")
          .whereLayer("log")
          .mayOnlyBeAccessedByLayers(
              "ask", "answer", "record", "cache", "wording", "paper", "web", "cli")
          .whereLayer("cache")
          .mayOnlyBeAccessedByLayers("answer")
          .whereLayer("quote")
          .mayOnlyBeAccessedByLayers("answer", "wording", "paper", "web", "cli")
          .whereLayer("drift")
          .mayOnlyBeAccessedByLayers("plan", "answer", "wording", "paper", "web", "cli")
          .whereLayer("compare")
          .mayOnlyBeAccessedByLayers("answer", "wording", "paper", "web", "cli")
          .whereLayer("plan")
          .mayOnlyBeAccessedByLayers("answer", "wording", "paper", "web", "cli")
          .whereLayer("window")
          .mayOnlyBeAccessedByLayers(
              "plan", "quote", "compare", "answer", "wording", "paper", "web", "cli")
          .whereLayer("model")
          .mayOnlyBeAccessedByLayers(
              "window", "plan", "drift", "quote", "compare", "answer", "wording", "paper", "web",
              "cli")
          .whereLayer("stat")
          .mayOnlyBeAccessedByLayers("model", "window", "drift", "plan")
          .whereLayer("trial")
          .mayOnlyBeAccessedByLayers(
              "log", "ask", "model", "window", "plan", "drift", "quote", "compare", "answer",
              "record", "wording", "paper", "web", "cli")
          .because("what a fit knows must not depend on where its patches are kept or shown");

  @ArchTest
  static final ArchRule only_the_log_sees_sql =
      noClasses()
          .that()
          .resideOutsideOfPackage("charline.log..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("java.sql..", "org.sqlite..", "org.flywaydb..")
          .because("the schema has one home");

  @ArchTest
  static final ArchRule only_the_log_reaches_into_its_file =
      noClasses()
          .that()
          .resideOutsideOfPackage("charline.log..")
          .should()
          .dependOnClassesThat()
          .haveFullyQualifiedName("charline.log.database.Database")
          .because("whoever has it can write SQL");

  @ArchTest
  static final ArchRule only_trial_sheets_wait_for_tablesaw =
      noClasses()
          .that()
          .resideOutsideOfPackage("charline.log.sheet..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("tech.tablesaw..")
          .because(
              "it takes about a second to start, which recording and finding must not wait for");

  @ArchTest
  static final ArchRule packages_inside_the_log_have_no_cycles =
      slices()
          .assignedFrom(
              new SliceAssignment() {
                @Override
                public SliceIdentifier getIdentifierOf(JavaClass javaClass) {
                  return javaClass.getPackageName().startsWith("charline.log")
                      ? SliceIdentifier.of(javaClass.getPackageName())
                      : SliceIdentifier.ignore();
                }

                @Override
                public String getDescription() {
                  return "packages of the log";
                }
              })
          .should()
          .beFreeOfCycles();

  @ArchTest
  static final ArchRule statistics_know_arrays_only =
      classes()
          .that()
          .resideInAPackage("charline.stat..")
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage(
              "charline.stat..",
              "java..",
              "org.apache.commons.math3..",
              "org.apache.commons.numbers..")
          .because("it could be lifted out");

  @ArchTest
  static final ArchRule exposure_knows_no_matrices =
      classes()
          .that()
          .resideInAPackage("charline.exposure..")
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage(
              "charline.exposure..", "charline.quantity..", "charline.refusal..", "java..")
          .because("it is words, units and invariants");

  @ArchTest
  static final ArchRule only_the_command_line_prints =
      noClasses()
          .that()
          .resideOutsideOfPackage("charline.cli..")
          .should()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err")
          .because("everything else hands back values");

  @ArchTest
  static final ArchRule packages_have_no_cycles =
      slices().matching("charline.(**)").should().beFreeOfCycles();
}
