package spotline.cli;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.GeneralCodingRules.ACCESS_STANDARD_STREAMS;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** Holds the arrows between the rooms: what is not drawn in DEVELOPERS.md is forbidden. */
class ArchitectureTest {
    /** Room to the rooms it reaches directly; an arrow also reaches everything behind its end. */
    private static final Map<String, List<String>> ARROWS = Map.ofEntries(
            Map.entry("core", List.of()),
            Map.entry("spectra", List.of("core")),
            Map.entry("formats", List.of("spectra")),
            Map.entry("reference", List.of("core")),
            Map.entry("numerics", List.of("core")),
            Map.entry("analysis", List.of("spectra", "reference", "numerics")),
            Map.entry("holder", List.of("core")),
            Map.entry("run", List.of("holder", "analysis", "formats")),
            Map.entry("report", List.of("run")),
            Map.entry("demo", List.of("holder", "formats", "reference")),
            Map.entry("viewer", List.of("report")),
            Map.entry("cli", List.of("report", "viewer")));

    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("spotline");

    private static String[] reach(String room) {
        TreeSet<String> reached = new TreeSet<>();
        List<String> open = new ArrayList<>(List.of(room));
        while (!open.isEmpty()) {
            String next = open.remove(open.size() - 1);
            if (reached.add("spotline." + next + "..")) open.addAll(ARROWS.get(next));
        }
        return reached.toArray(String[]::new);
    }

    @Test
    void everyRoomIsSeen() {
        TreeMap<String, Integer> rooms = new TreeMap<>();
        for (JavaClass c : CLASSES) rooms.merge(c.getPackageName().split("\\.")[1], 1, Integer::sum);
        assertThat(rooms.keySet()).containsExactlyInAnyOrderElementsOf(ARROWS.keySet());
    }

    @Test
    void everyRoomReachesOnlyWhatIsDrawn() {
        for (String room : ARROWS.keySet()) {
            DescribedPredicate<JavaClass> ours = JavaClass.Predicates.resideInAPackage("spotline..");
            DescribedPredicate<JavaClass> allowed =
                    JavaClass.Predicates.resideInAnyPackage(reach(room)).or(DescribedPredicate.not(ours));
            classes()
                    .that()
                    .resideInAPackage("spotline." + room + "..")
                    .should()
                    .onlyDependOnClassesThat(allowed)
                    .check(CLASSES);
        }
    }

    @Test
    void noCyclesBetweenPackages() {
        slices().matching("spotline.(**)").should().beFreeOfCycles().check(CLASSES);
    }

    @Test
    void onlyTheCommandLineTalksToTheTerminal() {
        noClasses()
                .that()
                .resideOutsideOfPackage("spotline.cli..")
                .should(ACCESS_STANDARD_STREAMS)
                .check(CLASSES);
    }

    @Test
    void nothingStaticChanges() {
        fields().that().areStatic().should().beFinal().check(CLASSES);
    }

    @Test
    void screensLiveInTheViewerAlone() {
        noClasses()
                .that()
                .resideOutsideOfPackage("spotline.viewer..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("javafx..")
                .check(CLASSES);
    }
}
