package spotline.analysis.identify;

import java.util.List;
import spotline.reference.XraySatellite;
import spotline.spectra.Transmission;

/**
 * Curves of an element on a grid, for one unit of amount: a line of cross section 1 at 1000 eV has unit area.
 *
 * <p>An offset is what is added to tabulated binding energies to get measured ones: chemical shift and surface charging
 * together.
 *
 * <p>Areas: cross section x (KE/1000)^0.75 x transmission. Units: counts eV per eV, eV.
 */
final class Templates {
    private static final double MEAN_FREE_PATH_EXPONENT = 0.75;
    /** Weaker satellites drown in the losses of whatever lies below them. */
    private static final double FAINTEST_SATELLITE = 0.002;
    /** Bonding broadens shallow levels, eV (common practice, no source). */
    private static final double VALENCE_BROADENING = 2.5;

    private static final double SHALLOW = 27;
    private static final double SLOWEST = 20;
    /** Share of its height that a line's shape may be wrong by, channel by channel (common practice, no source). */
    private static final double MAIN_SHAPE = 0.035;

    private static final double SECOND_SHAPE = 0.08;
    private static final double CLEAN_CARBON = 0.35;
    private static final double CLEAN_OXYGEN = 0.6;
    private static final double IRREGULAR_SHAPE = 0.3;
    /** Estimated Auger energies may be wrong by half of this, eV. */
    private static final double UNLISTED_REACH = 70;

    final SurveyGrid grid;
    final double gaussianEv;
    private final Transmission transmission;
    private final List<XraySatellite> satellites;
    private final Curve.Builder builder;
    /** Transmission at every channel; 0 where electrons are too slow to speak of. */
    private final double[] channelTransmission;

    /** @param satellites of the source; none behind a monochromator */
    Templates(SurveyGrid grid, Transmission transmission, List<XraySatellite> satellites, double gaussianEv) {
        this.grid = grid;
        this.transmission = transmission;
        this.satellites = satellites.stream()
                .filter(s -> s.displacementEv() > 0 && s.relativeHeight() > FAINTEST_SATELLITE)
                .toList();
        this.gaussianEv = gaussianEv;
        this.builder = new Curve.Builder(grid.channels);
        this.channelTransmission = new double[grid.channels];
        for (int i = 0; i < grid.channels; i++) {
            double kinetic = grid.photonEv - grid.energy[i];
            channelTransmission[i] = kinetic < SLOWEST ? 0 : transmission.at(kinetic);
        }
    }

    Templates withWidth(double newGaussianEv) {
        return new Templates(grid, transmission, satellites, newGaussianEv);
    }

    List<XraySatellite> satellites() {
        return satellites;
    }

    /** Area of a line or branch of a cross section at a tabulated energy, 0 too close to the ends of the scale. */
    double area(double crossSection, double bindingEv) {
        double kinetic = grid.photonEv - bindingEv;
        if (kinetic < SLOWEST) return 0;
        return crossSection * Math.pow(kinetic / 1000, MEAN_FREE_PATH_EXPONENT) * transmission.at(kinetic);
    }

    double area(Emitter emitter, AtomLine.Member member) {
        return area(member.crossSection(), member.bindingEv())
                * emitter.factor(grid.photonEv - member.bindingEv(), grid.photonEv);
    }

    double area(Emitter emitter, AugerBranch branch) {
        return area(branch.holes(), grid.photonEv - branch.kineticEv())
                * emitter.factor(branch.kineticEv(), grid.photonEv);
    }

    double area(Emitter emitter, AtomLine line) {
        double sum = 0;
        for (AtomLine.Member m : line.members()) sum += area(emitter, m);
        return sum;
    }

    boolean inside(double bindingEv, double offset) {
        return grid.holds(bindingEv + offset, 2);
    }

    PeakShape shape(AtomLine.Member member) {
        return shape(member, gaussianEv);
    }

    private static PeakShape shape(AtomLine.Member member, double gaussianEv) {
        double gauss = member.bindingEv() < SHALLOW && member.line().orbital().l() < 2
                ? Math.hypot(gaussianEv, VALENCE_BROADENING)
                : gaussianEv;
        return new PeakShape(gauss, Math.min(14, member.widthEv()));
    }

    PeakShape shape(AugerBranch branch) {
        return new PeakShape(Math.hypot(gaussianEv, branch.widthEv()), 0);
    }

    private void put(Emitter emitter, AtomLine line, double offset, double factor) {
        put(emitter, line, offset, factor, gaussianEv);
    }

    private void put(Emitter emitter, AtomLine line, double offset, double factor, double lineGaussianEv) {
        for (AtomLine.Member m : line.members()) {
            double area = area(emitter, m) * factor;
            if (area == 0) continue;
            PeakShape shape = shape(m, lineGaussianEv);
            double centre = m.bindingEv() + offset;
            shape.addTo(builder, grid, centre, area);
            for (XraySatellite s : satellites) {
                shape.addTo(builder, grid, centre - s.displacementEv(), area * s.relativeHeight());
            }
        }
    }

    Curve photo(Emitter emitter, double offset) {
        for (AtomLine line : emitter.atom().lines()) put(emitter, line, offset, 1);
        return builder.build();
    }

    /** Half of what the lines have more with a Gaussian width times a factor than with one over it: no area. */
    Curve broader(Emitter emitter, double offset, double factor) {
        for (AtomLine line : emitter.atom().lines()) {
            put(emitter, line, offset, 0.5, gaussianEv * factor);
            put(emitter, line, offset, -0.5, gaussianEv / factor);
        }
        return builder.build();
    }

    Curve line(Emitter emitter, AtomLine line, double offset) {
        put(emitter, line, offset, 1);
        return builder.build();
    }

