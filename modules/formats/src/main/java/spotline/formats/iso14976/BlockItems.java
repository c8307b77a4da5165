package spotline.formats.iso14976;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.core.ReadException;

/**
 * The order of a block, from the block identifier to the ordinate values, and which mode and technique
 * carry which item. ISO 14976:1998.
 */
final class BlockItems {
    private final ExperimentHeader header;
    private final ItemPort port;

    private BlockItems(ExperimentHeader header, ItemPort port) {
        this.header = header;
        this.port = port;
    }

    /** @param current what an item that is not carried keeps: for a parser the block before, for a writer the block itself */
    static ExperimentBlock exchange(ExperimentHeader header, ItemPort port, ExperimentBlock current)
            throws ReadException {
        return new BlockItems(header, port).exchange(current);
    }

    private ExperimentBlock exchange(ExperimentBlock was) throws ReadException {
        String blockId = port.text("block identifier", was.blockId());
        String sampleId = port.text("sample identifier", was.sampleId());
        BlockTime time = time(was.time());
        List<String> comments = port.item(8)
                ? port.texts("number of lines in block comment", "block comment line", was.comments())
                : was.comments();
        Technique technique =
                port.item(9) ? port.choice("technique", was.technique(), Technique.class) : was.technique();
        Optional<MapPosition> position =
                header.mode().hasPositions() ? Optional.of(position(was.mapPosition())) : Optional.empty();
        List<Real> experimental = port.item(11)
                ? port.numbers(
                        header.experimentalVariables().size(),
                        "value of experimental variable",
                        was.experimentalValues())
                : was.experimentalValues();
        AnalysisSource source = source(technique, was.source());
        AnalyserSettings analyser = analyser(technique, was.analyser());
        String species = text(29, "species label", was.species());
        String transition = was.transition();
        Real charge = was.detectedCharge();
        if (port.item(30)) {
            transition = port.text("transition or charge state label", transition);
            charge = port.number("charge of detected particle", charge);
        }
        Optional<Abscissa> abscissa =
                header.scanMode() == ScanMode.REGULAR ? Optional.of(abscissa(was.abscissa())) : Optional.empty();
        List<Variable> variables = port.item(32)
                ? port.variables("number of corresponding variables", "corresponding variable", was.variables())
                : was.variables();
        Signal signal = signal(was.signal());
        Optional<SputteringSource> sputtering =
                hasSputtering(technique) ? Optional.of(sputtering(was.sputtering())) : Optional.empty();
        SampleOrientation orientation = orientation(was.orientation());
        List<AdditionalParameter> parameters = port.item(39) ? parameters(was.parameters()) : was.parameters();
        List<String> future = port.item(40)
                ? port.texts(header.futureBlockEntries(), "future-upgrade block entry", was.futureEntries())
                : was.futureEntries();
        Ordinates ordinates = port.ordinates(variables, was.ordinates());
        return new ExperimentBlock(
                blockId,
                sampleId,
                time,
                comments,
                technique,
                position,
                experimental,
                source,
                analyser,
                species,
                transition,
                charge,
                abscissa,
                variables,
                signal,
                sputtering,
                orientation,
                parameters,
                future,
                ordinates);
    }

    private String text(int item, String field, String current) throws ReadException {
        return port.item(item) ? port.text(field, current) : current;
    }

    private Real number(int item, String field, Real current) throws ReadException {
        return port.item(item) ? port.number(field, current) : current;
    }

    private boolean hasParticle(Technique technique) {
        return header.mode().isDepthProfile() || technique.usesIonProbe();
    }

    private boolean hasSputtering(Technique technique) {
        return header.mode().isDepthProfile() && !technique.usesIonProbe();
    }

    private BlockTime time(BlockTime was) throws ReadException {
        return new BlockTime(
                number(1, "year in full", was.year()),
                number(2, "month", was.month()),
                number(3, "day of month", was.day()),
                number(4, "hours", was.hours()),
                number(5, "minutes", was.minutes()),
                number(6, "seconds", was.seconds()),
                number(7, "number of hours in advance of GMT", was.hoursInAdvanceOfGmt()));
    }

    private MapPosition position(Optional<MapPosition> before) throws ReadException {
        MapPosition was = before.orElse(MapPosition.UNKNOWN);
        if (port.item(10)) {
            return new MapPosition(port.number("x coordinate", was.x()), port.number("y coordinate", was.y()));
        }
        if (before.isEmpty()) port.neverGiven("x and y coordinate");
        return was;
    }

    private AnalysisSource source(Technique technique, AnalysisSource was) throws ReadException {
        String label = text(12, "analysis source label", was.label());
        Optional<ProbeParticle> particle =
                hasParticle(technique) ? Optional.of(particle(was.particle())) : Optional.empty();
        Real energy = number(14, "analysis source characteristic energy", was.characteristicEnergy());
        Real strength = number(15, "analysis source strength", was.strength());
        Real widthX = was.beamWidthX();
        Real widthY = was.beamWidthY();
        if (port.item(16)) {
            widthX = port.number("analysis source beam width x", widthX);
            widthY = port.number("analysis source beam width y", widthY);
        }
        Optional<FieldOfView> view =
                header.mode().hasFieldOfView() ? Optional.of(fieldOfView(was.fieldOfView())) : Optional.empty();
        Optional<Linescan> linescan =
                header.mode().hasLinescan() ? Optional.of(linescan(was.linescan())) : Optional.empty();
        Real polar = number(19, "analysis source polar angle of incidence", was.polarAngle());
        Real azimuth = number(20, "analysis source azimuth", was.azimuth());
        return new AnalysisSource(label, particle, energy, strength, widthX, widthY, view, linescan, polar, azimuth);
    }

