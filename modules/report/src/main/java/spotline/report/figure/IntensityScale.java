package spotline.report.figure;

import spotline.spectra.BindingScan;

/**
 * The intensity axis of a figure: in thousands where the numbers would be long.
 *
 * @param divisor 1 or 1000
 * @param label of the axis
 */
public record IntensityScale(double divisor, String label) {
    private static final double LONG = 9999;

    public static IntensityScale of(BindingScan scan) {
        double highest = 0;
        for (int i = 0; i < scan.channels(); i++) highest = Math.max(highest, scan.counts(i));
        String what = scan.countsKnown() ? "Counts" : "Intensity, file's unit";
        return upTo(highest, what);
    }

    public static IntensityScale upTo(double highest, String what) {
        return highest > LONG ? new IntensityScale(1000, what + " / 1000") : new IntensityScale(1, what);
    }

    public double[] of(double[] values) {
        double[] scaled = values.clone();
        if (divisor != 1) for (int i = 0; i < scaled.length; i++) scaled[i] /= divisor;
        return scaled;
    }
}
