package spotline.bench;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;
import spotline.core.ReadException;
import spotline.formats.iso14976.BlockSpectra;
import spotline.formats.iso14976.Experiment;
import spotline.formats.iso14976.ExperimentBlock;
import spotline.formats.iso14976.ExperimentHeader;
import spotline.formats.iso14976.Iso14976Parser;
import spotline.formats.iso14976.Iso14976Writer;
import spotline.formats.source.NumberText;
import spotline.formats.source.ReadLimits;
import spotline.formats.source.Warnings;

/**
 * Reading ISO 14976 from bytes in memory beside a bare loop that finds the line ends of the same bytes and parses the same
 * numbers with the same number parser. Invented counts, with and without a transmission of decimals beside them, in
 * surveys and in narrow scans.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 6, time = 1)
@Measurement(iterations = 12, time = 1)
@Fork(2)
public class ParseBench {
    private static final int BLOCKS = 40;
    private static final int CHANNELS = 2_000;

    private final byte[] file = file();
    private final double[] room = new double[CHANNELS];

    /** Thread time of the three ways, and the bytes each went over. */
    @State(Scope.Thread)
    @AuxCounters(AuxCounters.Type.EVENTS)
    public static class Ways {
        public long parserNanos;
        public long readerToSpectraNanos;
        public long bareLoopNanos;
        public long bytes;
    }

    private static byte[] file() {
        SplittableRandom random = new SplittableRandom(14976);
        List<ExperimentBlock> blocks = new ArrayList<>();
        for (int b = 0; b < BLOCKS; b++) {
            double[] counts = new double[CHANNELS];
            double[] transmission = new double[CHANNELS];
            for (int i = 0; i < CHANNELS; i++) {
                counts[i] = random.nextInt(1_000, 200_000);
                transmission[i] = 0.5 + Math.rint(random.nextDouble() * 1e6) / 1e6;
            }
            var block = ExperimentBlock.xps("block " + b, "invented")
                    .source("Al monochromated", 1486.6, OptionalDouble.of(150))
                    .passEnergyEv(20)
                    .region("C", "1s")
                    .bindingAxis(1200, -0.5)
                    .pulseCounting(0.1, 4, OptionalDouble.empty())
                    .counts(counts);
            if (b % 2 == 1) block.variable("transmission", "d", transmission);
            blocks.add(block.build());
        }
        ExperimentHeader header = ExperimentHeader.norm("invented", "", "", "", List.of());
        return Iso14976Writer.text(new Experiment(header, blocks)).getBytes(StandardCharsets.UTF_8);
    }

    @Benchmark
    public void turns(Ways ways, Blackhole sink) throws ReadException {
        long start = Times.now();
        bareLoop(sink);
        long looped = Times.now();
        parser(sink);
        long parsed = Times.now();
        readerToSpectra(sink);
        long read = Times.now();
        ways.bareLoopNanos += looped - start;
        ways.parserNanos += parsed - looped;
        ways.readerToSpectraNanos += read - parsed;
        ways.bytes += file.length;
    }

    /** Every line is tried as a number; one that is none, of which the headers have a few, is passed over. */
    private void bareLoop(Blackhole sink) {
        int n = 0;
        int start = 0;
        for (int i = 0; i < file.length; i++) {
            if (file[i] != '\n') continue;
            double value = NumberText.parse(file, start, i);
            start = i + 1;
            if (Double.isNaN(value)) continue;
            room[n] = value;
            n = n + 1 == room.length ? 0 : n + 1;
        }
        sink.consume(room);
    }

    private Iso14976Parser open() throws ReadException {
        return new Iso14976Parser("bench", new ByteArrayInputStream(file), file.length, ReadLimits.DEFAULT);
    }

    private void parser(Blackhole sink) throws ReadException {
        Iso14976Parser parser = open();
        for (Optional<ExperimentBlock> b = parser.next(); b.isPresent(); b = parser.next()) sink.consume(b.get());
    }

    private void readerToSpectra(Blackhole sink) throws ReadException {
        Iso14976Parser parser = open();
        BlockSpectra spectra = new BlockSpectra(parser.header(), new Warnings("bench"));
        int number = 0;
        for (Optional<ExperimentBlock> b = parser.next(); b.isPresent(); b = parser.next()) {
            sink.consume(spectra.convert(b.get(), ++number, parser.blockLine()));
        }
    }
}
