package spotline.bench;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import spotline.core.Work;
import spotline.reference.ReferenceData;
import spotline.report.html.ReportPage;
import spotline.report.paper.PagePdf;
import spotline.report.print.Typeface;
import spotline.run.HolderRun;
import spotline.run.HolderRunLoader;
import spotline.run.RunPipeline;
import spotline.run.RunResult;
import spotline.run.findings.RuleBook;

/**
 * The full report of a holder of 20 spots, made once in a fresh JVM: bars of 3 s and 10 MB. Run as {@code java -cp
 * modules/bench/target/... spotline.bench.ReportBench demo-spectra}; the spots are those of the demonstration, over again.
 */
public final class ReportBench {
    private static final int SPOTS = 20;

    private ReportBench() {}

    public static void main(String[] args) throws Exception {
        Path folder = Files.createTempDirectory("spotline-report-bench");
        try {
            RunResult result = treated(Path.of(args.length > 0 ? args[0] : "demo-spectra"), folder);
            ThreadMXBean threads = ManagementFactory.getThreadMXBean();
            long cpu = threads.getCurrentThreadCpuTime();
            long start = System.nanoTime();
            byte[] html = ReportPage.of(result);
            double htmlSeconds = (System.nanoTime() - start) / 1e9;
            double htmlCpu = (threads.getCurrentThreadCpuTime() - cpu) / 1e9;
            byte[] pdf = PagePdf.of(html, new Typeface(), Optional.empty());
            double seconds = (System.nanoTime() - start) / 1e9;
            double allCpu = (threads.getCurrentThreadCpuTime() - cpu) / 1e9;
            System.out.printf(
                    Locale.ROOT,
                    "%d spots: report.html %.2f s (processor %.2f s), %.2f MB; with report.pdf %.2f s (%.2f s), %.2f MB%n",
                    result.spots().size(),
                    htmlSeconds,
                    htmlCpu,
                    html.length / 1e6,
                    seconds,
                    allCpu,
                    pdf.length / 1e6);
        } finally {
            try (Stream<Path> files = Files.list(folder)) {
                for (Path file : files.toList()) Files.delete(file);
            }
            Files.delete(folder);
        }
    }

    private static RunResult treated(Path demo, Path folder) throws Exception {
        try (Stream<Path> files = Files.list(demo)) {
            for (Path file : files.filter(f -> f.toString().endsWith(".txt")).toList()) {
                Files.copy(file, folder.resolve(file.getFileName()));
            }
        }
        Path holder = folder.resolve("holder.json");
        Files.writeString(holder, repeated(demo.resolve("footbridge-bearing.json")));
        ReferenceData reference = ReferenceData.shipped();
        HolderRun run = new HolderRunLoader(reference).load(holder, Optional.empty(), 1, Work.UNWATCHED);
        return new RunPipeline(reference, "bench", RuleBook.standard()).treat(run, 2, Work.UNWATCHED);
    }

    private static String repeated(Path holder) throws IOException {
        ObjectNode root = (ObjectNode) new ObjectMapper().readTree(holder.toFile());
        ArrayNode spots = (ArrayNode) root.get("spots");
        List<ObjectNode> given = new ArrayList<>();
        spots.forEach(spot -> given.add((ObjectNode) spot));
        for (int i = given.size(); i < SPOTS; i++) {
            ObjectNode again = given.get(i % given.size()).deepCopy();
            again.put("id", "r" + (i + 1));
            spots.add(again);
        }
        return root.toString();
    }
}
