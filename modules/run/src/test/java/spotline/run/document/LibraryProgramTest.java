package spotline.run.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.tools.JavaCompiler;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The program that the page for developers shows does what the page says. */
class LibraryProgramTest {
    @TempDir
    private Path folder;

    @Test
    void theProgramOfThePageCompilesAndRuns() throws IOException, InterruptedException {
        String page = Files.readString(Path.of("../../DEVELOPERS.md"));
        Matcher block = Pattern.compile("```java\\n(.*?)```", Pattern.DOTALL).matcher(page);
        assertThat(block.find()).isTrue();
        Path source = Files.writeString(folder.resolve("OneWindow.java"), block.group(1));
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        StringWriter messages = new StringWriter();
        String classPath = System.getProperty("java.class.path");
        boolean compiled = compiler.getTask(
                        messages,
                        null,
                        null,
                        List.of("-classpath", classPath, "-proc:none", "-d", folder.toString()),
                        null,
                        compiler.getStandardFileManager(null, null, null).getJavaFileObjects(source.toFile()))
                .call();
        assertThat(compiled).as("%s", messages).isTrue();
        Path printed = folder.resolve("printed.txt");
        Process program = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx512m",
                        "-cp",
                        folder + System.getProperty("path.separator") + classPath,
                        "OneWindow",
                        Documents.DEMO.toString())
                .redirectErrorStream(true)
                .redirectOutput(printed.toFile())
                .start();
        assertThat(program.waitFor(120, TimeUnit.SECONDS)).isTrue();
        List<String> lines = Files.readAllLines(printed);
        assertThat(program.exitValue()).as("%s", lines).isZero();
        assertThat(of("before", lines)).isNotEmpty().isNotEqualTo(of("after", lines));
        assertThat(of("undone", lines)).isEqualTo(of("before", lines));
    }

    private static List<String> of(String when, List<String> lines) {
        return lines.stream()
                .filter(l -> l.startsWith(when + " "))
                .map(l -> l.substring(when.length()))
                .toList();
    }
}
