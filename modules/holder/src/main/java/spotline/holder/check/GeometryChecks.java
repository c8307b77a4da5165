package spotline.holder.check;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import spotline.core.Decimal;
import spotline.core.Finding;
import spotline.holder.HolderPlan;
import spotline.holder.HolderTemplate;
import spotline.holder.HolderTemplate.HeightWindow;
import spotline.holder.HolderTemplate.KeepOut;
import spotline.holder.Shapes;
import spotline.holder.Specimen;
import spotline.holder.Spot;

/** Checks of where things lie. A specimen of unknown outline or position takes part in none of them. */
final class GeometryChecks {
    /** Shared area below this is rounding, mm2. */
    private static final double ROUNDING_MM2 = 1e-6;

    private final HolderPlan plan;
    private final Optional<HolderTemplate> holder;
    private final PlanCheckSettings settings;
    private final Map<Specimen, Polygon> footprints = new LinkedHashMap<>();

    GeometryChecks(HolderPlan plan, Optional<HolderTemplate> holder, PlanCheckSettings settings) {
        this.plan = plan;
        this.holder = holder;
        this.settings = settings;
        for (Specimen specimen : plan.specimens()) {
            Shapes.footprint(specimen).ifPresent(shape -> footprints.put(specimen, shape));
        }
    }

    List<Finding> findings() {
        List<Finding> findings = new ArrayList<>();
        holder.ifPresent(template -> {
            findings.addAll(edges(template));
            findings.addAll(keepOuts(template));
            findings.addAll(thickness(template));
            findings.addAll(heights(template));
        });
        findings.addAll(spots());
        findings.addAll(overlaps());
        return findings;
    }

    /** A specimen over the edge is beyond the usable area as well; only the graver of the two is told. */
    private List<Finding> edges(HolderTemplate template) {
        List<Finding> over = new ArrayList<>();
        List<Finding> beyondUsable = new ArrayList<>();
        Polygon outline = Shapes.polygon(template.outline());
        footprints.forEach((specimen, shape) -> {
            List<Reach> reaches = Reach.beyond(shape, outline, settings.overhangLimitMm());
            if (!reaches.isEmpty()) {
                String limit = settings.overhangLimitMm() > 0
                        ? " The limit is " + Reach.millimetres(settings.overhangLimitMm()) + "."
                        : "";
                over.add(Named.finding(
                        plan,
                        specimen,
                        PlanRule.HOLDER_OVERHANG,
                        Named.capital(specimen) + " overhangs the holder " + Reach.text(reaches) + "." + limit));
            } else if (!template.usable().isEmpty()) {
                Polygon usable = Shapes.polygon(template.usable());
                List<Reach> outside = Reach.beyond(shape, usable, settings.usableLimitMm());
                if (!outside.isEmpty()) {
                    beyondUsable.add(Named.finding(
                            plan,
                            specimen,
                            PlanRule.OUTSIDE_USABLE_AREA,
                            Named.capital(specimen) + " reaches beyond the usable area " + Reach.text(outside) + "."));
                }
            }
        });
        over.addAll(beyondUsable);
        return over;
    }

    private List<Finding> keepOuts(HolderTemplate template) {
        List<Finding> findings = new ArrayList<>();
        footprints.forEach((specimen, shape) -> {
            for (KeepOut area : template.keepOuts()) {
                double shared = shared(shape, Shapes.polygon(area.outline()));
                if (shared > settings.overlapLimitMm2() + ROUNDING_MM2) {
                    findings.add(Named.finding(
                            plan,
                            specimen,
                            PlanRule.KEEP_OUT,
                            Named.capital(specimen) + " covers " + squareMillimetres(shared)
                                    + " of the area kept free for the " + area.name() + "."));
                }
            }
        });
        return findings;
    }

    private List<Finding> thickness(HolderTemplate template) {
        List<Finding> findings = new ArrayList<>();
        if (template.maxThicknessMm().isEmpty()) return findings;
        double limit = template.maxThicknessMm().getAsDouble();
        for (Specimen specimen : plan.specimens()) {
            if (specimen.thicknessMm().isPresent()
                    && specimen.thicknessMm().getAsDouble() > limit + Reach.ROUNDING_MM) {
                findings.add(Named.finding(
                        plan,
                        specimen,
                        PlanRule.SPECIMEN_THICKNESS,
                        Named.capital(specimen) + " is "
                                + Decimal.significant(specimen.thicknessMm().getAsDouble(), 3)
                                + " mm thick; the holder allows " + Decimal.significant(limit, 3) + " mm."));
            }
        }
        return findings;
    }

