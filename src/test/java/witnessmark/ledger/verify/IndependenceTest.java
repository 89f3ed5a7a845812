package witnessmark.ledger.verify;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

class IndependenceTest {
  @Test
  void theVerifierUsesTheJdkAndTheJsonParserAlone() {
    JavaClasses ours =
        new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("witnessmark.ledger.verify");
    classes()
        .that()
        .resideInAPackage("witnessmark.ledger.verify..")
        .should()
        .onlyDependOnClassesThat()
        .resideInAnyPackage(
            "java.io..",
            "java.lang..",
            "java.math..",
            "java.nio..",
            "java.security..",
            "java.util..",
            "com.fasterxml.jackson.core..",
            "witnessmark.ledger.verify..")
        .check(ours);
  }
}
