package spotline.bench;

/** (a) 241 channels, four Voigts on a line, 18 parameters. */
public class NarrowScanBench extends FitBench {
    public NarrowScanBench() {
        super(FitCase.narrowScan());
    }
}