    private List<Finding> heights(HolderTemplate template) {
        List<Finding> findings = new ArrayList<>();
        if (template.heightWindow().isEmpty()) return findings;
        HeightWindow window = template.heightWindow().get();
        for (Spot spot : plan.spots()) {
            if (spot.zMm().isEmpty()) continue;
            double z = spot.zMm().getAsDouble();
            if (z < window.low() - Reach.ROUNDING_MM || z > window.high() + Reach.ROUNDING_MM) {
                findings.add(PlanRule.SPOT_HEIGHT
                        .finding("Spot " + spot.id() + " lies " + Decimal.significant(z, 3)
                                + " mm from the reference height; the holder's window is "
                                + Decimal.significant(window.low(), 3) + " to " + Decimal.significant(window.high(), 3)
                                + " mm.")
                        .at(spot.id(), spot.sampleName()));
            }
        }
        return findings;
    }

    private List<Finding> spots() {
        List<Finding> beside = new ArrayList<>();
        List<Finding> offHolder = new ArrayList<>();
        for (Spot spot : plan.spots()) {
            if (spot.position().isEmpty()) continue;
            Geometry point = Shapes.point(spot.position().get());
            Polygon shape = footprints.get(spot.specimen());
            if (shape != null) {
                double distance = shape.distance(point);
                if (distance > settings.offSpecimenLimitMm() + Reach.ROUNDING_MM) {
                    beside.add(PlanRule.SPOT_OFF_SPECIMEN
                            .finding("Spot " + spot.id() + " lies " + Reach.millimetres(distance) + " beside "
                                    + spot.specimen().label() + ".")
                            .at(spot.id(), spot.sampleName()));
                }
            } else if (holder.isPresent()) {
                double distance = Shapes.polygon(holder.get().outline()).distance(point);
                if (distance > Reach.ROUNDING_MM) {
                    offHolder.add(PlanRule.SPOT_OFF_HOLDER
                            .finding("Spot " + spot.id() + " lies " + Reach.millimetres(distance)
                                    + " beside the holder.")
                            .at(spot.id(), spot.sampleName()));
                }
            }
        }
        beside.addAll(offHolder);
        return beside;
    }

    private List<Finding> overlaps() {
        List<Finding> findings = new ArrayList<>();
        List<Map.Entry<Specimen, Polygon>> shapes = List.copyOf(footprints.entrySet());
        for (int i = 0; i < shapes.size(); i++) {
            for (int j = i + 1; j < shapes.size(); j++) {
                Polygon a = shapes.get(i).getValue();
                Polygon b = shapes.get(j).getValue();
                if (!a.getEnvelopeInternal().intersects(b.getEnvelopeInternal())) continue;
                double shared = shared(a, b);
                if (shared <= settings.overlapLimitMm2() + ROUNDING_MM2) continue;
                Specimen first = shapes.get(i).getKey();
                Specimen second = shapes.get(j).getKey();
                findings.add(Named.finding(
                        plan,
                        first,
                        PlanRule.SPECIMEN_OVERLAP,
                        Named.capital(first) + " and " + second.label() + " overlap over " + squareMillimetres(shared)
                                + "."
                                + (samePiece(first, second)
                                        ? " If they are one piece, declare it once and let both spots name it."
                                        : "")));
            }
        }
        return findings;
    }

    private static boolean samePiece(Specimen first, Specimen second) {
        return first.ownSpot().isPresent()
                && second.ownSpot().isPresent()
                && first.sample().isPresent()
                && first.sample().equals(second.sample());
    }

    private static double shared(Polygon a, Polygon b) {
        return OverlayNGRobust.overlay(a, b, OverlayNG.INTERSECTION).getArea();
    }

    private static String squareMillimetres(double area) {
        return (area < 0.05 ? Decimal.significant(area, 1) : Decimal.fixed(area, 1)) + " mm2";
    }

    /** One note for all that the geometry checks could not look at; none when they saw everything. */
    static List<Finding> unchecked(HolderPlan plan, Optional<HolderTemplate> holder) {
        List<String> unknown = plan.specimens().stream()
                .filter(specimen -> Shapes.footprint(specimen).isEmpty())
                .map(Specimen::label)
                .toList();
        if (holder.isEmpty() && !plan.specimens().isEmpty()) {
            return List.of(PlanRule.GEOMETRY_UNCHECKED.finding(
                    "The plan names no holder: overhang, usable area and heights were not checked."));
        }
        if (unknown.isEmpty()) return List.of();
        return List.of(PlanRule.GEOMETRY_UNCHECKED.finding("Overhang and overlap were not checked, since outline or "
                + "position is not declared, for " + String.join(", ", unknown) + "."));
    }
}
