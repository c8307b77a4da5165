package spotline.formats.iso14976;

/** Item 38: tilt of the sample normal (degree from upward z; clockwise from y) and rotation, degree. */
public record SampleOrientation(Real tiltPolar, Real tiltAzimuth, Real rotation) {
    public static final SampleOrientation UNKNOWN = new SampleOrientation(Real.UNKNOWN, Real.UNKNOWN, Real.UNKNOWN);
}
