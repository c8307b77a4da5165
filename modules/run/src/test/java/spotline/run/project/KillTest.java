package spotline.run.project;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spotline.core.ReadException;
import spotline.run.document.History;

/** Nothing is lost when the process dies: at most the edit that was just being made. */
class KillTest {
    @TempDir
    private Path folder;

    @Test
    void aKilledProcessLosesNothing() throws Exception {
        kill(20, 11);
    }

    @Test
    @Tag("slow")
    void threeHundredKilledProcessesLoseNothing() throws Exception {
        kill(300, 12);
    }

    private void kill(int times, long seed) throws Exception {
        Random random = new Random(seed);
        Path project = folder.resolve("a.spotline");
        Projects.create(project, folder, RawFiles.INSIDE).close();
        int edits = 0;
        for (int i = 0; i < times; i++) {
            String before = hash(project);
            String did = before;
            String will = before;
            Process writer = start(project, random.nextLong());
            try (BufferedReader out = writer.inputReader(StandardCharsets.UTF_8)) {
                long wait = random.nextInt(200);
                String line = out.readLine();
                assertThat(line).as("the writer of round %d starts", i).startsWith("will ");
                Thread killer = new Thread(() -> {
                    try {
                        Thread.sleep(wait);
                    } catch (InterruptedException e) {
                        Thread.currentThread().interrupt();
                    }
                    writer.toHandle().destroyForcibly();
                });
                killer.start();
                for (; line != null; line = out.readLine()) {
                    if (line.startsWith("will ") && line.length() == 69) will = line.substring(5);
                    if (line.startsWith("did ") && line.length() == 68) {
                        did = line.substring(4);
                        edits++;
                    }
                }
                killer.join();
                writer.waitFor();
            }
            try (ProjectSession opened = ProjectSession.open(project, Projects.WRITER)) {
                assertThat(opened.document().hash()).as("round %d", i).isIn(did, will);
                assertThat(opened.findings()).allMatch(f -> f.rule().equals("journal-replayed"));
                History history = opened.history();
                // The writer takes edits back too: what it had undone must not be done again.
                int taken = 0;
                for (; taken < 20 && history.lastDone().isPresent(); taken++) history = history.undo();
                for (int u = 0; u < taken; u++) history = history.redo();
                assertThat(history.document().hash()).isIn(did, will);
            }
        }
        assertThat(edits).isGreaterThan(times);
    }

    private static String hash(Path project) throws ReadException, IOException {
        try (Project opened = Project.open(project)) {
            return opened.document().hash();
        }
    }

    private static Process start(Path project, long seed) throws IOException {
        return new ProcessBuilder(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-Xshare:auto",
                        "-Xmx128m",
                        "-cp",
                        System.getProperty("java.class.path"),
                        KilledWriter.class.getName(),
                        project.toString(),
                        Long.toString(seed)))
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
    }
}
