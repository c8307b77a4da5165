package spotline.run.project;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import spotline.core.Finding;
import spotline.core.ReadException;
import spotline.run.document.History;
import spotline.run.document.Operation;

class ProjectTest {
    @TempDir
    private Path folder;

    private Path project;

    @BeforeEach
    void name() {
        project = folder.resolve("load 7.spotline");
    }

    private ProjectSession created(RawFiles keeping) throws ReadException, IOException {
        return Projects.create(project, folder, keeping);
    }

    private static History edited(ProjectSession session, int number) throws ReadException {
        return session.done(new Operation.Apply(
                Projects.edit(session.document(), number).signed("A. Analyst", "a test of " + number)));
    }

    private Map<String, byte[]> members() throws IOException {
        Map<String, byte[]> members = new LinkedHashMap<>();
        try (ZipInputStream zip = new ZipInputStream(Files.newInputStream(project))) {
            for (ZipEntry e = zip.getNextEntry(); e != null; e = zip.getNextEntry()) {
                members.put(e.getName(), zip.readAllBytes());
            }
        }
        return members;
    }

    private void write(Map<String, byte[]> members) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (Map.Entry<String, byte[]> member : members.entrySet()) {
                zip.putNextEntry(new ZipEntry(member.getKey()));
                zip.write(member.getValue());
            }
        }
        Files.write(project, bytes.toByteArray());
    }

    @Test
    void aProjectComesBackWithItsHistory() throws ReadException, IOException {
        History saved;
        try (ProjectSession session = created(RawFiles.INSIDE)) {
            edited(session, 1);
            session.done(new Operation.Mark("first look", Optional.empty()));
            edited(session, 2);
            session.done(new Operation.Reported(Optional.empty()));
            edited(session, 3);
            session.done(new Operation.Undo());
            session.save(session.results(), Projects.STAMP);
            saved = session.history();
        }
        assertThat(Journal.beside(project)).doesNotExist();
        assertThat(ProjectLock.beside(project)).doesNotExist();
        try (Project opened = Project.open(project)) {
            assertThat(opened.findings()).isEmpty();
            assertThat(opened.document()).isEqualTo(saved.document());
            assertThat(opened.history().record()).isEqualTo(saved.record());
            assertThat(opened.history().redo().document())
                    .isEqualTo(saved.redo().document());
            assertThat(opened.history().back("first look").document())
                    .isEqualTo(saved.back("first look").document());
            assertThat(opened.history().lastReport()).isPresent();
            assertThat(opened.document().seed()).isEqualTo(7);
            Path inside = opened.inputs().path("spot 2.txt");
            assertThat(Files.readString(inside)).isEqualTo("invented bytes of spot 2\n");
        }
    }

    @Test
    void theManifestIsOneThatOtherProgramsCheck() throws ReadException, IOException, InterruptedException {
        created(RawFiles.INSIDE).close();
        Path unpacked = Files.createDirectories(folder.resolve("unpacked"));
        for (Map.Entry<String, byte[]> member : members().entrySet()) {
            Path to = unpacked.resolve(member.getKey());
            Files.createDirectories(to.getParent());
            Files.write(to, member.getValue());
        }
        List<String> listed = Files.readAllLines(unpacked.resolve("manifest.sha256"));
        assertThat(listed)
                .hasSize(members().size() - 1)
                .allMatch(line -> line.matches("[0-9a-f]{64}  [A-Za-z0-9._/-]+"))
                .anyMatch(line -> line.endsWith("  raw/0001-spot_1.txt"))
                .anyMatch(line -> line.endsWith("  results/composition.csv"));
        for (String line : listed) {
            assertThat(Sums.of(unpacked.resolve(line.substring(66)))).isEqualTo(line.substring(0, 64));
        }
        Process check;
        try {
            check = new ProcessBuilder("sha256sum", "-c", "manifest.sha256")
                    .directory(unpacked.toFile())
                    .redirectErrorStream(true)
                    .redirectOutput(folder.resolve("check.txt").toFile())
                    .start();
        } catch (IOException e) {
            Assumptions.abort("no sha256sum here");
            return;
        }
        assertThat(check.waitFor(30, TimeUnit.SECONDS)).isTrue();
        assertThat(check.exitValue()).isZero();
    }

    @Test
    void theSameContentGivesTheSameBytes() throws ReadException, IOException {
        created(RawFiles.INSIDE).close();
        byte[] first = Files.readAllBytes(project);
        created(RawFiles.INSIDE).close();
        assertThat(Files.readAllBytes(project)).isEqualTo(first);
        Stamp dated = new Stamp(
                "test", Projects.STAMP.saved().plusYears(3), Optional.of(Instant.parse("2026-01-02T03:04:06Z")));
        try (ProjectSession session = ProjectSession.open(project, Projects.WRITER)) {
            session.save(session.results(), dated);
        }
        try (ZipInputStream zip = new ZipInputStream(Files.newInputStream(project))) {
            for (ZipEntry e = zip.getNextEntry(); e != null; e = zip.getNextEntry()) {
                assertThat(e.getTimeLocal()).isEqualTo("2026-01-02T03:04:06");
            }
        }
        assertThat(new String(members().get("project.json"), StandardCharsets.UTF_8))
                .contains("\"saved\" : \"2026-01-02T03:04:06Z\"");
    }

    @Test
    void aRawFileThatWasChangedIsNamed() throws ReadException, IOException {
        created(RawFiles.OUTSIDE).close();
        assertThat(members().keySet()).noneMatch(m -> m.startsWith("raw/"));
        Files.writeString(folder.resolve("spot 2.txt"), "other bytes\n");
        Files.delete(folder.resolve("spot 3.txt"));
        try (Project opened = Project.open(project)) {
            assertThat(opened.findings())
                    .extracting(Finding::rule, Finding::spectrum)
                    .containsExactly(
                            org.assertj.core.groups.Tuple.tuple("raw-file-changed", "spot 2.txt"),
                            org.assertj.core.groups.Tuple.tuple("raw-file-missing", "spot 3.txt"));
        }
        Projects.document(folder);
        created(RawFiles.INSIDE).close();
        Map<String, byte[]> members = members();
        members.put("raw/0002-spot_2.txt", "other bytes\n".getBytes(StandardCharsets.UTF_8));
        write(members);
        try (Project opened = Project.open(project)) {
            assertThat(opened.findings())
                    .extracting(Finding::rule, Finding::spectrum)
                    .containsExactly(org.assertj.core.groups.Tuple.tuple("raw-file-changed", "spot 2.txt"));
        }
    }

    @Test
    void aFolderOfProjectAndFilesCanBeMoved() throws ReadException, IOException {
        created(RawFiles.OUTSIDE).close();
        Path elsewhere = Files.createDirectories(folder.resolve("elsewhere"));
        for (String name : List.of("load 7.spotline", "spot 1.txt", "spot 2.txt", "spot 3.txt")) {
            Files.move(folder.resolve(name), elsewhere.resolve(name));
        }
        try (Project opened = Project.open(elsewhere.resolve("load 7.spotline"))) {
            assertThat(opened.findings()).isEmpty();
        }
    }

    @Test
    void settingsThatWereTamperedWithAreRefused() throws ReadException, IOException {
        created(RawFiles.INSIDE).close();
        Map<String, byte[]> members = members();
        members.put(
                "holder-run.json",
                new String(members.get("holder-run.json"), StandardCharsets.UTF_8)
                        .replace("s1", "s9")
                        .getBytes(StandardCharsets.UTF_8));
        write(members);
        assertThatExceptionOfType(ReadException.class)
                .isThrownBy(() -> Project.open(project))
                .withMessageContaining("holder-run.json")
                .withMessageContaining("manifest");
    }

    @Test
    void aNewerFormatIsRefused() throws ReadException, IOException {
        created(RawFiles.INSIDE).close();
        Map<String, byte[]> members = members();
        members.put(
                "project.json",
                new String(members.get("project.json"), StandardCharsets.UTF_8)
                        .replace("spotline-project/1", "spotline-project/2")
                        .getBytes(StandardCharsets.UTF_8));
        write(members);
        assertThatExceptionOfType(ReadException.class)
                .isThrownBy(() -> Project.open(project))
                .withMessageContaining("spotline-project/2")
                .withMessageContaining("newer than this program");
    }

    @Test
    void olderFormatsAreMigratedStepByStep() throws ReadException {
        Migrations made = new Migrations(
                "spotline-made",
                List.of(
                        tree -> tree.put("seed", tree.path("start").asInt()).without(List.of("start")),
                        tree -> tree.put("name", "unnamed")));
        var old = ProjectText.tree(
                "made", "{\"format\": \"spotline-made/1\", \"start\": 5}".getBytes(StandardCharsets.UTF_8));
        var newest = made.newest(old);
        assertThat(newest.toString()).isEqualTo("{\"format\":\"spotline-made/3\",\"seed\":5,\"name\":\"unnamed\"}");
        assertThat(old.path("format").asText()).isEqualTo("spotline-made/1");
        assertThat(made.newest()).isEqualTo(3);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"../evil.txt", "/etc/evil.txt", "raw/../../evil.txt", "raw\\evil.txt", "c:evil.txt", "a/./b"})
    void namesThatLeadElsewhereAreRefused(String name) throws ReadException, IOException {
        created(RawFiles.INSIDE).close();
        Map<String, byte[]> members = members();
        members.put(name, new byte[] {1});
        write(members);
        assertThatExceptionOfType(ReadException.class)
                .isThrownBy(() -> Project.open(project))
                .withMessageContaining("leads elsewhere");
    }

    @Test
    void aFileTwiceIsRefused() throws ReadException, IOException {
        created(RawFiles.INSIDE).close();
        Map<String, byte[]> members = members();
        members.put("results/one", new byte[] {1});
        members.put("results/two", new byte[] {2});
        write(members);
        byte[] bytes = Files.readAllBytes(project);
        String text = new String(bytes, StandardCharsets.ISO_8859_1).replace("results/two", "results/one");
        Files.write(project, text.getBytes(StandardCharsets.ISO_8859_1));
        assertThatExceptionOfType(ReadException.class)
                .isThrownBy(() -> Project.open(project))
                .withMessageContaining("results/one")
                .withMessageContaining("twice");
    }

    @Test
    void aTrapThatUnpacksWithoutEndIsRefused() throws ReadException, IOException {
        created(RawFiles.INSIDE).close();
        Map<String, byte[]> members = members();
        members.put("results/zeros", new byte[8 << 20]);
        write(members);
        assertThatExceptionOfType(ReadException.class)
                .isThrownBy(() -> Project.open(project))
                .withMessageContaining("results/zeros")
                .withMessageContaining("times its size");
        assertThatExceptionOfType(ReadException.class)
                .isThrownBy(() -> Project.open(project, new ProjectLimits(100, 1 << 20, 1 << 21, 2000)))
                .withMessageContaining("at most 1048576 bytes");
        assertThatExceptionOfType(ReadException.class)
                .isThrownBy(() -> Project.open(project, new ProjectLimits(3, 1 << 20, 1 << 21, 2000)))
                .withMessageContaining("files inside");
    }

    @Test
    void everyCutOfAProjectIsRefusedInOneSentence() throws ReadException, IOException {
        created(RawFiles.INSIDE).close();
        byte[] whole = Files.readAllBytes(project);
        for (int length = 0; length < whole.length; length += 1 + whole.length / 97) {
            Files.write(project, java.util.Arrays.copyOf(whole, length));
            assertThatExceptionOfType(ReadException.class).isThrownBy(() -> Project.open(project));
        }
    }

    @Test
    void editsSinceTheSaveComeFromTheJournal() throws ReadException, IOException {
        History last;
        try (ProjectSession session = created(RawFiles.INSIDE)) {
            edited(session, 1);
            session.save(Map.of(), Projects.STAMP);
            edited(session, 2);
            session.done(new Operation.Undo());
            last = edited(session, 3);
        }
        try (ProjectSession again = ProjectSession.open(project, Projects.WRITER)) {
            assertThat(again.document()).isEqualTo(last.document());
            assertThat(again.history().record()).isEqualTo(last.record());
            assertThat(again.findings()).extracting(Finding::rule).containsExactly("journal-replayed");
            last = edited(again, 4);
        }
        try (Project opened = Project.open(project)) {
            assertThat(opened.document()).isEqualTo(last.document());
        }
    }

    @Test
    void aTornLastLineIsDroppedAndTheRestKept() throws ReadException, IOException {
        List<History> states = new ArrayList<>();
        try (ProjectSession session = created(RawFiles.INSIDE)) {
            states.add(session.history());
            for (int i = 1; i <= 3; i++) states.add(edited(session, i));
        }
        Path journal = Journal.beside(project);
        byte[] whole = Files.readAllBytes(journal);
        for (int length = whole.length - 1; length >= 0; length -= 37) {
            byte[] torn = java.util.Arrays.copyOf(whole, length);
            Files.write(journal, torn);
            long lines = new String(torn, StandardCharsets.UTF_8)
                    .chars()
                    .filter(c -> c == '\n')
                    .count();
            try (ProjectSession session = ProjectSession.open(project, Projects.WRITER)) {
                assertThat(session.document()).isEqualTo(states.get((int) lines).document());
                History next = edited(session, 9);
                session.done(new Operation.Undo());
                assertThat(next.document()).isNotEqualTo(session.document());
            }
            assertThat(Journal.read(journal).entries()).hasSize((int) lines + 2);
        }
    }

    @Test
    void aJournalDamagedInTheMiddleIsUsedAsFarAsItGoesAndPutAside() throws ReadException, IOException {
        History afterOne;
        try (ProjectSession session = created(RawFiles.INSIDE)) {
            afterOne = edited(session, 1);
            edited(session, 2);
            edited(session, 3);
        }
        Path journal = Journal.beside(project);
        List<String> lines = new ArrayList<>(Files.readAllLines(journal));
        lines.set(1, lines.get(1).replace("minimumSignificance", "minimumsignificance"));
        Files.write(journal, lines);
        try (ProjectSession session = ProjectSession.open(project, Projects.WRITER)) {
            assertThat(session.document()).isEqualTo(afterOne.document());
            assertThat(session.findings())
                    .extracting(Finding::rule)
                    .containsExactly("journal-replayed", "journal-not-used");
        }
        assertThat(journal.resolveSibling(journal.getFileName() + ".not-used")).hasContent(String.join("\n", lines));
        try (Project opened = Project.open(project)) {
            assertThat(opened.findings()).isEmpty();
            assertThat(opened.document()).isEqualTo(afterOne.document());
        }
    }

    @Test
    void theJournalOfAnotherProjectIsNotUsed() throws ReadException, IOException {
        try (ProjectSession session = created(RawFiles.INSIDE)) {
            edited(session, 1);
        }
        byte[] foreign = Files.readAllBytes(Journal.beside(project));
        created(RawFiles.INSIDE).close();
        Files.write(Journal.beside(project), foreign);
        try (Project opened = Project.open(project)) {
            assertThat(opened.history().done()).isEmpty();
        }
    }

    @Test
    void aSecondWriterIsToldOfTheFirst() throws ReadException, IOException {
        try (ProjectSession session = created(RawFiles.INSIDE)) {
            assertThatExceptionOfType(ReadException.class)
                    .isThrownBy(() -> ProjectSession.open(project, Projects.WRITER))
                    .withMessage(project + ": a project that is open for A. Analyst on bench-pc since"
                            + " 2026-05-12T09:00+02:00 (process 4711), expected one writer at a time");
            assertThat(session.document()).isNotNull();
            Project.open(project).close();
        }
        ProjectSession.open(project, Projects.WRITER).close();
    }

    @Test
    void aDeadWritersLockFileHoldsNobodyUp() throws ReadException, IOException {
        created(RawFiles.INSIDE).close();
        Files.writeString(ProjectLock.beside(project), "{\"who\": \"a ghost\"}");
        ProjectSession.open(project, Projects.WRITER).close();
    }

    @Test
    void aFileThatAnEditNoLongerNamesIsKept() throws ReadException, IOException {
        created(RawFiles.INSIDE).close();
        try (ProjectSession session = ProjectSession.open(project, Projects.WRITER)) {
            session.done(new Operation.Apply(spotline.run.document.Edits.fact(
                    session.document(),
                    "Spot 1 was measured from another file",
                    "/spots/0/spectra/0/file",
                    Optional.of(new com.fasterxml.jackson.databind.node.TextNode("another.txt")))));
            session.save(Map.of(), Projects.STAMP);
        }
        try (Project opened = Project.open(project);
                InputStream kept = Files.newInputStream(opened.inputs().path("spot 1.txt"))) {
            assertThat(kept).hasContent("invented bytes of spot 1\n");
            assertThat(opened.raw()).extracting(RawFile::name).contains("another.txt", "spot 1.txt");
        }
    }
}
