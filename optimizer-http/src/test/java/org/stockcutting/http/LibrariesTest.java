package org.stockcutting.http;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

/** Each library of the printing room has one importer. */
class LibrariesTest {

    private static final JavaClasses ALL = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.stockcutting.http");

    @Test
    void onlyPaperKnowsPdfAndCodes() {
        noClasses()
                .that()
                .resideOutsideOfPackage("org.stockcutting.http.print.paper")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.apache.pdfbox..", "org.apache.fontbox..", "de.rototor..", "com.google.zxing..")
                .check(ALL);
    }

    @Test
    void onlyPrintKnowsSvg() {
        noClasses()
                .that()
                .resideOutsideOfPackage("org.stockcutting.http.print")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.apache.batik..")
                .check(ALL);
    }

    @Test
    void printKnowsNeitherCommandsNorService() {
        noClasses()
                .that()
                .resideInAPackage("org.stockcutting.http.print..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.stockcutting.http.cli..", "org.stockcutting.http.wire..", "io.javalin..")
                .check(ALL);
    }
}
