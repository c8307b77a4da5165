package spotline.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChemistryTest {
    private static final Pattern FORMULA_PART = Pattern.compile("([A-Z][a-z]?|[()])(\\d*)");

    private final ReferenceData data = ReferenceData.shipped();

    @Test
    void statesLieNearTheElementAndEachLineHasOneRepresentativeAtMost() {
        for (Element element : Elements.all()) {
            for (LineData line : data.lines(element, 1486.6)) {
                long representatives = data.chemicalStates(line.line()).stream()
                        .filter(ChemicalState::representative)
                        .count();
                assertThat(representatives).as(line.line().toString()).isLessThanOrEqualTo(1);
                for (ChemicalState state : data.chemicalStates(line.line())) {
                    if (state.satellite()) continue;
                    double distance = Math.abs(state.valueEv()
                            - data.bindingEnergy(state.line()).orElseThrow().valueEv());
                    // Perchlorate is the farthest of the listed states from chloride
                    assertThat(distance).as(state.toString()).isLessThan(10);
                }
            }
        }
    }

    @Test
    void statesOfAWholeLineIncludeThoseOfItsComponents() {
        assertThat(data.chemicalStates(Line.parse("Si 2p")))
                .extracting(ChemicalState::state)
                .contains("Si(0)", "SiO2");
        assertThat(data.chemicalStates(Line.parse("Si 2p3/2")))
                .extracting(ChemicalState::state)
                .contains("Si(0)", "SiO2");
        assertThat(data.chemicalStates(Line.parse("Ce 3d5/2")))
                .extracting(ChemicalState::state)
                .containsExactly("CeO2 (v)");
        assertThat(data.chemicalStates(Line.parse("C 2s"))).isEmpty();
    }

    @Test
    void augerParametersAreTheirSums() {
        int checked = 0;
        for (Element element : Elements.all()) {
            for (LineData line : data.lines(element, 1486.6)) {
                for (AugerParameter parameter : data.augerParameters(line.line())) {
                    assertThat(parameter.modifiedAugerParameterEv())
                            .as(parameter.toString())
                            .isEqualTo(parameter.bindingEv() + parameter.augerKineticEv(), within(0.051));
                    checked++;
                }
            }
        }
        assertThat(checked).isEqualTo(51);
    }

    // Estimate and typical value are independent: median 2.2 eV, worst (P, Si KLL, Ba, La, Ce MNN) 17 eV
    @Test
    void augerEnergiesAgreeWithTheirEstimates() {
        double[] distances = Elements.all().stream()
                .flatMap(element -> data.augerLines(element).stream())
                .mapToDouble(line -> Math.abs(line.kineticEv() - line.estimateEv()))
                .sorted()
                .toArray();
        assertThat(distances).hasSize(61);
        assertThat(distances[30]).isEqualTo(2.2, within(0.1));
        assertThat(distances[60]).isLessThan(18);
    }

    // Differences of photon energies
    @Test
    void augerLinesMoveOnTheBindingScaleWithTheSource() {
        AugerLine oxygen = data.augerLines(Elements.bySymbol("O").orElseThrow()).get(0);
        assertThat(oxygen.apparentBindingEv(1486.6) - oxygen.apparentBindingEv(1253.6))
                .isEqualTo(233.0, within(1e-9));
        for (Table.Row row :
                Table.read(ReferenceData::open, "levels/auger-lines.csv").rows()) {
            row.optional("apparent_be_al_ka_ev")
                    .ifPresent(be -> assertThat(be).isEqualTo(1486.6 - row.number("ke_typical_ev"), within(0.051)));
        }
    }

    @Test
    void overlapsLieWhereTheySayTheyDo() {
        int lines = 0;
        for (Element element : Elements.all()) {
            for (LineData line : data.lines(element, 1486.6)) {
                for (Overlap overlap : data.overlaps(line.line())) {
                    assertThat(Elements.bySymbol(overlap.interferingElement())).isPresent();
                    assertThat(overlap.useInstead()).isNotBlank();
                    Optional<Line> other = Line.find(overlap.interfering());
                    if (other.isEmpty()) continue;
                    assertThat(overlap.xraySource())
                            .as("a photoelectron line overlaps with any source")
                            .isEmpty();
                    assertThat(gap(overlap.line(), other.get()))
                            .as(overlap.toString())
                            .isLessThan(12);
                    lines++;
                }
            }
        }
        assertThat(lines).isEqualTo(32);
        assertThat(data.overlaps(Line.parse("C 1s")))
                .extracting(Overlap::interfering)
                .containsExactly("K 2p", "Ru 3d", "Sr 3p1/2");
        assertThat(data.overlaps(Line.parse("Pd 3d5/2"))).hasSize(1);
    }

    /** Distance between the nearest ends of what two lines span, doublet partners included, eV. */
    private double gap(Line one, Line two) {
        EnergyRange first = span(one);
        EnergyRange second = span(two);
        return Math.max(0, Math.max(first.lowEv() - second.highEv(), second.lowEv() - first.highEv()));
    }

    private EnergyRange span(Line line) {
        EnergyRange range = data.stateRange(line).orElseThrow();
        for (Line member : line.members()) {
            EnergyRange more = data.stateRange(member).orElseThrow();
            range = range.including(more.lowEv()).including(more.highEv());
        }
        return range;
    }

    @Test
    void mountMarkersLieWhereTheirLinesAre() {
        for (MountMaterial mount : data.mountMaterials()) {
            assertThat(mount.markers()).as(mount.id()).isNotEmpty();
            assertThat(mount.evidence()).isNotBlank();
            for (MountMaterial.Marker marker : mount.markers()) {
                EnergyRange range = data.stateRange(marker.line()).orElseThrow();
                assertThat(marker.lowEv()).as(mount.id() + " " + marker).isLessThan(marker.highEv());
                assertThat(marker.highEv()).as(mount.id() + " " + marker).isGreaterThan(range.lowEv() - 1);
                assertThat(marker.lowEv()).as(mount.id() + " " + marker).isLessThan(range.highEv() + 1);
            }
        }
        assertThat(data.mountMaterialsFor("cover-slip"))
                .extracting(MountMaterial::id)
                .containsExactly("glass");
        assertThat(data.mountMaterialsFor("powder-on-tape"))
                .extracting(MountMaterial::id)
                .containsExactly("carbon-tape", "silicone");
        assertThat(data.mountMaterialsFor("other")).isEmpty();
    }

    @Test
    void compoundsAreWhatTheirFormulasSay() {
        for (KnownCompound compound : data.compounds()) {
            Map<String, Integer> atoms = atoms(compound.formula());
            atoms.remove("H");
            double total = atoms.values().stream().mapToInt(n -> n).sum();
            Map<String, Double> percent = atoms.entrySet().stream()
                    .collect(Collectors.toMap(Map.Entry::getKey, e -> 100 * e.getValue() / total));
            assertThat(compound.atomicPercent().keySet()).isEqualTo(percent.keySet());
            percent.forEach((symbol, value) -> assertThat(compound.atomicPercent())
                    .hasEntrySatisfying(symbol, listed -> assertThat(listed).isEqualTo(value, within(0.0051))));
        }
    }

    private static Map<String, Integer> atoms(String formula) {
        Deque<Map<String, Integer>> open = new ArrayDeque<>();
        open.push(new TreeMap<>());
        Matcher part = FORMULA_PART.matcher(formula);
        while (part.find()) {
            int times = part.group(2).isEmpty() ? 1 : Integer.parseInt(part.group(2));
            switch (part.group(1)) {
                case "(" -> open.push(new TreeMap<>());
                case ")" -> {
                    Map<String, Integer> inner = open.pop();
                    inner.forEach((symbol, n) -> open.element().merge(symbol, n * times, Integer::sum));
                }
                default -> open.element().merge(part.group(1), times, Integer::sum);
            }
        }
        return open.pop();
    }

    // Tougaard 1988, 1997, values from memory
    @ParameterizedTest
    @CsvSource({
        "polymers, 434, 551, 436, 1.0973, 21.16",
        "SiO2, 325, 542, 275, 1.0871, 21.81",
        "Si, 132, 325, 96, 1.0061, 17.36",
        "Ge, 73, 260, 62, 0.7851, 15.64",
        "Al, 16.5, 230, 4.5, 0.7716, 15.13"
    })
    void threeParameterClasses(String name, double b, double c, double d, double integral, double peakEv) {
        InelasticCrossSection k = data.inelasticCrossSection(name).orElseThrow();
        assertThat(k.b()).isEqualTo(b);
        assertThat(k.c()).isEqualTo(c);
        assertThat(k.d()).hasValue(d);
        // derived, closed form
        double r = Math.sqrt(4 * c * d - d * d);
        double p = 2 * c - d;
        assertThat((b / r) * (Math.PI / 2 + Math.atan(p / r))).isEqualTo(integral, within(5e-5));
        assertThat(Math.sqrt((p + Math.sqrt(p * p + 12 * c * c)) / 6)).isEqualTo(peakEv, within(5e-3));
        assertThat(k.integral()).isEqualTo(integral, within(6e-5));
        assertThat(k.peakEv()).isEqualTo(peakEv, within(6e-3));
    }

    // Tougaard 1988, from memory; integral B/(2C) and maximum sqrt(C/3): derived, closed form
    @Test
    void twoParameterClasses() {
        InelasticCrossSection universal =
                data.inelasticCrossSection("universal (theory)").orElseThrow();
        assertThat(universal.b()).isEqualTo(2866);
        assertThat(universal.c()).isEqualTo(1643);
        for (InelasticCrossSection k : data.inelasticCrossSections()) {
            if (k.d().isPresent()) continue;
            assertThat(k.integral()).isEqualTo(k.b() / (2 * k.c()), within(6e-6));
            assertThat(k.peakEv()).isEqualTo(Math.sqrt(k.c() / 3), within(6e-4));
        }
    }
}
