package spotline.report.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
import spotline.report.print.Flow;
import spotline.report.print.Grid;

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
                        new Grid.Column("x, y, z (mm)", 26),
                        new Grid.Column("Specimen and sample", 45),
                        new Grid.Column("Owner", 25),
                        new Grid.Column("Mount", 46),
                        new Grid.Column("To mind", 29),
                        new Grid.Column("Placed", 12, true)));
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
        boolean own = spot.specimen().ownSpot().isPresent();
        return List.of(own ? sample(spot) : spot.specimen().id() + ": " + sample(spot));
    }

    private static String sample(Spot spot) {
        Optional<Sample> sample = spot.sample();
        if (sample.isEmpty()) return spot.purpose() == SpotPurpose.BLANK ? "the mount alone" : "sample not known";
        return sample.get().name()
                + sample.get().id().map(id -> " (" + id + ")").orElse("");
    }

    private static List<String> mount(Mount mount) {
        String method = mount.method() == MountMethod.UNKNOWN ? "method not known" : words(mount.method());
        StringBuilder how = new StringBuilder(method).append(", ");
        how.append(
                mount.electricalState() == ElectricalState.UNKNOWN
                        ? "electrical state not known"
                        : words(mount.electricalState()));
        if (mount.resistanceOhm().isPresent()) {
            how.append(", ")
                    .append(Decimal.significant(mount.resistanceOhm().getAsDouble(), 2))
                    .append(" ohm");
        }
        if (mount.strapped()) how.append(", with a strap");
        List<String> materials = mount.materials().stream()
                .filter(material -> !material.equalsIgnoreCase(method))
                .toList();
        return materials.isEmpty() ? List.of(how.toString()) : List.of(how.toString(), String.join(", ", materials));
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
        return String.join(", ", sensitivities.stream().map(Sensitivity::word).toList());
    }
}
