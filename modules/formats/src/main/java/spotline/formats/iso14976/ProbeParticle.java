package spotline.formats.iso14976;

/** Item 13: the ion or atom of the sputtering or probe beam. */
public record ProbeParticle(Real atomicNumber, Real atoms, Real charge) {
    static final ProbeParticle UNKNOWN = new ProbeParticle(Real.UNKNOWN, Real.UNKNOWN, Real.UNKNOWN);
}
