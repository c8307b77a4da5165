package spotline.spectra;

/** An energy interval that one intensity is taken from: binding energy as measured, eV, both ends included. */
public record Window(double lowEv, double highEv) {
    public Window {
        if (!(lowEv < highEv) || !Double.isFinite(lowEv) || !Double.isFinite(highEv)) {
            throw new IllegalArgumentException(
                    "a window needs a low end below its high end, was " + lowEv + " to " + highEv + " eV");
        }
    }

    public static Window around(double centreEv, double belowEv, double aboveEv) {
        return new Window(centreEv - belowEv, centreEv + aboveEv);
    }

    public boolean contains(double energyEv) {
        return energyEv >= lowEv && energyEv <= highEv;
    }

    public double widthEv() {
        return highEv - lowEv;
    }

    public double centreEv() {
        return 0.5 * (lowEv + highEv);
    }

    public Window shiftedBy(double ev) {
        return new Window(lowEv + ev, highEv + ev);
    }

    public boolean overlaps(Window other) {
        return lowEv < other.highEv && other.lowEv < highEv;
    }
}
