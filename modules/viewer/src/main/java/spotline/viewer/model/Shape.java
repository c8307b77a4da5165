package spotline.viewer.model;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Polygon;
import spotline.holder.PointMm;

/** A closed outline in the holder's coordinates, mm. */
public record Shape(List<PointMm> corners) {
    public Shape {
        corners = List.copyOf(corners);
    }

    static Shape of(Polygon polygon) {
        Coordinate[] ring = polygon.getExteriorRing().getCoordinates();
        List<PointMm> corners = new ArrayList<>();
        for (int i = 0; i + 1 < ring.length; i++) corners.add(new PointMm(ring[i].x, ring[i].y));
        return new Shape(corners);
    }
}
