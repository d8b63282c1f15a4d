package charline;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noCodeUnits;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.List;

/** Statistics could be lifted out, and the numerical library below it exchanged. */
@AnalyzeClasses(
    packages = "charline.stat",
    importOptions = {
      ImportOption.DoNotIncludeTests.class,
      ImportOption.DoNotIncludePackageInfos.class
    })
class StatisticsSignaturesTest {
  private static final DescribedPredicate<JavaClass> OF_THE_LIBRARY =
      describe(
          "of Commons Math",
          type -> type.getBaseComponentType().getPackageName().startsWith("org.apache.commons"));

  private static final DescribedPredicate<List<JavaClass>> SOME_OF_THE_LIBRARY =
      describe("of Commons Math", types -> types.stream().anyMatch(OF_THE_LIBRARY));

  @ArchTest
  static final ArchRule no_method_takes_a_type_of_the_library =
      noCodeUnits()
          .that()
          .areNotPrivate()
          .and()
          .areDeclaredInClassesThat()
          .areNotPrivate()
          .should()
          .haveRawParameterTypes(SOME_OF_THE_LIBRARY);

  @ArchTest
  static final ArchRule no_method_gives_a_type_of_the_library =
      noCodeUnits().that().areNotPrivate().should().haveRawReturnType(OF_THE_LIBRARY);

  @ArchTest
  static final ArchRule parts_have_no_cycles =
      slices().matching("charline.stat.(*)..").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule every_class_is_sorted_into_a_part =
      noClasses().should().resideInAPackage("charline.stat");
}
