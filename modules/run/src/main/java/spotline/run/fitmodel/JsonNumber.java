package spotline.run.fitmodel;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import spotline.core.Decimal;

/** Numbers in JSON, at the digits of all files. */
final class JsonNumber {
    private JsonNumber() {}

    static void put(ObjectNode to, String name, double value) {
        to.put(name, new BigDecimal(Decimal.text(value)));
    }
}
