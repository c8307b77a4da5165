package spotline.holder.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spotline.core.ReadException;
import spotline.holder.HolderPlan;
import spotline.holder.HolderRunFile;
import spotline.holder.HolderRunReader;
import spotline.holder.HolderTemplates;

/**
 * What a check of a right plan starts. The time it takes is nearly all the loading of classes, so that the classes are
 * held and no clock is looked at; the program below prints the time for those who want it.
 */
class ColdStartTest {
    /** Twenty specimens with a spot each, in two rows. */
    static String twentySpots() {
        List<String> specimens = new ArrayList<>();
        List<String> spots = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            double x = 6 + 10 * (i % 10);
            double y = 5.5 + 9 * (i / 10);
            specimens.add(Plans.specimen("S" + i, x, y, 0, "\"width\": 7, \"height\": 6", "\"thicknessMm\": 1"));
            spots.add(Plans.spot("p" + i, "S" + i, x, y, "\"zMm\": 1"));
        }
        return "{ \"format\": \"spotline-holder-run/1\", \"date\": \"2026-05-12\", \"holder\": { \"template\": \"flat-bar\" },"
                + " \"instrument\": { \"analysisAreaMm\": { \"x\": 0.7, \"y\": 0.3 } }, \"specimens\": ["
                + String.join(",", specimens) + "], \"spots\": [" + String.join(",", spots) + "] }";
    }

    /** Checks the plan in a file and prints how many findings there are and how many ms it took from here. */
    public static final class Program {
        private Program() {}

        public static void main(String[] arguments) throws ReadException {
            long start = System.nanoTime();
            Path file = Path.of(arguments[0]);
            HolderRunFile run = HolderRunReader.read(file);
            int findings = PlanCheck.check(HolderPlan.of(run), HolderTemplates.of(run, file))
                    .size();
            System.out.println("findings " + findings + " ms " + (System.nanoTime() - start) / 1_000_000);
        }
    }

    @Test
    void aRightPlanStartsNeitherTheSchemaLibraryNorAMapperNorAnOverlay(@TempDir Path folder)
            throws IOException, InterruptedException {
        Path plan = Files.writeString(folder.resolve("plan.json"), twentySpots());
        Path out = folder.resolve("out.txt");
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xlog:class+load:stdout",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Program.class.getName(),
                        plan.toString())
                .redirectErrorStream(true)
                .redirectOutput(out.toFile())
                .start();
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        String printed = Files.readString(out, StandardCharsets.UTF_8);

        assertThat(printed).contains("findings 0 ms ").contains("spotline.holder.check.PlanCheck");
        assertThat(printed)
                .doesNotContain(
                        "com.networknt.schema",
                        "com.fasterxml.jackson.databind.ObjectMapper",
                        "org.locationtech.jts.operation.overlayng");
        assertThat(process.exitValue()).isZero();
    }

    @Test
    void thatPlanIsRight() throws ReadException {
        HolderRunFile run = HolderRunReader.read("plan.json", twentySpots().getBytes(StandardCharsets.UTF_8));
        assertThat(PlanCheck.check(HolderPlan.of(run), Optional.of(Plans.BAR))).isEmpty();
    }
}