    private ProbeParticle particle(Optional<ProbeParticle> before) throws ReadException {
        ProbeParticle was = before.orElse(ProbeParticle.UNKNOWN);
        if (port.item(13)) {
            return new ProbeParticle(
                    port.number("atomic number of sputtering ion or atom", was.atomicNumber()),
                    port.number("number of atoms in sputtering particle", was.atoms()),
                    port.number("charge of sputtering particle", was.charge()));
        }
        if (before.isEmpty()) port.neverGiven("sputtering ion or atom");
        return was;
    }

    private FieldOfView fieldOfView(Optional<FieldOfView> before) throws ReadException {
        FieldOfView was = before.orElse(FieldOfView.UNKNOWN);
        if (port.item(17)) {
            return new FieldOfView(port.number("field of view x", was.x()), port.number("field of view y", was.y()));
        }
        if (before.isEmpty()) port.neverGiven("field of view");
        return was;
    }

    private Linescan linescan(Optional<Linescan> before) throws ReadException {
        Linescan was = before.orElse(Linescan.UNKNOWN);
        if (port.item(18)) {
            return new Linescan(
                    port.number("first linescan start x", was.firstStartX()),
                    port.number("first linescan start y", was.firstStartY()),
                    port.number("first linescan finish x", was.firstFinishX()),
                    port.number("first linescan finish y", was.firstFinishY()),
                    port.number("last linescan finish x", was.lastFinishX()),
                    port.number("last linescan finish y", was.lastFinishY()));
        }
        if (before.isEmpty()) port.neverGiven("linescans");
        return was;
    }

    private AnalyserSettings analyser(Technique technique, AnalyserSettings was) throws ReadException {
        String mode = port.item(21) ? port.word("analyser mode", was.mode(), AnalyserSettings.MODES) : was.mode();
        Real pass = number(22, "analyser pass energy or retard ratio or mass resolution", was.passEnergyOrRatio());
        Optional<Real> width = technique == Technique.AES_DIFF
                ? Optional.of(differentialWidth(was.differentialWidth()))
                : Optional.empty();
        Real magnification = number(24, "magnification of analyser transfer lens", was.magnification());
        Real workFunction =
                number(25, "analyser work function or acceptance energy of atom or ion", was.workFunction());
        Real bias = number(26, "target bias", was.targetBias());
        Real widthX = was.analysisWidthX();
        Real widthY = was.analysisWidthY();
        if (port.item(27)) {
            widthX = port.number("analysis width x", widthX);
            widthY = port.number("analysis width y", widthY);
        }
        Real polar = was.takeOffPolar();
        Real azimuth = was.takeOffAzimuth();
        if (port.item(28)) {
            polar = port.number("analyser axis take-off polar angle", polar);
            azimuth = port.number("analyser axis take-off azimuth", azimuth);
        }
        return new AnalyserSettings(
                mode, pass, width, magnification, workFunction, bias, widthX, widthY, polar, azimuth);
    }

    private Real differentialWidth(Optional<Real> before) throws ReadException {
        Real was = before.orElse(Real.UNKNOWN);
        if (port.item(23)) return port.number("differential width", was);
        if (before.isEmpty()) port.neverGiven("differential width");
        return was;
    }

    private Abscissa abscissa(Optional<Abscissa> before) throws ReadException {
        Abscissa was = before.orElse(Abscissa.UNKNOWN);
        if (port.item(31)) {
            return new Abscissa(
                    port.text("abscissa label", was.label()),
                    port.text("abscissa units", was.unit()),
                    port.number("abscissa start", was.start()),
                    port.number("abscissa increment", was.increment()));
        }
        if (before.isEmpty()) port.neverGiven("abscissa");
        return was;
    }

    private Signal signal(Signal was) throws ReadException {
        String mode = port.item(33) ? port.word("signal mode", was.mode(), Signal.MODES) : was.mode();
        return new Signal(
                mode,
                number(34, "signal collection time", was.collectionTime()),
                number(35, "number of scans to compile this block", was.scans()),
                number(36, "signal time correction", was.timeCorrection()));
    }

    private SputteringSource sputtering(Optional<SputteringSource> before) throws ReadException {
        SputteringSource was = before.orElse(SputteringSource.UNKNOWN);
        if (port.item(37)) {
            return new SputteringSource(
                    port.number("sputtering source energy", was.energy()),
                    port.number("sputtering source beam current", was.beamCurrent()),
                    port.number("sputtering source width x", was.widthX()),
                    port.number("sputtering source width y", was.widthY()),
                    port.number("sputtering source polar angle of incidence", was.polarAngle()),
                    port.number("sputtering source azimuth", was.azimuth()),
                    port.word("sputtering mode", was.mode(), SputteringSource.MODES));
        }
        if (before.isEmpty()) port.neverGiven("sputtering source");
        return was;
    }

    private SampleOrientation orientation(SampleOrientation was) throws ReadException {
        if (!port.item(38)) return was;
        return new SampleOrientation(
                port.number("sample normal polar angle of tilt", was.tiltPolar()),
                port.number("sample normal tilt azimuth", was.tiltAzimuth()),
                port.number("sample rotation angle", was.rotation()));
    }

    private List<AdditionalParameter> parameters(List<AdditionalParameter> was) throws ReadException {
        int count = port.count("number of additional numerical parameters", was.size());
        List<AdditionalParameter> parameters = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            AdditionalParameter before = i < was.size() ? was.get(i) : AdditionalParameter.UNKNOWN;
            String of = "additional numerical parameter " + (i + 1);
            parameters.add(new AdditionalParameter(
                    port.text("label of " + of, before.label()),
                    port.text("units of " + of, before.unit()),
                    port.number("value of " + of, before.value())));
        }
        return parameters;
    }
}