    /** All lines together, or none of them when none lies inside. */
    Curve whole(Emitter emitter, double offset) {
        for (AtomLine line : emitter.atom().lines()) put(emitter, line, offset, 1);
        putAuger(emitter, offset);
        return builder.build();
    }

    Curve auger(Emitter emitter, double offset) {
        putAuger(emitter, offset);
        return builder.build();
    }

    /**
     * Adds an element's heights to those of its lines, and to those of structure that is known only roughly: Auger groups,
     * lines that many-electron effects break up.
     *
     * @param lines each line by the share that its shape may be wrong by
     */
    void heights(Emitter emitter, double offset, double amount, double[] lines, double[] groups, double[] unsure) {
        for (AtomLine line : emitter.atom().lines()) {
            put(emitter, line, offset, amount);
            Curve curve = builder.build();
            curve.addTo(unsure, line.main() ? MAIN_SHAPE : line.regular() ? SECOND_SHAPE : IRREGULAR_SHAPE);
            curve.addTo(line.regular() ? lines : groups, line.regular() ? lossy(emitter.atom()) : 1);
        }
        for (AugerBranch b : emitter.atom().auger()) {
            double binding = grid.photonEv - b.kineticEv();
            double area = 0.5 * amount * area(emitter, b);
            PeakShape shape = b.listed() ? shape(b) : new PeakShape(UNLISTED_REACH, 0);
            if (area > 0) shape.addTo(builder, grid, binding + offset, area * shape.fwhmEv / shape(b).fwhmEv);
        }
        builder.build().addTo(groups, 1);
    }

    /** How much of the usual loss structure follows an element's lines: carbon and oxygen are clean for 15 eV. */
    private static double lossy(Atom atom) {
        return switch (atom.symbol()) {
            case "C" -> CLEAN_CARBON;
            case "O" -> CLEAN_OXYGEN;
            default -> 1;
        };
    }

    private void putAuger(Emitter emitter, double offset) {
        for (AugerBranch b : emitter.atom().auger()) {
            double binding = grid.photonEv - b.kineticEv();
            double area = area(emitter, b);
            if (area > 0) shape(b).addTo(builder, grid, binding + offset, area);
        }
    }

    /** Lines repeated by a stray X-ray line: moved by the difference of the photon energies. */
    Curve ghost(List<Atom> atoms, List<Double> amounts, List<Double> offsets, double apparentShiftEv) {
        for (int k = 0; k < atoms.size(); k++) {
            for (AtomLine line : atoms.get(k).lines()) {
                for (AtomLine.Member m : line.members()) {
                    double binding = m.bindingEv() + apparentShiftEv;
                    if (grid.photonEv - binding < 30) continue;
                    double area = area(m.crossSection(), binding) * amounts.get(k);
                    if (area > 0)
                        new PeakShape(gaussianEv * 1.15, m.widthEv() + 0.5)
                                .addTo(builder, grid, binding + offsets.get(k), area);
                }
            }
        }
        return builder.build();
    }

    /** Energy-loss structure a fixed way behind every line: a smear that all lines of the element share. */
    Curve losses(Emitter emitter, double offset, double lossEv, double fwhmEv) {
        putLosses(emitter, offset, lossEv, fwhmEv, 1);
        return builder.build();
    }

    /** The same for the amounts of several elements. */
    Curve losses(List<Member> members, double lossEv, double fwhmEv) {
        for (Member m : members) putLosses(m.emitter(), m.offsetEv(), lossEv, fwhmEv, m.amount());
        return builder.build();
    }

    private void putLosses(Emitter emitter, double offset, double lossEv, double fwhmEv, double amount) {
        PeakShape shape = new PeakShape(Math.hypot(gaussianEv, fwhmEv), 0);
        for (AtomLine line : emitter.atom().lines()) {
            for (AtomLine.Member m : line.members()) {
                shape.addTo(builder, grid, m.bindingEv() + offset + lossEv, amount * area(emitter, m));
            }
        }
    }

    /** A peak of unit area without satellites. */
    Curve bump(PeakShape shape, double centreEv) {
        shape.addTo(builder, grid, centreEv, 1);
        return builder.build();
    }

    /** A peak with the satellites of the source. */
    Curve peak(PeakShape shape, double centreEv, double area) {
        return peaks(shape, new double[] {centreEv}, new double[] {area});
    }

    /** Peaks of one shape with the satellites of the source. */
    Curve peaks(PeakShape shape, double[] centresEv, double[] areas) {
        for (int k = 0; k < centresEv.length; k++) {
            shape.addTo(builder, grid, centresEv[k], areas[k]);
            for (XraySatellite s : satellites) {
                shape.addTo(builder, grid, centresEv[k] - s.displacementEv(), areas[k] * s.relativeHeight());
            }
        }
        return builder.build();
    }

    /** Inelastic tail of all lines and Auger branches. */
    Curve tail(Emitter emitter, double offset) {
        for (AtomLine line : emitter.atom().lines()) {
            for (AtomLine.Member m : line.members()) {
                putTail(m.bindingEv() + offset, area(emitter, m));
            }
        }
        for (AugerBranch b : emitter.atom().auger()) {
            putTail(grid.photonEv - b.kineticEv() + offset, area(emitter, b));
        }
        return builder.build();
    }

    private void putTail(double centre, double area) {
        if (area == 0) return;
        int last = grid.at(centre + LossTail.REACH_EV);
        double share = area / transmission.at(Math.max(SLOWEST, grid.photonEv - centre));
        for (int i = grid.at(centre); i < last; i++) {
            builder.add(i, share * LossTail.at(grid.energy[i] - centre) * channelTransmission[i]);
        }
    }
}
