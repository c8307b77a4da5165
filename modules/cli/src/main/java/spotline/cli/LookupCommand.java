package spotline.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import spotline.core.Decimal;
import spotline.reference.AugerLine;
import spotline.reference.ChemicalState;
import spotline.reference.Doublet;
import spotline.reference.Element;
import spotline.reference.Elements;
import spotline.reference.Line;
import spotline.reference.LineData;
import spotline.reference.ReferenceData;
import spotline.reference.XraySource;

@Command(
        name = "lookup",
        mixinStandardHelpOptions = true,
        description = "Prints reference data of an element or a line, with their sources.",
        footer = {"", "Example: spotline lookup \"Ti 2p\" --photon-energy 1253.6"})
final class LookupCommand implements Callable<Integer> {
    private final CommandEnvironment environment;
    private final ReferenceData reference = ReferenceData.shipped();

    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Parameters(paramLabel = "WHAT", arity = "1..*", description = "an element (Ti) or a line (\"Ti 2p\")")
    private List<String> what = List.of();

    @Option(
            names = "--photon-energy",
            paramLabel = "EV",
            description = "photon energy in eV or a source such as \"Al Ka\" (default: ${DEFAULT-VALUE})")
    private String photonEnergy = "1486.6";

    @Option(names = "--debug", description = "show stack traces")
    private boolean debug;

    LookupCommand(CommandEnvironment environment) {
        this.environment = environment;
    }

    @Override
    public Integer call() {
        String asked = String.join(" ", what).strip();
        double hv = photons();
        Optional<Element> element = Elements.bySymbol(asked);
        Optional<Line> line = Line.find(asked);
        if (element.isPresent()) {
            element(element.get(), hv);
        } else if (line.isPresent()) {
            line(line.get(), hv);
        } else {
            throw fault("\"" + asked + "\" is neither an element nor a line, expected one like Ti or \"Ti 2p\"");
        }
        return 0;
    }

    private double photons() {
        for (boolean mono : new boolean[] {false, true}) {
            Optional<XraySource> source = reference.source(photonEnergy, mono);
            if (source.isPresent()) return source.get().photonEnergyEv();
        }
        try {
            double value = Double.parseDouble(photonEnergy);
            if (value > 0 && value < 1e6) return value;
        } catch (NumberFormatException e) {
            // Said below, in the same words as a number out of range.
        }
        throw fault("\"" + photonEnergy + "\" is no photon energy, expected eV or a source such as \"Al Ka\"");
    }

    private ParameterException fault(String message) {
        return new ParameterException(new CommandLine(spec), message);
    }

    private void element(Element element, double hv) {
        PrintWriter out = environment.out();
        out.println(element.symbol() + ", " + element.name() + ", Z = " + element.z() + ", atomic weight "
                + Decimal.text(element.atomicWeight()) + " g/mol");
        out.println("Photon energy " + Decimal.text(hv) + " eV; cross sections relative to C 1s at the same energy.");
        Optional<Line> main = reference.mainLine(element, hv);
        List<LineData> lines = reference.lines(element, hv);
        if (lines.isEmpty()) {
            out.println("No cross section is tabulated for this element at this photon energy.");
        } else {
            TextTable table = new TextTable("line", "binding eV", "kinetic eV", "cross section", "width eV", "remark");
            for (LineData data : lines) {
                String remark = main.filter(data.line()::equals).isPresent() ? "main line" : "";
                if (data.nearThreshold()) remark = (remark + " near threshold").strip();
                table.row(
                        data.line().toString(),
                        Decimal.fixed(data.energy().valueEv(), 1),
                        Decimal.fixed(data.kineticEv(), 1),
                        Decimal.significant(data.relativeCrossSection(), 4),
                        data.naturalWidthEv().isPresent()
                                ? Decimal.significant(data.naturalWidthEv().getAsDouble(), 2)
                                : "?",
                        remark);
            }
            table.print(out);
            reference.mainLineReason(element, hv).ifPresent(reason -> out.println("Main line: " + reason + "."));
        }
        List<AugerLine> auger = reference.augerLines(element);
        if (auger.isEmpty()) return;
        TextTable table = new TextTable("Auger line", "kinetic eV", "at binding eV", "note");
        for (AugerLine a : auger) {
            table.row(
                    a.toString(), Decimal.fixed(a.kineticEv(), 1), Decimal.fixed(a.apparentBindingEv(hv), 1), a.note());
        }
        table.print(out);
    }

    private void line(Line line, double hv) {
        PrintWriter out = environment.out();
        out.println(line + " at a photon energy of " + Decimal.text(hv) + " eV");
        reference
                .bindingEnergy(line)
                .ifPresentOrElse(
                        e -> out.println(String.format(
                                Locale.ROOT,
                                "binding energy    %.2f eV (spread %.2f eV): %s",
                                e.valueEv(),
                                e.spreadEv(),
                                e.source())),
                        () -> out.println("binding energy    not tabulated"));
        reference
                .naturalWidth(line)
                .ifPresent(w -> out.println("natural width     " + Decimal.text(w.fwhmEv()) + " eV: " + w.source()));
        OptionalDouble sigma = reference.crossSection(line, hv);
        out.println("cross section     "
                + (sigma.isPresent()
                        ? Decimal.significant(sigma.getAsDouble(), 5) + " relative to C 1s: EPDL2017"
                        : "not tabulated"));
        OptionalDouble beta = reference.asymmetry(line, hv);
        if (beta.isPresent()) out.println("asymmetry beta    " + Decimal.significant(beta.getAsDouble(), 4));
        Optional<Doublet> doublet = reference.doublet(line, hv);
        doublet.ifPresent(d -> out.println("doublet           splitting " + Decimal.text(d.splittingEv())
                + " eV, area ratio " + Decimal.significant(d.areaRatioLowToHigh(), 4) + ": " + d.source()));
        List<ChemicalState> states = reference.chemicalStates(line);
        if (states.isEmpty()) return;
        TextTable table = new TextTable("state", "binding eV", "half range eV", "source");
        for (ChemicalState s : states) {
            table.row(
                    s.state() + (s.satellite() ? " (satellite)" : ""),
                    Decimal.fixed(s.valueEv(), 2),
                    Decimal.fixed(s.halfRangeEv(), 2),
                    s.source());
        }
        table.print(out);
    }
}
