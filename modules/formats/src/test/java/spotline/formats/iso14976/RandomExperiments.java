package spotline.formats.iso14976;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.Supplier;

/** Experiments of every mode, scan and technique with random fields. */
final class RandomExperiments {
    private static final String LETTERS = "abc XYZ 0189 .,;:-+#%\"'()[]{}<>&=/\\|\t\u00e4\u00b5\u03b1\u20ac";

    private final SplittableRandom random;

    RandomExperiments(long seed) {
        random = new SplittableRandom(seed);
    }

    Experiment next(ExperimentMode mode, ScanMode scan) {
        ExperimentHeader header = new ExperimentHeader(
                ExperimentHeader.FORMAT_IDENTIFIER,
                text(),
                text(),
                text(),
                text(),
                texts(3),
                mode,
                scan,
                mode.hasRegions() ? Optional.of(real()) : Optional.empty(),
                mode.hasPositions() ? Optional.of(new MapExtent(real(), real(), real())) : Optional.empty(),
                list(3, this::variable),
                inclusion(),
                list(3, () -> random.nextInt(1, 41)),
                texts(2),
                random.nextInt(3));
        int blocks = random.nextInt(1, 5);
        List<ExperimentBlock> made = new ArrayList<>();
        for (int i = 0; i < blocks; i++) {
            ExperimentBlock block = block(header);
            made.add(i == 0 ? block : carryOver(header, block, made.get(i - 1)));
        }
        return new Experiment(header, made);
    }

    private InclusionList inclusion() {
        int kind = random.nextInt(3);
        List<Integer> items = list(6, () -> random.nextInt(1, 41));
        return kind == 0 || items.isEmpty() ? InclusionList.COMPLETE : new InclusionList(kind == 1, items);
    }

    /** Takes over from the block before what the list leaves out, field by field, as the standard has it. */
    private static ExperimentBlock carryOver(ExperimentHeader header, ExperimentBlock b, ExperimentBlock before) {
        boolean[] has = new boolean[41];
        for (int i = 1; i <= 40; i++) {
            boolean listed = header.inclusion().items().contains(i);
            has[i] = header.inclusion().items().isEmpty()
                    || listed != header.inclusion().exclusion();
        }
        Technique technique = has[9] ? b.technique() : before.technique();
        boolean depth = header.mode().isDepthProfile();
        boolean ions = technique.usesIonProbe();
        BlockTime t = b.time();
        BlockTime u = before.time();
        AnalysisSource s = b.source();
        AnalysisSource r = before.source();
        AnalyserSettings a = b.analyser();
        AnalyserSettings c = before.analyser();
        Ordinates ordinates = b.ordinates();
        List<Variable> variables = has[32] ? b.variables() : before.variables();
        if (!has[32]) {
            double[] values = new double[3 * variables.size()];
            for (int i = 0; i < values.length; i++) values[i] = i;
            List<Real> zeros = variables.stream().map(v -> Real.ZERO).toList();
            ordinates = Ordinates.of(zeros, zeros, values);
        }
        return new ExperimentBlock(
                b.blockId(),
                b.sampleId(),
                new BlockTime(
                        has[1] ? t.year() : u.year(),
                        has[2] ? t.month() : u.month(),
                        has[3] ? t.day() : u.day(),
                        has[4] ? t.hours() : u.hours(),
                        has[5] ? t.minutes() : u.minutes(),
                        has[6] ? t.seconds() : u.seconds(),
                        has[7] ? t.hoursInAdvanceOfGmt() : u.hoursInAdvanceOfGmt()),
                has[8] ? b.comments() : before.comments(),
                technique,
                has[10] ? b.mapPosition() : before.mapPosition(),
                has[11] ? b.experimentalValues() : before.experimentalValues(),
                new AnalysisSource(
                        has[12] ? s.label() : r.label(),
                        carried(depth || ions, has[13], s.particle(), r.particle(), ProbeParticle.UNKNOWN),
                        has[14] ? s.characteristicEnergy() : r.characteristicEnergy(),
                        has[15] ? s.strength() : r.strength(),
                        has[16] ? s.beamWidthX() : r.beamWidthX(),
                        has[16] ? s.beamWidthY() : r.beamWidthY(),
                        has[17] ? s.fieldOfView() : r.fieldOfView(),
                        has[18] ? s.linescan() : r.linescan(),
                        has[19] ? s.polarAngle() : r.polarAngle(),
                        has[20] ? s.azimuth() : r.azimuth()),
                new AnalyserSettings(
                        has[21] ? a.mode() : c.mode(),
                        has[22] ? a.passEnergyOrRatio() : c.passEnergyOrRatio(),
                        carried(
                                technique == Technique.AES_DIFF,
                                has[23],
                                a.differentialWidth(),
                                c.differentialWidth(),
                                Real.UNKNOWN),
                        has[24] ? a.magnification() : c.magnification(),
                        has[25] ? a.workFunction() : c.workFunction(),
                        has[26] ? a.targetBias() : c.targetBias(),
                        has[27] ? a.analysisWidthX() : c.analysisWidthX(),
                        has[27] ? a.analysisWidthY() : c.analysisWidthY(),
                        has[28] ? a.takeOffPolar() : c.takeOffPolar(),
                        has[28] ? a.takeOffAzimuth() : c.takeOffAzimuth()),
                has[29] ? b.species() : before.species(),
                has[30] ? b.transition() : before.transition(),
                has[30] ? b.detectedCharge() : before.detectedCharge(),
                has[31] ? b.abscissa() : before.abscissa(),
                variables,
                new Signal(
                        has[33] ? b.signal().mode() : before.signal().mode(),
                        has[34] ? b.signal().collectionTime() : before.signal().collectionTime(),
                        has[35] ? b.signal().scans() : before.signal().scans(),
                        has[36] ? b.signal().timeCorrection() : before.signal().timeCorrection()),
                carried(depth && !ions, has[37], b.sputtering(), before.sputtering(), SputteringSource.UNKNOWN),
                has[38] ? b.orientation() : before.orientation(),
                has[39] ? b.parameters() : before.parameters(),
                has[40] ? b.futureEntries() : before.futureEntries(),
                ordinates);
    }

