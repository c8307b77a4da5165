package spotline.formats.iso14976;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import spotline.core.ReadException;
import spotline.formats.source.Warnings;
import spotline.spectra.Acquisition;
import spotline.spectra.Axis;
import spotline.spectra.Coordinate;
import spotline.spectra.EnergyScale;
import spotline.spectra.HeaderField;
import spotline.spectra.ListedAxis;
import spotline.spectra.Ordinate;
import spotline.spectra.Quantity;
import spotline.spectra.RegularAxis;
import spotline.spectra.SpectrumSet;

/**
 * Blocks of one experiment as spectrum sets. A block becomes one spectrum; its experimental variables and map coordinates
 * become coordinates; every header field is kept word for word beside what is understood.
 *
 * <p>The axis is that of a regular scan, or the first corresponding variable of an irregular one; a map's raster, or an
 * axis that the file does not give, becomes the number of the point, counted from 1.
 */
public final class BlockSpectra {
    private static final Quantity POINT_NUMBER = Quantity.of("point number", "");

    private final ExperimentHeader header;
    private final Warnings warnings;
    private final List<HeaderField> experimentFields;
    private List<HeaderField> lastFields = List.of();
    private Optional<SpectrumSet> last = Optional.empty();

    /** @param warnings told of what in a block could not be used */
    public BlockSpectra(ExperimentHeader header, Warnings warnings) {
        this.header = header;
        this.warnings = warnings;
        FieldLister lister = new FieldLister();
        try {
            lister.text("format identifier", header.formatIdentifier());
            HeaderItems.exchange(lister, header.formatIdentifier(), header);
        } catch (ReadException impossible) {
            throw new IllegalStateException("a value in memory cannot fail to be read", impossible);
        }
        this.experimentFields = lister.fields();
    }

    /**
     * One block as a spectrum set; empty when it holds no values.
     *
     * @param number of the block, counted from 1
     * @param line where the block begins
     */
    public Optional<SpectrumSet> convert(ExperimentBlock block, int number, int line) {
        Ordinates values = block.ordinates();
        String name = "block " + number + " (" + block.blockId() + ")";
        if (values.points() == 0) {
            warnings.caution("iso14976-empty-block", line, name + " holds no values; it is left out");
            return Optional.empty();
        }
        Optional<Axis> listed =
                header.scanMode() == ScanMode.IRREGULAR ? listedAxis(block, name, line) : Optional.empty();
        Axis own = listed.orElseGet(() -> regularAxis(block, name, line));
        Axis axis = last.map(set -> Same.of(own, set.axis())).orElse(own);
        OrdinateReading reading = new OrdinateReading(block, name, line, warnings);
        List<Ordinate> ordinates = reading.ordinates(
                listed.isPresent() ? 1 : 0, last.map(SpectrumSet::ordinates).orElse(List.of()));
        Acquisition read = new AcquisitionReading(header, block, name, line, warnings).read(fields(block));
        Acquisition acquisition =
                last.map(set -> sharing(read, set.acquisition())).orElse(read);
        last = Optional.of(new SpectrumSet(acquisition, axis, coordinates(block), ordinates));
        return last;
    }

    private static Acquisition sharing(Acquisition now, Acquisition before) {
        return new Acquisition(
                now.blockId(),
                Same.of(now.sampleId(), before.sampleId()),
                now.technique(),
                Same.of(now.time(), before.time()),
                Same.of(now.excitation(), before.excitation()),
                Same.of(now.analyser(), before.analyser()),
                Same.of(now.timing(), before.timing()),
                Same.of(now.region(), before.region()),
                Same.of(now.transition(), before.transition()),
                Same.of(now.emissionAngleDeg(), before.emissionAngleDeg()),
                Same.of(now.position(), before.position()),
                Same.of(now.comments(), before.comments()),
                now.header());
    }

    private Axis regularAxis(ExperimentBlock block, String name, int line) {
        int points = block.ordinates().points();
        if (block.abscissa().isPresent()) {
            Abscissa abscissa = block.abscissa().get();
            Quantity quantity = quantity(abscissa.label(), abscissa.unit());
            boolean known = abscissa.start().isKnown() && abscissa.increment().isKnown();
            if (known && abscissa.increment().raw() != 0) {
                return new RegularAxis(
                        quantity, abscissa.start().raw(), abscissa.increment().raw(), points);
            }
            if (abscissa.start().isKnown() && points == 1) {
                return new ListedAxis(quantity, new double[] {abscissa.start().raw()});
            }
            warnings.caution(
                    "iso14976-abscissa-unusable",
                    line,
                    name + " has the abscissa start " + abscissa.start() + " and increment " + abscissa.increment()
                            + "; the numbers of the points stand in for it");
        }
        return new RegularAxis(POINT_NUMBER, 1, 1, points);
    }

    private Optional<Axis> listedAxis(ExperimentBlock block, String name, int line) {
        double[] values = block.ordinates().variable(0);
        boolean known = block.variables().size() > 1;
        for (double value : values) known &= !Real.isUnknown(value);
        if (!known) {
            warnings.caution(
                    "iso14976-abscissa-unusable",
                    line,
                    name + " is an irregular scan without an abscissa among its " + values.length
                            + " points; the numbers of the points stand in for it");
            return Optional.empty();
        }
        Variable abscissa = block.variables().get(0);
        return Optional.of(new ListedAxis(quantity(abscissa.label(), abscissa.unit()), values));
    }

    private static Quantity quantity(String label, String unit) {
        String words = label.toLowerCase(Locale.ROOT);
        EnergyScale scale = EnergyScale.OTHER;
        if (words.contains("kinetic")) scale = EnergyScale.KINETIC;
        else if (words.contains("binding")) scale = EnergyScale.BINDING;
        return new Quantity(label, unit, scale);
    }

    private List<Coordinate> coordinates(ExperimentBlock block) {
        List<Coordinate> coordinates = new ArrayList<>();
        for (int i = 0; i < header.experimentalVariables().size(); i++) {
            Variable variable = header.experimentalVariables().get(i);
            add(
                    coordinates,
                    variable.label(),
                    variable.unit(),
                    block.experimentalValues().get(i));
        }
        block.mapPosition().ifPresent(position -> {
            add(coordinates, "x coordinate", "", position.x());
            add(coordinates, "y coordinate", "", position.y());
        });
        return coordinates;
    }

    private static void add(List<Coordinate> coordinates, String name, String unit, Real value) {
        if (value.isKnown()) coordinates.add(new Coordinate(name, unit, new double[] {value.raw()}));
    }

    /** Entries that did not change since the block before are shared with it: a map has a great many blocks. */
    private List<HeaderField> fields(ExperimentBlock block) {
        FieldLister lister = new FieldLister();
        try {
            BlockItems.exchange(header, lister, block);
        } catch (ReadException impossible) {
            throw new IllegalStateException("a value in memory cannot fail to be read", impossible);
        }
        List<HeaderField> fields = new ArrayList<>(experimentFields);
        for (HeaderField field : lister.fields()) {
            int at = fields.size();
            boolean same = at < lastFields.size() && lastFields.get(at).equals(field);
            fields.add(same ? lastFields.get(at) : field);
        }
        lastFields = fields;
        return fields;
    }
}
