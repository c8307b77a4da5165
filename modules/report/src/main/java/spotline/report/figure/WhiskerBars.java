package spotline.report.figure;

import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.axis.CategoryAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.CategoryPlot;
import org.jfree.chart.renderer.category.BarRenderer;
import org.jfree.chart.renderer.category.CategoryItemRendererState;
import org.jfree.chart.renderer.category.StandardBarPainter;
import org.jfree.data.category.CategoryDataset;
import org.jfree.data.statistics.StatisticalCategoryDataset;

/** Upright bars with a whisker each that is never wider than its bar. */
final class WhiskerBars extends BarRenderer {
    private static final long serialVersionUID = 1;

    WhiskerBars() {
        setBarPainter(new StandardBarPainter());
        setShadowVisible(false);
        setDrawBarOutline(false);
        setItemMargin(0.05);
    }

    @Override
    public void drawItem(
            Graphics2D graphics,
            CategoryItemRendererState state,
            Rectangle2D area,
            CategoryPlot plot,
            CategoryAxis names,
            ValueAxis values,
            CategoryDataset data,
            int row,
            int column,
            int pass) {
        Number value = data.getValue(row, column);
        if (value == null || Double.isNaN(value.doubleValue())) return;
        super.drawItem(graphics, state, area, plot, names, values, data, row, column, pass);
        Number u = data instanceof StatisticalCategoryDataset known ? known.getStdDevValue(row, column) : null;
        if (u == null || !(u.doubleValue() > 0)) return;
        double left = calculateBarW0(plot, plot.getOrientation(), area, names, state, row, column);
        double width = state.getBarWidth();
        double x = left + 0.5 * width;
        double half = Math.min(0.4 * width, 3);
        graphics.setPaint(PrintPalette.AXIS);
        graphics.setStroke(PrintPlots.line(0.6));
        double low = values.valueToJava2D(value.doubleValue() - u.doubleValue(), area, plot.getRangeAxisEdge());
        double high = values.valueToJava2D(value.doubleValue() + u.doubleValue(), area, plot.getRangeAxisEdge());
        graphics.draw(new Line2D.Double(x, low, x, high));
        graphics.draw(new Line2D.Double(x - half, low, x + half, low));
        graphics.draw(new Line2D.Double(x - half, high, x + half, high));
    }
}
