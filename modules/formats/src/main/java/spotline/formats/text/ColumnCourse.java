package spotline.formats.text;

/** How the values of one column run, gathered row by row. */
final class ColumnCourse {
    /** Relative to the step: energies are given to a few decimals. */
    private static final double EQUAL_STEPS = 1e-3;

    private int count;
    private double first;
    private double last;
    private double least = Double.POSITIVE_INFINITY;
    private double greatest = Double.NEGATIVE_INFINITY;
    private double leastStep = Double.POSITIVE_INFINITY;
    private double greatestStep = Double.NEGATIVE_INFINITY;
    private boolean whole = true;

    void add(double value) {
        if (count == 0) first = value;
        else {
            leastStep = Math.min(leastStep, value - last);
            greatestStep = Math.max(greatestStep, value - last);
        }
        last = value;
        least = Math.min(least, value);
        greatest = Math.max(greatest, value);
        whole &= value == Math.rint(value);
        count++;
    }

    TextLook.Range range() {
        return new TextLook.Range(least, greatest);
    }

    double first() {
        return first;
    }

    double last() {
        return last;
    }

    /** Whether it rises, or falls, from every row to the next. */
    boolean runsOneWay() {
        return count > 1 && (leastStep > 0 || greatestStep < 0);
    }

    /** Whether it does so in equal steps. */
    boolean equalSteps() {
        return runsOneWay() && greatestStep - leastStep <= EQUAL_STEPS * Math.abs(last - first) / (count - 1);
    }

    boolean changes() {
        return greatest > least;
    }

    boolean neverNegative() {
        return least >= 0;
    }

    boolean wholeNumbers() {
        return whole;
    }

    /** Whether energies of electrons that X-rays of laboratory sources free may be in it, eV. */
    boolean withinEnergies() {
        return least >= -100 && greatest <= 12_000;
    }
}
