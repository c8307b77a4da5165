package spotline.report.html;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import org.junit.jupiter.api.Test;

class MarkupTest {
    @Test
    void textAndAttributesAreEscaped() {
        String html = new Markup()
                .element("p", "<script>alert('x')</script> & \"y\"", "title", "\"><img src=x>")
                .finish();
        assertThat(html)
                .isEqualTo("<p title=\"&quot;&gt;&lt;img src=x&gt;\">&lt;script&gt;alert(&#39;x&#39;)&lt;/script&gt;"
                        + " &amp; &quot;y&quot;</p>");
    }

    @Test
    void whatIsOpenedMustBeClosed() {
        assertThatIllegalStateException()
                .isThrownBy(() -> new Markup().open("p").finish());
    }
}
