package spotline.demo;

import java.util.ArrayList;
import java.util.List;
import spotline.reference.Element;
import spotline.reference.Elements;
import spotline.reference.Line;
import spotline.reference.LineData;
import spotline.reference.Material;
import spotline.reference.MeanFreePath;
import spotline.reference.NaturalWidth;
import spotline.reference.ReferenceData;

/** Levels and mean free paths from the tables that ship with the program, for one photon energy. */
public record ReferenceAtoms(ReferenceData data, double photonEnergyEv) implements AtomicData {
    /** Slower electrons are outside the range of the mean free path formula. */
    private static final double SLOWEST_EV = 60;

    /** Width of a level that no table has, eV. */
    private static final double UNKNOWN_WIDTH_EV = 0.1;

    public ReferenceAtoms(double photonEnergyEv) {
        this(ReferenceData.shipped(), photonEnergyEv);
    }

    @Override
    public List<Level> levels(String symbol) {
        Element element = Elements.bySymbol(symbol)
                .orElseThrow(() -> new IllegalArgumentException("no element has the symbol " + symbol));
        List<Level> levels = new ArrayList<>();
        for (LineData shell : data.lines(element, photonEnergyEv)) {
            if (shell.kineticEv() < SLOWEST_EV) continue;
            double members = shell.members().stream().mapToDouble(this::sigma).sum();
            for (Line member : shell.members()) {
                double share = members > 0
                        ? sigma(member) / members
                        : 1.0 / shell.members().size();
                data.bindingEnergy(member)
                        .ifPresent(energy -> levels.add(new Level(
                                shell.line().orbital().toString(),
                                member.orbital().toString(),
                                energy.valueEv(),
                                share * shell.relativeCrossSection(),
                                shell.relativeCrossSection(),
                                data.naturalWidth(member)
                                        .map(NaturalWidth::fwhmEv)
                                        .orElse(UNKNOWN_WIDTH_EV))));
            }
        }
        return List.copyOf(levels);
    }

    private double sigma(Line member) {
        return data.crossSection(member, photonEnergyEv).orElse(0);
    }

    /** TPP-2M (Tanuma, Powell, Penn 1994). */
    @Override
    public double inelasticMeanFreePathNm(Medium medium, double kineticEv) {
        Material material = new Material(
                "medium", medium.densityGCm3(), medium.formulaMass(), medium.valenceElectrons(), medium.bandGapEv());
        return MeanFreePath.tpp2m(material, kineticEv);
    }
}
