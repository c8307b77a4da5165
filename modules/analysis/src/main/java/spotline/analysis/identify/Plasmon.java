package spotline.analysis.identify;

/** A loss that all lines of a solid share, a volume plasmon: energy and full width, eV. */
record Plasmon(double energyEv, double widthEv) {}
