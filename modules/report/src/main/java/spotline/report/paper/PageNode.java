package spotline.report.paper;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** A part of a page: text, an element, or a drawing. */
sealed interface PageNode {
    record Text(String text) implements PageNode {}

    /** @param svg as it stands in the page */
    record Drawing(String svg) implements PageNode {
        /** The numbers of {@code viewBox}: width and height, pixels. */
        double[] size() {
            int from = svg.indexOf("viewBox=") + 9;
            String[] box =
                    svg.substring(from, svg.indexOf(svg.charAt(from - 1), from)).split("[ ,]+");
            return new double[] {Double.parseDouble(box[2]), Double.parseDouble(box[3])};
        }
    }

    record Element(String tag, Map<String, String> attributes, List<PageNode> children) implements PageNode {
        Stream<Element> elements() {
            return children.stream().filter(Element.class::isInstance).map(Element.class::cast);
        }

        Optional<Element> first(String name) {
            for (Element child : elements().toList()) {
                if (child.tag().equals(name)) return Optional.of(child);
                Optional<Element> deeper = child.first(name);
                if (deeper.isPresent()) return deeper;
            }
            return Optional.empty();
        }

        Optional<Drawing> drawing() {
            for (PageNode child : children) {
                if (child instanceof Drawing drawing) return Optional.of(drawing);
                if (child instanceof Element element && element.drawing().isPresent()) return element.drawing();
            }
            return Optional.empty();
        }

        boolean is(String cssClass) {
            return (" " + attributes.getOrDefault("class", "") + " ").contains(" " + cssClass + " ");
        }

        String text() {
            StringBuilder out = new StringBuilder();
            for (PageNode child : children) {
                if (child instanceof Text text) out.append(text.text());
                else if (child instanceof Element element) out.append(element.text());
            }
            return out.toString();
        }
    }
}
