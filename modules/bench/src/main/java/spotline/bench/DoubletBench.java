package spotline.bench;

/** (b) Two doublets of fixed splitting and ratio, 251 channels, 12 parameters. */
public class DoubletBench extends FitBench {
    public DoubletBench() {
        super(FitCase.doublets());
    }
}
