package spotline.formats.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import spotline.core.ReadException;

class LineSourceTest {
    private static final ReadLimits LIMITS = new ReadLimits(500_000, 100_000, 1, 1, 1);

    /** Gives a few bytes at a time, as a slow file system may. */
    private static InputStream dripping(byte[] bytes, int most) {
        return new ByteArrayInputStream(bytes) {
            @Override
            public synchronized int read(byte[] into, int off, int len) {
                return super.read(into, off, Math.min(len, most));
            }
        };
    }

    private static LineSource source(String text, int most) {
        byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
        return new LineSource("f", dripping(bytes, most), bytes.length, LIMITS);
    }

    @Test
    void linesHoweverTheBytesArrive() throws Exception {
        StringBuilder text = new StringBuilder();
        List<String> expected = new ArrayList<>();
        for (int i = 0; i < 300; i++) {
            String line = "x".repeat(i * 7 % 1000) + i;
            expected.add(line);
            text.append(line).append(i % 3 == 0 ? "\r\n" : "\n");
        }
        text.append("the last");
        expected.add("the last");
        for (int most : new int[] {1, 7, 4096, 1 << 20}) {
            LineSource source = source(text.toString(), most);
            List<String> found = new ArrayList<>();
            while (source.next()) {
                found.add(source.text());
                assertThat(source.line()).isEqualTo(found.size());
                assertThat(source.terminated()).isEqualTo(found.size() <= 300);
                assertThat(source.crLf()).isEqualTo(found.size() <= 300 && (found.size() - 1) % 3 == 0);
            }
            assertThat(found).isEqualTo(expected);
            assertThat(source.ended()).isTrue();
            assertThat(source.bytesLeft()).isZero();
            assertThat(source.place().toString()).isEqualTo("f:301");
        }
    }

    @Test
    void emptyLinesAndAnEmptyFile() throws Exception {
        assertThat(source("", 10).next()).isFalse();
        LineSource source = source("\n\r\n\n", 10);
        int lines = 0;
        while (source.next()) {
            lines++;
            assertThat(source.text()).isEmpty();
        }
        assertThat(lines).isEqualTo(3);
    }

    @Test
    void bytesBeyondAscii() throws Exception {
        LineSource latin = source("\u00b5m\n", 10);
        assertThat(latin.next()).isTrue();
        assertThat(latin.beyondAscii()).isTrue();
        assertThat(latin.text()).isEqualTo("\u00b5m");
        LineSource utf8 = source("\u00c2\u00b5m\n", 10);
        assertThat(utf8.next()).isTrue();
        assertThat(utf8.text()).isEqualTo("\u00b5m");
    }

    @Test
    void limits() throws Exception {
        LineSource longLine = source("short\n" + "x".repeat(100_001) + "\n", 5000);
        assertThat(longLine.next()).isTrue();
        assertThatThrownBy(longLine::next)
                .isInstanceOf(ReadException.class)
                .hasMessage("f:2: a line longer than 100000 bytes, expected lines of at most that length");
        LineSource longFile = source("0123456789\n".repeat(60_000), 5000);
        assertThatThrownBy(() -> {
                    while (longFile.next()) assertThat(longFile.line()).isLessThan(60_000);
                })
                .isInstanceOf(ReadException.class)
                .hasMessage("f: a file longer than 500000 bytes, expected a file of at most that length");
    }

    @Test
    void aFileThatStopsReading() throws Exception {
        InputStream failing = new InputStream() {
            @Override
            public int read() throws IOException {
                throw new IOException("device gone");
            }
        };
        LineSource source = new LineSource("f", failing, -1, LIMITS);
        assertThatThrownBy(source::next)
                .isInstanceOf(ReadException.class)
                .hasMessage("f:1: the file could not be read on, expected a file that can be read to its end");
    }

    @Test
    void textInMessages() {
        assertThat(LineSource.quote("a\u0007b\tc")).isEqualTo("\"a?b?c\"");
        assertThat(LineSource.quote("x".repeat(61))).isEqualTo("\"" + "x".repeat(60) + "...\"");
    }
}
