package spotline.holder.check;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Polygon;
import spotline.holder.Clip;
import spotline.holder.HolderPlan;
import spotline.holder.HolderTemplate;
import spotline.holder.HolderTemplate.KeepOut;
import spotline.holder.HolderTemplate.StubSeat;
import spotline.holder.PointMm;
import spotline.holder.Shapes;
import spotline.holder.Specimen;

/** Everything that has a place on the holder, as shapes. What has no known outline or position is in none of the lists. */
final class Layout {
    /** What a specimen, a part on it or a keep-out area covers. */
    record Piece(Specimen specimen, Polygon shape) {}

    /** What a part on a specimen covers. */
    record Part(Specimen specimen, String label, Polygon shape, boolean onTop) {}

    /** An area of the holder that must stay free. */
    record Kept(String name, Polygon shape) {}

    private final HolderPlan plan;
    private final Optional<HolderTemplate> holder;
    private final List<Piece> pieces = new ArrayList<>();
    private final List<Part> parts = new ArrayList<>();
    private final List<Kept> kept = new ArrayList<>();
    private final Map<String, Polygon> footprints = new LinkedHashMap<>();
    private final Optional<Polygon> outline;

    Layout(HolderPlan plan, Optional<HolderTemplate> holder) {
        this.plan = plan;
        this.holder = holder;
        for (Specimen specimen : plan.specimens()) {
            Optional<Polygon> shape = Shapes.footprint(specimen);
            if (shape.isPresent()) {
                pieces.add(new Piece(specimen, shape.get()));
                footprints.put(specimen.id(), shape.get());
            }
            addParts(specimen);
        }
        if (holder.isPresent()) {
            for (KeepOut area : holder.get().keepOuts()) {
                kept.add(new Kept(area.name(), Shapes.polygon(area.outline())));
            }
            outline = Optional.of(Shapes.polygon(holder.get().outline()));
        } else {
            outline = Optional.empty();
        }
    }

    private void addParts(Specimen specimen) {
        Optional<Polygon> patch = Shapes.tapePatch(specimen);
        if (patch.isPresent()) parts.add(new Part(specimen, "tape patch", patch.get(), false));
        for (Clip clip : specimen.mount().clips()) {
            Optional<Polygon> shape = Shapes.clip(clip);
            if (shape.isPresent()) parts.add(new Part(specimen, clip.label(), shape.get(), true));
        }
    }

    HolderPlan plan() {
        return plan;
    }

    Optional<HolderTemplate> holder() {
        return holder;
    }

    Optional<Polygon> outline() {
        return outline;
    }

    List<Piece> pieces() {
        return pieces;
    }

    List<Part> parts() {
        return parts;
    }

    List<Kept> kept() {
        return kept;
    }

    Optional<Polygon> footprint(Specimen specimen) {
        return Optional.ofNullable(footprints.get(specimen.id()));
    }

    /** The seat that the record names, else the one over which the specimen's centre lies. */
    Optional<StubSeat> seat(Specimen specimen) {
        if (holder.isEmpty()) return Optional.empty();
        for (StubSeat seat : holder.get().stubSeats()) {
            boolean sits = specimen.mount().seat().isPresent()
                    ? seat.id().equals(specimen.mount().seat().get())
                    : specimen.centre().isPresent()
                            && over(seat, specimen.centre().get());
            if (sits) return Optional.of(seat);
        }
        return Optional.empty();
    }

    private static boolean over(StubSeat seat, PointMm point) {
        return distance(seat.centre(), point) <= seat.diameterMm() / 2;
    }

    /** The left one of two, and of two as far left the lower: whichever the file names first, they are told alike. */
    static Piece first(Piece a, Piece b) {
        PointMm at = a.specimen().centre().orElseThrow();
        PointMm other = b.specimen().centre().orElseThrow();
        boolean left = at.x() != other.x() ? at.x() < other.x() : at.y() <= other.y();
        return left ? a : b;
    }

    static Piece second(Piece a, Piece b) {
        return first(a, b) == a ? b : a;
    }

    static double distance(PointMm a, PointMm b) {
        return Math.hypot(a.x() - b.x(), a.y() - b.y());
    }
}
