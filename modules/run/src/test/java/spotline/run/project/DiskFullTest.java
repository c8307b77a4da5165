package spotline.run.project;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spotline.core.ReadException;
import spotline.run.InputFiles;
import spotline.run.document.History;
import spotline.run.document.Operation;

class DiskFullTest {
    @TempDir
    private Path folder;

    @Test
    void aSaveThatFindsNoRoomLeavesTheOldFileWhole() throws ReadException, IOException {
        Path project = folder.resolve("a.spotline");
        FullDisk disk = new FullDisk(1 << 20);
        try (ProjectSession session = Projects.create(project, folder, RawFiles.INSIDE, disk)) {
            byte[] old = Files.readAllBytes(project);
            History edited = session.done(new Operation.Apply(Projects.edit(session.document(), 1)));
            for (int room = 0; room < old.length; room += 1 + old.length / 23) {
                disk.makeRoom(room);
                assertThatExceptionOfType(IOException.class)
                        .isThrownBy(() -> session.save(Map.of(), Projects.STAMP))
                        .withMessage(
                                project + ": could not be saved, No space left on device; what was saved there before"
                                        + " still stands");
                assertThat(project).hasBinaryContent(old);
                assertThat(folder.resolve(".a.spotline.part")).doesNotExist();
            }
            try (Project opened = Project.open(project)) {
                assertThat(opened.document()).isEqualTo(edited.document());
            }
            disk.makeRoom(1 << 20);
            session.save(Map.of(), Projects.STAMP);
            assertThat(session.document()).isEqualTo(edited.document());
        }
    }

    @Test
    void anEditThatFindsNoRoomInTheJournalIsNotMade() throws ReadException, IOException {
        Path project = folder.resolve("a.spotline");
        FullDisk disk = new FullDisk(1 << 20);
        try (ProjectSession session = Projects.create(project, folder, RawFiles.INSIDE, disk)) {
            session.done(new Operation.Apply(Projects.edit(session.document(), 1)));
            History before = session.history();
            disk.makeRoom(100);
            assertThatExceptionOfType(ReadException.class)
                    .isThrownBy(() -> session.done(new Operation.Apply(Projects.edit(session.document(), 2))))
                    .withMessageContaining("No space left on device")
                    .withMessageContaining("the edit was not made");
            assertThat(session.history()).isSameAs(before);
            disk.makeRoom(1 << 20);
            session.done(new Operation.Apply(Projects.edit(session.document(), 3)));
        }
        try (Project opened = Project.open(project)) {
            assertThat(opened.history().done()).hasSize(2);
        }
    }

    @Test
    void aDiskThatIsReallyFullLeavesTheOldFileWhole() throws Exception {
        Path small = Files.createDirectories(folder.resolve("small"));
        Assumptions.assumeTrue(
                run("mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", small.toString()),
                "a small file system may be mounted here");
        try {
            Path project = small.resolve("a.spotline");
            try (ProjectSession session = ProjectSession.create(
                    project,
                    History.of(Projects.document(folder)),
                    InputFiles.in(folder),
                    RawFiles.INSIDE,
                    Map.of(),
                    Projects.WRITER,
                    Projects.STAMP)) {
                byte[] old = Files.readAllBytes(project);
                byte[] large = new byte[200_000];
                new java.util.Random(5).nextBytes(large);
                assertThatExceptionOfType(IOException.class)
                        .isThrownBy(() -> session.save(Map.of("large.bin", large), Projects.STAMP))
                        .withMessageContaining("could not be saved")
                        .withMessageContaining("still stands");
                assertThat(project).hasBinaryContent(old);
                session.save(Map.of("small.txt", "x".getBytes(StandardCharsets.UTF_8)), Projects.STAMP);
            }
            Project.open(project).close();
        } finally {
            run("umount", small.toString());
        }
    }

    private static boolean run(String... command) throws InterruptedException {
        try {
            Process process = new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return process.waitFor(20, TimeUnit.SECONDS) && process.exitValue() == 0;
        } catch (IOException e) {
            return false;
        }
    }
}
