package spotline.report.figure;

import java.awt.Graphics2D;
import java.awt.geom.GeneralPath;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.CrosshairState;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYItemRendererState;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.data.xy.XYDataset;

/**
 * Draws each series as one path, in one go. The library asks plot and axes for every point anew, twice, which on a first
 * report costs more in the compiler than in drawing. Energies run across and intensities upwards; every value is finite.
 */
final class Curves extends XYLineAndShapeRenderer {
    private static final long serialVersionUID = 1L;

    Curves() {
        super(true, false);
    }

    @Override
    public void drawItem(
            Graphics2D graphics,
            XYItemRendererState state,
            Rectangle2D area,
            PlotRenderingInfo info,
            XYPlot plot,
            ValueAxis across,
            ValueAxis up,
            XYDataset data,
            int series,
            int item,
            CrosshairState crosshair,
            int pass) {
        if (isLinePass(pass)) {
            if (item != state.getFirstItemIndex() || !getItemLineVisible(series, item)) return;
            RectangleEdge below = plot.getDomainAxisEdge();
            RectangleEdge beside = plot.getRangeAxisEdge();
            GeneralPath path = new GeneralPath();
            for (int i = item; i <= state.getLastItemIndex(); i++) {
                float x = (float) across.valueToJava2D(data.getXValue(series, i), area, below);
                float y = (float) up.valueToJava2D(data.getYValue(series, i), area, beside);
                if (i == item) path.moveTo(x, y);
                else path.lineTo(x, y);
            }
            drawFirstPassShape(graphics, pass, series, item, path);
        } else if (getItemShapeVisible(series, item)) {
            super.drawItem(graphics, state, area, info, plot, across, up, data, series, item, crosshair, pass);
        }
    }
}