    private static <T> Optional<T> carried(
            boolean applies, boolean listed, Optional<T> own, Optional<T> before, T notKnown) {
        if (!applies) return Optional.empty();
        // The technique may itself be carried over, so that the block as drawn lacks what it now needs.
        return listed ? Optional.of(own.orElse(notKnown)) : Optional.of(before.orElse(notKnown));
    }

    private ExperimentBlock block(ExperimentHeader header) {
        ExperimentMode mode = header.mode();
        Technique[] techniques = Technique.values();
        Technique technique = techniques[random.nextInt(techniques.length)];
        boolean depth = mode.isDepthProfile();
        List<Variable> variables = new ArrayList<>(List.of(variable()));
        variables.addAll(list(3, this::variable));
        return new ExperimentBlock(
                text(),
                text(),
                new BlockTime(real(), real(), real(), real(), real(), real(), real()),
                texts(3),
                technique,
                mode.hasPositions() ? Optional.of(new MapPosition(real(), real())) : Optional.empty(),
                header.experimentalVariables().stream().map(v -> real()).toList(),
                new AnalysisSource(
                        text(),
                        depth || technique.usesIonProbe()
                                ? Optional.of(new ProbeParticle(real(), real(), real()))
                                : Optional.empty(),
                        real(),
                        real(),
                        real(),
                        real(),
                        mode.hasFieldOfView() ? Optional.of(new FieldOfView(real(), real())) : Optional.empty(),
                        mode.hasLinescan()
                                ? Optional.of(new Linescan(real(), real(), real(), real(), real(), real()))
                                : Optional.empty(),
                        real(),
                        real()),
                new AnalyserSettings(
                        random.nextBoolean() ? "FAT" : text(),
                        real(),
                        technique == Technique.AES_DIFF ? Optional.of(real()) : Optional.empty(),
                        real(),
                        real(),
                        real(),
                        real(),
                        real(),
                        real(),
                        real()),
                text(),
                text(),
                real(),
                header.scanMode() == ScanMode.REGULAR
                        ? Optional.of(new Abscissa(text(), text(), real(), real()))
                        : Optional.empty(),
                variables,
                new Signal(random.nextBoolean() ? "analogue" : "pulse counting", real(), real(), real()),
                depth && !technique.usesIonProbe()
                        ? Optional.of(
                                new SputteringSource(real(), real(), real(), real(), real(), real(), "continuous"))
                        : Optional.empty(),
                new SampleOrientation(real(), real(), real()),
                list(3, () -> new AdditionalParameter(text(), text(), real())),
                exactly(header.futureBlockEntries(), this::text),
                ordinates(variables.size()));
    }

    private Ordinates ordinates(int variables) {
        double[] values = new double[variables * random.nextInt(6)];
        for (int i = 0; i < values.length; i++) values[i] = number();
        return Ordinates.of(exactly(variables, this::real), exactly(variables, this::real), values);
    }

    private Variable variable() {
        return new Variable(text(), text());
    }

    private Real real() {
        return random.nextInt(5) == 0 ? Real.UNKNOWN : Real.of(number());
    }

    double number() {
        switch (random.nextInt(6)) {
            case 0:
                return random.nextInt(-10, 1_000_000);
            case 1:
                return random.nextDouble() * 2000;
            case 2:
                return Math.round(random.nextDouble() * 1e6) / 1e4;
            case 3:
                return -0.0;
            case 4:
                return random.nextDouble() * Math.pow(10, random.nextInt(-40, 40));
            default:
                double any = Double.longBitsToDouble(random.nextLong());
                return Double.isFinite(any) ? any : 1;
        }
    }

    private String text() {
        int length = random.nextInt(12);
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < length; i++) text.append(LETTERS.charAt(random.nextInt(LETTERS.length())));
        return text.toString();
    }

    private List<String> texts(int most) {
        return list(most, this::text);
    }

    private <T> List<T> list(int most, Supplier<T> one) {
        return exactly(random.nextInt(most + 1), one);
    }

    private static <T> List<T> exactly(int count, Supplier<T> one) {
        List<T> list = new ArrayList<>();
        for (int i = 0; i < count; i++) list.add(one.get());
        return list;
    }
}
