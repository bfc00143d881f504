package org.stockcutting;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The arrows between the rooms: data flows one way, and each library has one importer. */
class ArchitectureTest {

    private static final String ROOT = "org.stockcutting";
    private static final String[] VALUES = {"length", "material", "part", "stock", "job"};

    private static final JavaClasses CORE = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages(ROOT);

    /** A room and the rooms it may see; the JDK and JSpecify are always allowed. */
    private record Room(String name, List<String> sees, List<String> libraries) {}

    private static Room room(String name, List<String> sees, String... libraries) {
        return new Room(name, sees, List.of(libraries));
    }

    private static List<String> values(String... more) {
        List<String> all = new ArrayList<>(List.of(VALUES));
        all.addAll(List.of(more));
        return all;
    }

    private static final String MATH = "org.apache.commons.math3..";

    private static final List<Room> ROOMS = List.of(
            room("length", List.of()),
            room("material", List.of("length")),
            room("part", List.of("length", "material")),
            room("stock", List.of("length", "material")),
            room("job", List.of(VALUES)),
            room("blank", values()),
            room("pattern", values("blank")),
            room("pattern.fit", values("blank", "pattern")),
            room("plan", values("blank", "pattern"), MATH),
            room("sequence", values("blank", "pattern", "plan"), MATH),
            room("mishap", values("blank", "pattern", "plan"), MATH),
            room("check", values("pattern", "plan"), MATH),
            room("report", values("blank", "pattern", "plan", "sequence"), MATH),
            room("wood", values("blank", "pattern.fit", "pattern", "plan"), MATH),
            room("draw", values("blank", "pattern", "plan", "sequence", "report"), MATH),
            room("solve.instance", List.of("plan")),
            room("solve.lp", List.of()),
            room("solve.columns", List.of("plan", "solve.instance", "solve.lp")),
            room("solve.guillotine", List.of("plan", "solve.instance", "solve.lp")),
            room("solve.search", List.of("plan", "solve.instance"), "org.optaplanner.."),
            room("solve.layout", values("blank", "pattern", "pattern.fit", "plan", "solve.instance"), MATH),
            room(
                    "io",
                    values("blank", "pattern", "plan", "sequence", "report", "wood"),
                    "com.fasterxml.jackson..",
                    MATH));

    @TestFactory
    Stream<DynamicTest> eachRoomSeesOnlyWhatLiesBeforeIt() {
        return ROOMS.stream().map(room -> DynamicTest.dynamicTest(room.name(), () -> check(room)));
    }

    private static void check(Room room) {
        List<String> allowed = new ArrayList<>(List.of("java..", "javax..", "org.jspecify..", "org.slf4j.."));
        allowed.add(ROOT + "." + room.name());
        room.sees().forEach(seen -> allowed.add(ROOT + "." + seen));
        allowed.addAll(room.libraries());
        classes()
                .that()
                .resideInAPackage(ROOT + "." + room.name())
                .should()
                .onlyDependOnClassesThat()
                .resideInAnyPackage(allowed.toArray(String[]::new))
                .allowEmptyShould(false)
                .check(CORE);
    }

    @Test
    void noRoomKnowsTheDoorAndThereAreNoCycles() {
        noClasses()
                .that()
                .resideInAPackage(ROOT + ".*..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage(ROOT)
                .check(CORE);
        slices().matching(ROOT + ".(**)").should().beFreeOfCycles().check(CORE);
    }

    @Test
    void theCheckerOwesThePlannerNothing() {
        noClasses()
                .that()
                .resideInAPackage(ROOT + ".check..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        ROOT + ".solve..",
                        ROOT + ".pattern.fit..",
                        ROOT + ".blank..",
                        ROOT + ".report..",
                        ROOT + ".sequence..")
                .check(CORE);
        noClasses()
                .that()
                .resideInAPackage(ROOT + ".check..")
                .should()
                .dependOnClassesThat()
                .haveFullyQualifiedName(ROOT + ".stock.Bill")
                .check(CORE);
    }

    @Test
    void eachLibraryHasOneImporter() {
        noClasses()
                .that()
                .resideOutsideOfPackage(ROOT + ".solve.search..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("org.optaplanner..")
                .check(CORE);
        noClasses()
                .that()
                .resideOutsideOfPackage(ROOT + ".io..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("com.fasterxml.jackson..")
                .check(CORE);
    }

    /** The wood room only estimates, from drawn boards; what it answers are exact counts and rounded decimals. */
    @Test
    void floatingPointStaysInTheSearch() {
        com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noFields()
                .that()
                .areDeclaredInClassesThat()
                .resideOutsideOfPackages(ROOT + ".solve..", ROOT + ".draw..", ROOT + ".wood..")
                .should()
                .haveRawType(double.class)
                .orShould()
                .haveRawType(float.class)
                .check(CORE);
    }
}
