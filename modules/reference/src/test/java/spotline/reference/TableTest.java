package spotline.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TableTest {
    private static Table table(String text) {
        return Table.read(name -> new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), "levels/some.csv");
    }

    @Test
    void quotedFieldsMayHoldCommasAndQuotes() {
        Table.Row row = table("# head\na,b\n\"x, \"\"y\"\"\",2.5\n").rows().get(0);
        assertThat(row.text("a")).isEqualTo("x, \"y\"");
        assertThat(row.number("b")).isEqualTo(2.5);
    }

    @Test
    void whatIsWrongIsNamedWithTableAndLine() {
        assertThatIllegalStateException()
                .isThrownBy(() -> table("# head\na,b\n1,2\n3\n"))
                .withMessage("levels/some.csv:4: 1 fields, expected 2 fields");
        assertThatIllegalStateException()
                .isThrownBy(() -> table("a,b\n\"1,2\n"))
                .withMessageContaining("levels/some.csv:2: a quote");
        assertThatIllegalStateException().isThrownBy(() -> table("a,a\n1,2\n")).withMessageContaining("column a twice");
        assertThatIllegalStateException()
                .isThrownBy(() -> table("a\nx\n").rows().get(0).number("a"))
                .withMessage("levels/some.csv:2: \"x\" in column a, expected a number");
        assertThatIllegalStateException()
                .isThrownBy(() -> table("a\nNaN\n").rows().get(0).optional("a"))
                .withMessageContaining("expected a finite number");
        assertThatIllegalStateException()
                .isThrownBy(() -> table("a\nperhaps\n").rows().get(0).yes("a"))
                .withMessageContaining("yes or no");
        assertThatIllegalStateException()
                .isThrownBy(() -> table("a\n1\n").rows().get(0).text("b"))
                .withMessageContaining("no column b");
        assertThatIllegalStateException()
                .isThrownBy(() -> table("a\nXx 1s\n").rows().get(0).parsed("a", Line::parse))
                .withMessage("levels/some.csv:2: \"Xx\" is no element's symbol");
        assertThatIllegalStateException()
                .isThrownBy(() -> table("# only a head\n"))
                .withMessageContaining("no rows");
        assertThatIllegalStateException()
                .isThrownBy(() -> Table.read(name -> null, "levels/some.csv"))
                .withMessageContaining("missing");
    }

    // Row counts of the tables as taken from their sources
    @ParameterizedTest
    @CsvSource({
        "cross-sections/subshell.csv, 1397",
        "cross-sections/nl.csv, 872",
        "cross-sections/scofield-1976-check.csv, 107",
        "cross-sections/asymmetry-beta.csv, 891",
        "levels/core-levels.csv, 1504",
        "levels/doublets.csv, 508",
        "levels/auger-lines.csv, 61",
        "levels/main-lines.csv, 51",
        "levels/overlaps.csv, 45",
        "calibration/iso-15472-reference-energies.csv, 16",
        "calibration/earlier-reference-energies.csv, 14",
        "calibration/xray-sources.csv, 11",
        "calibration/xray-satellites.csv, 14",
        "calibration/ghost-lines.csv, 4",
        "calibration/adventitious-carbon.csv, 10",
        "mean-free-path/materials.csv, 17",
        "mean-free-path/tpp2m-check.csv, 238",
        "mean-free-path/optical-elements.csv, 56",
        "mean-free-path/optical-organic.csv, 64",
        "mean-free-path/optical-sio2.csv, 79",
        "mean-free-path/tpp2m-against-optical.csv, 60",
        "mean-free-path/formulas.csv, 15",
        "mean-free-path/s1-check.csv, 40",
        "mean-free-path/thickness-check.csv, 54",
        "inelastic-scattering/tougaard-classes.csv, 9",
        "constants/elements.csv, 98",
        "constants/codata.csv, 21",
        "constants/relations.csv, 7",
        "chemistry/chemical-states.csv, 222",
        "chemistry/auger-parameters.csv, 51",
        "chemistry/stoichiometry.csv, 40",
        "mounts/mount-materials.csv, 14",
        "mounts/mount-markers.csv, 34"
    })
    void everyTableIsWhole(String name, int rows) {
        assertThat(Table.read(ReferenceData::open, name).rows()).hasSize(rows);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "cross-sections/subshell.csv",
                "cross-sections/nl.csv",
                "cross-sections/asymmetry-beta.csv",
                "levels/core-levels.csv",
                "levels/doublets.csv",
                "levels/auger-lines.csv",
                "levels/main-lines.csv",
                "levels/overlaps.csv",
                "calibration/iso-15472-reference-energies.csv",
                "calibration/earlier-reference-energies.csv",
                "calibration/xray-sources.csv",
                "calibration/xray-satellites.csv",
                "calibration/adventitious-carbon.csv",
                "mean-free-path/materials.csv",
                "inelastic-scattering/tougaard-classes.csv",
                "chemistry/chemical-states.csv",
                "chemistry/auger-parameters.csv",
                "chemistry/stoichiometry.csv",
                "mounts/mount-materials.csv",
                "mounts/mount-markers.csv"
            })
    void aDamagedRowStopsTheLoadAndIsNamed(String damaged) throws IOException {
        List<String> lines = new ArrayList<>(text(damaged).lines().toList());
        int last = lines.size();
        String row = lines.get(last - 1);
        lines.set(last - 1, row.substring(0, row.lastIndexOf(',')));
        byte[] bytes = String.join("\n", lines).getBytes(StandardCharsets.UTF_8);
        assertThatThrownBy(() -> new ReferenceData(
                        name -> name.equals(damaged) ? new ByteArrayInputStream(bytes) : ReferenceData.open(name)))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageStartingWith(damaged + ":" + last + ": ");
    }

    private static String text(String name) throws IOException {
        try (InputStream stream = ReferenceData.open(name)) {
            assertThat(stream).isNotNull();
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void energiesOfTheMeanFreePathTablesRise() {
        for (String name : List.of("optical-elements", "optical-organic", "optical-sio2")) {
            double before = 0;
            for (Table.Row row : Table.read(ReferenceData::open, "mean-free-path/" + name + ".csv")
                    .rows()) {
                assertThat(row.number("energy_ev")).as(name).isGreaterThan(before);
                before = row.number("energy_ev");
            }
        }
    }

    @Test
    void levelsGetShallowerWithinAShellAndWidthsArePositive() {
        String current = "";
        double before = 0;
        for (Table.Row row :
                Table.read(ReferenceData::open, "levels/core-levels.csv").rows()) {
            if (!row.has("be_epics2017")) continue;
            double energy = row.number("be_epics2017");
            String shell = row.text("symbol") + row.text("orbital").charAt(0);
            if (!shell.equals(current)) before = Double.POSITIVE_INFINITY;
            current = shell;
            assertThat(energy).as(name(row)).isPositive();
            // Below 10 eV the valence levels of the actinides lie in no order
            if (energy > 10) assertThat(energy).as(name(row)).isLessThanOrEqualTo(before);
            before = energy;
            for (String width : List.of("campbell_papp", "krause_oliver", "keski_rahkonen_krause")) {
                row.optional("width_" + width).ifPresent(w -> assertThat(w).isBetween(0.001, 130.0));
            }
        }
    }

    private static String name(Table.Row row) {
        return row.text("symbol") + " " + row.text("orbital");
    }
}
