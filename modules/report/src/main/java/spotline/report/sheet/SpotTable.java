package spotline.report.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import spotline.core.Decimal;
import spotline.holder.ElectricalState;
import spotline.holder.HolderPlan;
import spotline.holder.Mount;
import spotline.holder.MountMethod;
import spotline.holder.Sample;
import spotline.holder.Sensitivity;
import spotline.holder.Spot;
import spotline.holder.SpotPurpose;
import spotline.holder.Word;

/** What lies at each spot, whose it is and how it is mounted. */
final class SpotTable {
    private final HolderPlan plan;

    SpotTable(HolderPlan plan) {
        this.plan = plan;
    }

    void write(Flow flow) {
        flow.heading("Spots", 20);
        Grid grid = new Grid(
                flow,
                List.of(
                        new Grid.Column("Spot", 15),
                        new Grid.Column("x, y, z (mm)", 27),
                        new Grid.Column("Specimen and sample", 43),
                        new Grid.Column("Owner", 25),
                        new Grid.Column("Mount", 42),
                        new Grid.Column("To mind", 29),
                        new Grid.Column("", 5)));
        grid.head();
        for (Spot spot : plan.spots()) {
            grid.row(List.of(
                    List.of(spot.id()),
                    List.of(position(spot)),
                    specimen(spot),
                    List.of(spot.sample().flatMap(Sample::owner).orElse("not known")),
                    mount(spot.mount()),
                    toMind(spot),
                    List.of()));
        }
    }

    private static String position(Spot spot) {
        if (spot.position().isEmpty()) return "not known";
        String height = spot.zMm().isPresent() ? ", " + mm(spot.zMm()) : "";
        return mm(spot.xMm()) + ", " + mm(spot.yMm()) + height;
    }

    private static String mm(OptionalDouble value) {
        return Decimal.fixed(value.orElseThrow(), 1);
    }

    private static List<String> specimen(Spot spot) {
        List<String> lines = new ArrayList<>();
        if (spot.specimen().ownSpot().isEmpty())
            lines.add("Specimen " + spot.specimen().id());
        spot.sample()
                .ifPresentOrElse(
                        sample -> lines.add(sample.name()
                                + sample.id().map(id -> " (" + id + ")").orElse("")),
                        () -> lines.add(spot.purpose() == SpotPurpose.BLANK ? "the mount alone" : "sample not known"));
        return lines;
    }

    private static List<String> mount(Mount mount) {
        List<String> lines = new ArrayList<>();
        lines.add(mount.method() == MountMethod.UNKNOWN ? "method not known" : words(mount.method()));
        String state = mount.electricalState() == ElectricalState.UNKNOWN
                ? "electrical state not known"
                : words(mount.electricalState());
        lines.add(state
                + (mount.resistanceOhm().isPresent()
                        ? ", " + Decimal.significant(mount.resistanceOhm().getAsDouble(), 2) + " ohm"
                        : "")
                + (mount.strapped() ? ", with a strap" : ""));
        if (!mount.materials().isEmpty()) lines.add(String.join(", ", mount.materials()));
        return lines;
    }

    private static String words(Word word) {
        return word.word().replace('-', ' ');
    }

    private static List<String> toMind(Spot spot) {
        List<String> lines = new ArrayList<>();
        if (spot.purpose() != SpotPurpose.SAMPLE) lines.add(words(spot.purpose()));
        spot.mount().seat().ifPresent(seat -> lines.add("seat " + seat));
        if (spot.tiltDeg().orElse(0) != 0) {
            lines.add("tilt " + Decimal.significant(spot.tiltDeg().getAsDouble(), 3) + "°");
        }
        if (spot.sputtered())
            lines.add("ion gun, " + spot.etchCycles() + (spot.etchCycles() == 1 ? " step" : " steps"));
        spot.sample().ifPresent(sample -> {
            if (!sample.sensitivities().isEmpty()) {
                lines.add("keep from " + listed(sample.sensitivities()));
            }
        });
        return lines;
    }

    private static String listed(List<Sensitivity> sensitivities) {
        return String.join(", ", sensitivities.stream().map(SpotTable::words).toList());
    }
}
