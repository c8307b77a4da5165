package spotline.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import spotline.core.Decimal;
import spotline.formats.Block;
import spotline.spectra.Acquisition;
import spotline.spectra.Axis;
import spotline.spectra.Coordinate;
import spotline.spectra.HeaderField;
import spotline.spectra.Ordinate;
import spotline.spectra.SpectrumSet;

/** Every field of a block but the values of its channels, which are summed up. */
final class BlockJson {
    private BlockJson() {}

    static ObjectNode of(Block block) {
        SpectrumSet set = block.set();
        Acquisition a = set.acquisition();
        ObjectNode node = new ObjectMapper().createObjectNode();
        node.put("block", block.number());
        node.put("line", block.line());
        node.put("name", a.blockId());
        node.put("sample", a.sampleId());
        node.put("technique", a.technique());
        node.put("region", a.region());
        node.put("transition", a.transition());
        node.put("time", a.time().map(Object::toString).orElse(null));
        node.put("source", a.excitation().source());
        number(node, "photonEnergyEv", a.excitation().photonEnergyEv());
        node.put("monochromated", a.excitation().monochromated().orElse(null));
        node.put("analyserMode", a.analyser().mode());
        number(node, "passEnergyEv", a.analyser().passEnergyEv());
        number(node, "retardRatio", a.analyser().retardRatio());
        number(node, "workFunctionEv", a.analyser().workFunctionEv());
        number(node, "dwellSeconds", a.timing().dwellSeconds());
        number(node, "scans", a.timing().scans());
        number(node, "deadTimeSeconds", a.timing().deadTimeSeconds());
        number(node, "emissionAngleDeg", a.emissionAngleDeg());
        node.set("axis", axis(set.axis()));
        node.put("spectra", set.size());
        ArrayNode coordinates = node.putArray("coordinates");
        for (Coordinate c : set.coordinates()) {
            ObjectNode one = coordinates.addObject().put("name", c.name()).put("unit", c.unit());
            number(one, "first", OptionalDouble.of(c.value(0)));
            number(one, "last", OptionalDouble.of(c.value(c.size() - 1)));
        }
        ArrayNode ordinates = node.putArray("ordinates");
        for (Ordinate o : set.ordinates()) ordinates.add(ordinate(o));
        fields(node.putArray("position"), a.position());
        fields(node.putArray("header"), a.header());
        ArrayNode comments = node.putArray("comments");
        a.comments().forEach(comments::add);
        return node;
    }

    private static ObjectNode axis(Axis axis) {
        ObjectNode node = new ObjectMapper().createObjectNode();
        node.put("label", axis.quantity().label());
        node.put("unit", axis.quantity().unit());
        node.put("scale", axis.quantity().scale().name().toLowerCase(Locale.ROOT));
        node.put("channels", axis.channels());
        number(node, "first", OptionalDouble.of(axis.first()));
        number(node, "last", OptionalDouble.of(axis.last()));
        return node;
    }

    private static ObjectNode ordinate(Ordinate o) {
        double sum = 0;
        double smallest = Double.POSITIVE_INFINITY;
        double largest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < o.size(); i++) {
            sum += o.value(i);
            smallest = Math.min(smallest, o.value(i));
            largest = Math.max(largest, o.value(i));
        }
        ObjectNode node = new ObjectMapper().createObjectNode();
        node.put("label", o.quantity().label());
        node.put("unit", o.quantity().unit());
        node.put("kind", o.kind().name().toLowerCase(Locale.ROOT));
        number(node, "countsPerUnit", o.counting().countsPerUnit());
        number(node, "smallest", OptionalDouble.of(smallest));
        number(node, "largest", OptionalDouble.of(largest));
        number(node, "sum", OptionalDouble.of(sum));
        number(node, "first", OptionalDouble.of(o.value(0)));
        number(node, "last", OptionalDouble.of(o.value(o.size() - 1)));
        return node;
    }

    private static void fields(ArrayNode to, List<HeaderField> fields) {
        for (HeaderField f : fields) to.addObject().put("name", f.name()).put("value", f.value());
    }

    private static void number(ObjectNode node, String name, OptionalDouble value) {
        if (value.isPresent() && Double.isFinite(value.getAsDouble())) {
            node.put(name, new BigDecimal(Decimal.text(value.getAsDouble())));
        } else {
            node.putNull(name);
        }
    }
}
