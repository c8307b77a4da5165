package spotline.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import spotline.core.ReadException;
import spotline.report.html.Letterhead;
import spotline.report.html.OwnerPage;
import spotline.report.paper.PagePdf;
import spotline.report.print.Typeface;

class TemplateFolderTest {
    @TempDir
    Path folder;

    @Test
    void putsNameMarkContactFooterAndStyleOnThePages() throws IOException, ReadException {
        Files.writeString(folder.resolve("name.txt"), "Invented <Surface> Laboratory\n");
        Files.writeString(folder.resolve("contact.txt"), "room 1");
        Files.writeString(folder.resolve("footer.txt"), "For internal use");
        Files.writeString(folder.resolve("style.css"), "h1 { color: #123456; }");
        ImageIO.write(
                new BufferedImage(40, 20, BufferedImage.TYPE_INT_RGB),
                "png",
                folder.resolve("mark.png").toFile());
        Letterhead letterhead = TemplateFolder.read(folder);
        byte[] html = OwnerPage.of(ExampleRun.plain(), 0, letterhead);
        String page = new String(html, StandardCharsets.UTF_8);
        assertThat(page)
                .contains("Invented &lt;Surface&gt; Laboratory", "room 1", "For internal use", "h1 { color: #123456; }")
                .contains("src=\"data:image/png;base64,");
        try (PDDocument document = Loader.loadPDF(PagePdf.of(html, new Typeface(), Optional.empty()))) {
            assertThat(new PDFTextStripper().getText(document))
                    .contains("Invented <Surface> Laboratory", "For internal use");
            assertThat(document.getPage(0).getResources().getXObjectNames()).hasSize(1);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "</style><script>alert(1)</script>",
                "@import 'x.css';",
                "body { background: URL(http://example.org/x.png) }",
                "body { background: u\\72l(x) }"
            })
    void aStyleThatReachesOutIsRefused(String css) throws IOException {
        Files.writeString(folder.resolve("style.css"), css);
        assertThatThrownBy(() -> TemplateFolder.read(folder)).isInstanceOf(ReadException.class);
    }

    @Test
    void anEmptyFolderAndAPictureThatIsNoneAreRefused() throws IOException {
        assertThatThrownBy(() -> TemplateFolder.read(folder)).isInstanceOf(ReadException.class);
        Files.writeString(folder.resolve("mark.png"), "no picture");
        assertThatThrownBy(() -> TemplateFolder.read(folder)).isInstanceOf(ReadException.class);
    }
}
